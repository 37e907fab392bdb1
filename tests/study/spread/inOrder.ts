import { expect } from 'vitest';
import type { SpreadCase } from '../../../src/study/spread/uncertainty.js';
import type { Spread } from '../../../src/study/spread/uncertainty.js';

/** Every number of a spread is in order, around the cases it comes from. */
export function expectInOrder(spread: Spread, cases: readonly SpreadCase[]): void {
  for (const [i, number] of spread.numbers.entries()) {
    const values = cases.map(({ numbers }) => numbers[i]!);
    expect(number.missing).toBe(0);
    expect(number.p10!).toBeLessThanOrEqual(number.p50!);
    expect(number.p50!).toBeLessThanOrEqual(number.p90!);
    expect(number.p10!).toBeGreaterThanOrEqual(Math.min(...values));
    expect(number.p90!).toBeLessThanOrEqual(Math.max(...values));
  }
  const curve = spread.curves!.thermometer_K;
  expect(curve.p10.every((low, i) => low <= curve.p50[i] && curve.p50[i] <= curve.p90[i])).toBe(true);
  expect(curve.p10).toHaveLength(spread.curves!.time_s.length);
}
