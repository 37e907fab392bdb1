import { expect } from 'vitest';
import type { Design } from '../../src/design/design.js';
import type { CookLog } from '../../src/fit/log/log.js';
import { fit, type FitInput, type FitOptions } from '../../src/fit/fit.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { fitUnknownsOf } from '../../src/study/spread/unknowns.js';
import { exampleDesign } from '../support/examples.js';
import { blankLog, chance, FAHRENHEIT, measured, type LogOptions, type ReadingOptions } from './syntheticLog.js';

export const ACCURACY = 2 / FAHRENHEIT;
export const plain = () => exampleDesign('plain-24.yaml');
export const without = (paths: string[]): FitOptions => ({ paths, heldBack: 0.3, accuracy: ACCURACY });
export const input = (log: CookLog, hash = 'a'): FitInput => ({ log, hash });
export const found = (result: FitResult, path: string) => result.parameters.find((each) => each.path === path)!;

/** The plain pit with other estimates. */
export function pit(values: Record<string, number>): Design {
  const design = plain();
  for (const { path, fields } of fitUnknownsOf(plain())) {
    if (path in values) for (const { set } of fields) set(design, values[path]);
  }
  return design;
}

/** A log of a pit with those estimates, a reading a minute. */
export function logOf(
  values: Record<string, number>,
  log: LogOptions = {},
  reading: Partial<ReadingOptions> = {},
  seed = 3,
) {
  const draw = chance(seed);
  const blank = blankLog({ every_s: 60, hours: 4, ...log }, draw.uniform);
  return measured(pit(values), blank, { noise_K: 0.5, ...reading }, draw);
}

export const TWO = { innerConvection: 1.4, 'wood.heat': 1.55e7 };

/** A fit of a log that was made with such values finds them, within an interval that says how surely. */
export function expectFound(values: Record<string, number>, log?: LogOptions): FitResult {
  const result = fit(plain(), [input(logOf(values, log))], without(Object.keys(values)))!;
  for (const [path, value] of Object.entries(values)) {
    const { low, high, told, left } = found(result, path);
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
    expect(told).toBe(true);
    expect(left).toBeLessThan(0.3);
  }
  return result;
}
