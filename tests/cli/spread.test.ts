import { describe, expect, it } from 'vitest';
import { example, pitwright } from './support/run.js';

const plain = example('plain-24.yaml');

describe('estimate --spread', () => {
  it.each([
    ['--spread', 'many'],
    ['--seed', '-1'],
  ])('%s %s: exit 2 and what is allowed', async (option, value) => {
    const { code, stdout, stderr } = await pitwright(['estimate', plain, option, value]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/whole number from \d+ to \d+/);
  });
});
