import { describe, expect, test } from 'vitest';
import { statistics, type Pair } from '../../src/verify/validation/statistics.js';

const pair = (ratio: number, group: string): Pair => ({ measured: 10, computed: 10 * ratio, group });

describe('bias and scatter', () => {
  test('a model that is off by one factor has that bias, and no less scatter than the experiment', () => {
    const found = statistics([pair(0.8, 'a'), pair(0.8, 'b'), pair(0.8, 'c')], 0.1)!;
    expect(found.bias).toBeCloseTo(0.8, 12);
    expect(found.scatter).toBeCloseTo(0, 12);
    expect(found.modelDeviation).toBe(0.1);
    expect(found.withinFifth).toBe(3);
  });

  test('worked by hand: ratios 0.5, 1, 2 with an experiment of 10 %', () => {
    // ln 2 each way: mean 0, s^2 = 2 ln2^2/2 = 0.4805; sigma_M^2 = 0.4705; s is above 0.5, so that no bias is given
    const wide = statistics([pair(0.5, 'a'), pair(1, 'b'), pair(2, 'c')], 0.1)!;
    expect(wide.meanRatio).toBeCloseTo(1, 12);
    expect(wide.scatter ** 2).toBeCloseTo(Math.LN2 ** 2, 12);
    expect(wide.modelDeviation ** 2).toBeCloseTo(Math.LN2 ** 2 - 0.01, 12);
    expect(wide.bias).toBeNull();
    // ratios 0.8 and 1.25: s^2 = 2 ln(1.25)^2 = 0.09958; delta = exp((0.08958 - 0.01)/2)
    const narrow = statistics([pair(0.8, 'a'), pair(1.25, 'b')], 0.1)!;
    expect(narrow.bias).toBeCloseTo(Math.exp((2 * Math.log(1.25) ** 2 - 0.02) / 2), 12);
    expect(narrow.withinFifth).toBe(1);
  });

  test('rows that repeat one case weigh as one', () => {
    const repeated = statistics([pair(0.8, 'a'), pair(0.8, 'a'), pair(0.8, 'a'), pair(1, 'b'), pair(0.9, 'c')], 0.01)!;
    const single = statistics([pair(0.8, 'a'), pair(1, 'b'), pair(0.9, 'c')], 0.01)!;
    expect(repeated.cases).toBe(3);
    expect(repeated.n).toBe(5);
    expect(repeated.bias).toBeCloseTo(single.bias!, 12);
    expect(repeated.scatter).toBeCloseTo(single.scatter, 12);
  });

  test('one case has no scatter to speak of, and what is not positive has no logarithm', () => {
    expect(statistics([pair(1, 'a'), pair(1.1, 'a')], 0.1)).toBeNull();
    expect(() => statistics([pair(-1, 'a'), pair(1, 'b')], 0.1)).toThrow(/-10\/10 has no logarithm/);
  });
});
