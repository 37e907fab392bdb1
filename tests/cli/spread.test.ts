import { describe, expect, it } from 'vitest';
import { example, pitwright } from './support/run.js';

const plain = example('plain-24.yaml');

describe('estimate --spread', () => {
  it('says in the text how sure each number is', async () => {
    const { stdout } = await pitwright(['estimate', plain, '--spread', '20']);
    expect(stdout).toMatch(/after\s+\d+ min[\d\ss]*\(8 of\s+10\s+cases:\s+\d+[\d\smins]*\sto\s+\d+[\d\smins]*\)/);
    expect(stdout).toMatch(/^HOW SURE: 20 cases/m);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it.each([
    ['--spread', 'many'],
    ['--seed', '-1'],
  ])('%s %s: exit 2 and what is allowed', async (option, value) => {
    const { code, stdout, stderr } = await pitwright(['estimate', plain, option, value]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/whole number from \d+ to \d+/);
  });
});
