import { describe, it } from 'vitest';
import { example, expectRefusal } from './support/run.js';

const plain = example('plain-24.yaml');

describe('estimate --spread', () => {
  it.each([
    ['--spread', 'many'],
    ['--seed', '-1'],
  ])('%s %s: exit 2 and what is allowed', async (option, value) => {
    await expectRefusal(['estimate', plain, option, value], 2, /whole number from \d+ to \d+/);
  });
});
