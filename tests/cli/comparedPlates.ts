import { expect } from 'vitest';
import { example } from './support/run.js';

export const plain = example('plain-24.yaml');
export const plates = ['compare', plain, '--vary', 'all.plate=1/8 in | 1/4 in'];

/** Verdict and table of two plates at a price, within 100 columns. */
export function expectTold(text: string, units: 'shop' | 'si'): void {
  expect(text.replace(/\s+/g, ' ')).toMatch(/1\/4 in instead of 1\/8 in buys .* costs .*more steel/);
  expect(text).toMatch(units === 'shop' ? /all steel \[lb\] +296 +564 +\+268 +\+91 %/ : /all steel \[kg\]/);
  expect(text.replace(/\s+/g, ' ')).toMatch(/The same: .*events \(.*door: back after \d+ .*\)/);
  expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
  for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
}
