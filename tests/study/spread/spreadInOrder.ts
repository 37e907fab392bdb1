import { expect, it } from 'vitest';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { runSpreadCases, summariseSpread, type SpreadPlan } from '../../../src/study/spread/uncertainty.js';

/** A study comes out the same in parts, and tells every number in order. */
export function expectSpreadInOrder(base: EstimateResult, plan: SpreadPlan): void {
  const cases = runSpreadCases(plan, 0, plan.samples.length);
  const spread = summariseSpread(base, plan, cases);

  it('gives the same cases however they are shared out', () => {
    expect([...runSpreadCases(plan, 0, 1), ...runSpreadCases(plan, 1, 4)]).toEqual(cases.slice(0, 4));
  });

  it('has every number in order, around the cases it comes from', () => {
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
  });
}
