import { expect } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { randomDesign } from '../design/randomDesign.js';

/** Warnings by which a design without a steady state, or without a whole warm-up, says why. */
const REASONS = ['no-steady-draft', 'no-air-path', 'draft-tips-over', 'target-not-reached', 'not-soaked-in-a-day'];

/** Random designs that everyday tests solve, of those that all are. */
export const EVERYDAY = 4;
export const ALL = 2000;

/**
 * Seeded random designs over the whole accepted range, from the reader to the last curve: none throws, none gives a
 * number that is none, heat and mass close, and what is missing has its reason.
 */
export function solveRandomDesigns(seeds: readonly number[]): void {
  for (const seed of seeds) solveOne(seed);
}

function solveOne(seed: number): void {
  const read = readDesign(JSON.stringify(randomDesign(seed)), { fileName: `random ${seed}` });
  if ('faults' in read) throw new Error(`random design ${seed} is refused: ${JSON.stringify(read.faults)}`);
  const result = estimate(read.design);
  const odd: string[] = [];
  JSON.stringify(result, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) odd.push(key);
    return value;
  });
  expect(odd, `design ${seed}: not a number`).toEqual([]);
  expect(result.balance.energyError, `design ${seed}: heat`).toBeLessThan(1e-3);
  expect(result.balance.massError_kg_per_s, `design ${seed}: mass`).toBeLessThan(1e-9);
  for (const state of [result.assumed, result.steady]) {
    if (state) expect(state.converged, `design ${seed}: converged`).toBe(true);
  }
  const whole = result.assumed && result.steady && result.warmUp?.gauge_s != null && result.warmUp.soaked_s != null;
  if (!whole) {
    const codes = result.warnings.map((w) => w.code);
    expect(
      codes.some((code) => REASONS.includes(code)),
      `design ${seed} says why (${codes.join()})`,
    ).toBe(true);
  }
}
