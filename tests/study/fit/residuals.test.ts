import { describe, expect, it } from 'vitest';
import { hangTogether, ownNoise, robustSpread, rootMeanSquare } from '../../../src/study/fit/residuals.js';
import { chance } from './syntheticLog.js';

const { normal } = chance(7);
const N = 20_000;
const noise = Array.from({ length: N }, () => 2 * normal());

describe('noise of readings by themselves', () => {
  it('is found in white noise, whatever slow course it lies on', () => {
    // derived: the standard deviation that the numbers were made with
    expect(ownNoise(noise, 0)).toBeCloseTo(2, 1);
    const course = noise.map((e, i) => 300 + 100 * Math.sin(i / 500) + e);
    expect(ownNoise(course, 0)).toBeCloseTo(2, 1);
    expect(rootMeanSquare(noise)).toBeCloseTo(2, 1);
  });

  it('is at least that of rounding, step / sqrt(12), and none where readings say the same', () => {
    expect(ownNoise([5, 5, 5, 5, 5], 1)).toBeCloseTo(1 / Math.sqrt(12), 12);
    expect(ownNoise([5, 5, 5, 5, 5], 0)).toBe(0);
  });

  it('knows nothing of outliers', () => {
    const spoilt = noise.map((e, i) => (i % 20 === 0 ? e + 500 : e));
    expect(robustSpread(spoilt) / robustSpread(noise)).toBeLessThan(1.1);
  });
});

describe('how long errors hang together', () => {
  it('is 1 for white noise', () => {
    expect(hangTogether(noise)).toBeGreaterThanOrEqual(1);
    expect(hangTogether(noise)).toBeLessThan(1.15);
  });

  it.each([0.5, 0.8, 0.95])('is (1 + phi) / (1 - phi) for an autoregressive course of phi = %s', (phi) => {
    // derived: sum of the geometric series of its autocorrelations phi^k (any text on time series)
    let last = 0;
    const course = noise.map((e) => (last = phi * last + e));
    const exact = (1 + phi) / (1 - phi);
    expect(Math.abs(hangTogether(course) / exact - 1)).toBeLessThan(0.15);
  });

  it('is 1 where nothing is left over at all', () => {
    expect(hangTogether(new Float64Array(50))).toBe(1);
  });
});
