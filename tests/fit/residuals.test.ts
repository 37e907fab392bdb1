import { describe, expect, it } from 'vitest';
import { hangTogether, ownNoise, robustSpread, rootMeanSquare } from '../../src/fit/residuals.js';
import { lagged } from '../../src/fit/lag.js';
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

describe('a logger that lags', () => {
  const times = Array.from({ length: 200 }, (_, i) => 10 * i);

  it('reads as it is without a lag, and a ramp late by its lag once it has got going', () => {
    const ramp = Float64Array.from(times, (t) => 300 + 0.02 * t);
    expect(lagged(times, ramp, 0)).toEqual(ramp);
    // derived: dy/dt = (f - y) / lag has y = f(t - lag) behind a ramp
    expect(lagged(times, ramp, 40)[199]).toBeCloseTo(300 + 0.02 * (1990 - 40), 9);
  });

  it('closes in on a step as exp(-t / lag), however far apart the readings', () => {
    const steps = [0, 1e-9, 60, 1000];
    const read = lagged(steps, Float64Array.of(0, 1, 1, 1), 60);
    expect(read[2]).toBeCloseTo(1 - Math.exp(-1), 6);
    expect(read[3]).toBeCloseTo(1, 6);
  });
});
