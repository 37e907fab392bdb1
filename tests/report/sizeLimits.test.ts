import { describe, expect, it } from 'vitest';
import { marginText } from '../../src/report/text/sizeLimits.js';
import { marginOf } from '../../src/study/size/limits.js';

describe('a margin in words', () => {
  it.each([
    ['smoke', 0.0025, '75 %'],
    ['smoke', 0.018, 'OUT 80 %'],
    ['gapSmoke', 0.0023, 'OUT 2.3 times'],
    ['gapSmoke', 0.0121, 'OUT 12 times'],
    ['gapSmoke', 0.1243, 'OUT 120 times'],
    ['holdOpening', 0.1, 'OUT 33 %'],
    ['throatSpeed', -0.5, 'OUT'],
    ['stackSpeed', -1, 'OUT'],
    ['air', 9, 'ample'],
    ['draft', -1, 'OUT'],
  ] as const)('%s of %f is %s', (key, value, words) => {
    expect(marginText(marginOf(key, value))).toBe(words);
  });
});
