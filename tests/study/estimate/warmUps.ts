import { expect } from 'vitest';
import { estimate } from '../../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { holdPit } from '../../../src/study/events/heldPit.js';
import { pitOf, type PitName } from '../../support/randomPits.js';

/** What the thermometer is off its target at the time that is printed as the first reading [K]. */
export function offAtFirst({ design, warmUp }: EstimateResult): number {
  const { gauge_s, series } = warmUp!;
  const at = series.time_s.indexOf(gauge_s!);
  expect(at).toBeGreaterThan(0);
  return series.thermometer_K[at] - design.fire.target;
}

const known = new Map<PitName, EstimateResult>();
/** The estimate of a pit, made once. */
export function estimated(name: PitName): EstimateResult {
  const result = known.get(name) ?? estimate(pitOf(name));
  known.set(name, result);
  return result;
}

/** The fire is never less than none nor more than the full fire, and takes no wood back. */
export function expectHonestFire(name: PitName): void {
  const { warmUp, design } = estimated(name);
  const { fire_W, fire_J, time_s } = warmUp!.series;
  expect(Math.min(...fire_W)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...fire_W)).toBeLessThanOrEqual(design.fire.heat);
  for (let i = 1; i < fire_J.length; i++) expect(fire_J[i]).toBeGreaterThanOrEqual(fire_J[i - 1]);
  expect(time_s[time_s.length - 1]).toBeGreaterThanOrEqual(warmUp!.soaked_s!);
}

/** The steady states are the same without a warm-up, and where events begin. */
export function expectSameWithout(name: PitName): void {
  const design = pitOf(name);
  const full = estimated(name);
  const steady = estimate(design, { steadyOnly: true });
  expect(steady.warmUp).toBeNull();
  expect(steady.steady).toEqual(full.steady);
  expect(steady.assumed).toEqual(full.assumed);
  expect(holdPit(design)!.fire).toBe(full.steady!.fire_W);
}

/** Steel is never soaked before the first reading, and both times carry the wood burned to then. */
export function expectSoakedAfter(name: PitName): void {
  const { warmUp, design } = estimated(name);
  expect(warmUp!.soaked_s!).toBeGreaterThanOrEqual(warmUp!.gauge_s!);
  const { time_s, fire_J } = warmUp!.series;
  const burned = (time: number) => fire_J[time_s.indexOf(time)] / design.wood.heat;
  expect(warmUp!.woodToGauge_kg).toBeCloseTo(burned(warmUp!.gauge_s!), 9);
  expect(warmUp!.woodToSoaked_kg).toBeCloseTo(burned(warmUp!.soaked_s!), 9);
}
