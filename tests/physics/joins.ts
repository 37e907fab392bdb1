import { expect } from 'vitest';

/** Fixed seed, so that a run of the property tests is the same on every machine. */
export const RUNS = { seed: 20260301, numRuns: 400 };

/** Expects f to meet itself at x from both sides, within a share of its size. */
export function expectJoin(f: (x: number) => number, x: number, share = 1e-6): void {
  const step = Math.max(1e-12, Math.abs(x) * 1e-10);
  const [below, at, above] = [f(x - step), f(x), f(x + step)];
  const size = Math.max(Math.abs(below), Math.abs(at), Math.abs(above));
  expect(Math.abs(above - below), `jump at ${x}: ${below} to ${above}`).toBeLessThanOrEqual(share * size);
  expect(Math.abs(at - below), `jump at ${x}: ${below} to ${at}`).toBeLessThanOrEqual(share * size);
}

/** Central difference of f at x. */
export function slope(f: (x: number) => number, x: number, step: number): number {
  return (f(x + step) - f(x - step)) / (2 * step);
}
