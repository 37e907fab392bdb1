/** What residuals and readings say of noise, of each other, and of what a model lacks. */

import { median } from 'simple-statistics';

/** Median of the absolute values times this is the standard deviation of a normal sample (1 / 0.6745). */
const NORMAL = 1.4826;

/** Root of the mean of the squares; 0 of none. */
export function rootMeanSquare(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] * values[i];
  return values.length > 0 ? Math.sqrt(sum / values.length) : 0;
}

/** Spread about zero, of which outliers know nothing: 1.4826 times the median of the absolute values. */
export function robustSpread(residuals: ArrayLike<number>): number {
  return residuals.length === 0 ? 0 : NORMAL * median(Array.from(residuals, Math.abs));
}

/**
 * Noise of readings by themselves, without a model: what is left of them against the line through their neighbours. For
 * independent noise y[i] - (y[i-1] + y[i+1]) / 2 has 3/2 of its variance. Rounding to `resolution` steps counts as its
 * own noise, step / sqrt(12).
 */
export function ownNoise(values: ArrayLike<number>, resolution: number): number {
  const second: number[] = [];
  for (let i = 1; i + 1 < values.length; i++) second.push(values[i] - 0.5 * (values[i - 1] + values[i + 1]));
  return Math.max(robustSpread(second) / Math.sqrt(1.5), resolution / Math.sqrt(12));
}

/**
 * How many readings in a row hang together: the integrated autocorrelation 1 + 2 sum of rho(k), summed up to the first
 * lag that is over five times it. A sample of n such readings knows as much as n over it independent ones.
 *
 * @returns at least 1
 * Reference: Sokal (1997), Monte Carlo Methods in Statistical Mechanics, in: Functional Integration (Springer), 131.
 */
export function hangTogether(residuals: ArrayLike<number>): number {
  const n = residuals.length;
  let power = 0;
  for (let i = 0; i < n; i++) power += residuals[i] * residuals[i];
  if (power === 0) return 1;
  let sum = 1;
  for (let lag = 1; lag < n / 2; lag++) {
    let product = 0;
    for (let i = lag; i < n; i++) product += residuals[i] * residuals[i - lag];
    sum += (2 * product) / power;
    if (lag >= 5 * sum) break;
  }
  return Math.max(1, sum);
}
