import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { example, pitwright, scratch } from './support/run.js';

const folder = scratch();
afterAll(() => folder.remove());

describe('new', () => {
  it('writes a commented design that checks as it is', async () => {
    const file = folder.at('pit.yaml');
    expect(await pitwright(['new', '-o', file])).toMatchObject({ code: 0, stdout: '', stderr: '' });
    expect(readFileSync(file, 'utf8')).toMatch(/#/);
    expect(await pitwright(['check', file])).toMatchObject({ code: 0, stderr: '' });
  });
});

describe('schema', () => {
  it('is the one that the examples name', async () => {
    const { code, stdout } = await pitwright(['schema']);
    expect(code).toBe(0);
    expect(stdout).toBe(readFileSync(example('pitwright.schema.json'), 'utf8'));
  });
});
