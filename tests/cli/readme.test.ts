import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { expectToldPlain } from './estimatedText.js';
import { answered, expectAnswered, readme } from './readme.js';
import { pitwright } from './support/run.js';

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

  it.each([
    ['README.md', 1300],
    ['DEVELOPERS.md', 1500],
  ])('%s has fewer than %d words', (file, most) => {
    const words = readFileSync(file, 'utf8').split(/\s+/);
    expect(words.filter((word) => word !== '').length).toBeLessThan(most);
  });

  it('gives for each question of a builder a command and its answer', async () => {
    const asked = answered.map(({ command }) => command);
    for (const about of [/all\.plate/, /firebox\.shape/, /^size /, /insulation/, /wind-cold/, /four-ways/]) {
      expect(asked.some((command) => about.test(command))).toBe(true);
    }
    // the others are run in the long tests
    expectToldPlain(
      await expectAnswered(answered.find(({ command }) => command === 'estimate examples/plain-24.yaml')!),
    );
  });

  it.each(['README.md', 'reference/BATCH-AND-FIT.md'])(
    '%s names files that exist, and commands that do',
    async (file) => {
      const text = readFileSync(file, 'utf8');
      const links = [...text.matchAll(/\]\(([^)#:]+)\)/g)].map(([, path]) => path);
      expect(links.length).toBeGreaterThan(2);
      for (const path of links) expect(existsSync(join(dirname(file), path)), path).toBe(true);
      const { stdout } = await pitwright(['--help']);
      const shell = [...text.matchAll(/```sh\n([\s\S]*?)```/g)].map(([, lines]) => lines).join('');
      const commands = [...shell.matchAll(/\bpitwright ([a-z-]+)/g)].map(([, command]) => command);
      expect(commands.length).toBeGreaterThan(2);
      for (const command of commands) expect(stdout).toMatch(new RegExp(`^ {2}${command} `, 'm'));
    },
  );
});
