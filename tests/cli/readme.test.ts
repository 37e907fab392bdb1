import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pitwright } from './support/run.js';

const readme = readFileSync('README.md', 'utf8');

describe('the README', () => {
  it('shows a design that can be built as it stands', async () => {
    const [, yaml] = /```yaml\n([\s\S]*?)```/.exec(readme)!;
    expect(await pitwright(['check', '-'], { stdin: yaml })).toMatchObject({ code: 0, stderr: '' });
  });

  it('names npm scripts that exist', () => {
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));
    const named = [...readme.matchAll(/npm run ([a-z]+)/g)].map(([, name]) => name);
    expect(named).toContain('demo');
    for (const name of [...named, 'test']) expect(scripts).toHaveProperty(name);
  });
});
