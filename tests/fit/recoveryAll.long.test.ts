import { beforeAll, describe, expect, it } from 'vitest';
import { fit } from '../../src/fit/fit.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { tellingPaths } from '../../src/fit/parameters.js';
import { exampleDesign } from '../support/examples.js';
import { shareOf } from '../support/share.js';
import { blankLog, chance, drawnTruth, FAHRENHEIT, measured } from './syntheticLog.js';

/** All eight where all is asked for. */
const LOGS = Math.max(1, shareOf(8));
const NOISE_K = 3 / FAHRENHEIT;
const ACCURACY = 2 / FAHRENHEIT;

/**
 * As a builder would meet it: nothing is as the design has it, probes are off, and all is fitted. Seeds as they come.
 */
describe('a fit of everything to made-up logs of pits in which everything was drawn from its spread', () => {
  const found: { values: Record<string, number>; result: FitResult }[] = [];

  beforeAll(() => {
    const design = exampleDesign('plain-24.yaml');
    const paths = tellingPaths(design, { wood: true, fire: false, wind: true });
    for (let seed = 1; seed <= LOGS; seed++) {
      const draw = chance(seed);
      const { truth, values } = drawnTruth(design, paths, draw.uniform);
      const offsets_K = [0, 1, 2].map(() => ACCURACY * draw.normal());
      const readings = { noise_K: NOISE_K, dropouts: 0.05, silence_s: 900, offsets_K };
      const log = measured(truth, blankLog({ every_s: 20 }, draw.uniform), readings, draw);
      const result = fit(design, [{ log, hash: String(seed) }], { heldBack: 0.3, accuracy: ACCURACY });
      expect(result).not.toBeNull();
      found.push({ values, result: result! });
    }
  }, 600_000);

  it('has the truth in nine of ten of its intervals, or nearly', () => {
    const inside = found.flatMap(({ values, result }) =>
      result.parameters.map(({ path, low, high }) => low <= values[path] && values[path] <= high),
    );
    const share = inside.filter(Boolean).length / inside.length;
    // over 120 intervals, those of one log not independent of each other: two standard deviations of a share of 0.9 are
    // 0.06
    expect(inside.length).toBeGreaterThan(12 * LOGS);
    expect(share).toBeGreaterThan(0.9 - 0.06 * Math.sqrt(8 / LOGS));
    if (LOGS === 8) expect(share).toBeLessThan(1);
  });

  it('predicts the part that was held back within 1.3 times the noise, every time', () => {
    for (const { result } of found) expect(result.quality.heldBack_K!).toBeLessThan(1.3 * NOISE_K);
  });

  it('believes every probe, and all that the log says of wood', () => {
    const against = [
      'probes-disagree',
      'probes-swapped',
      'fire-does-not-fit',
      'more-wood-than-burns',
      'predicts-worse',
    ];
    for (const { result } of found) {
      expect(result.cooks[0].channels.some(({ leftOut }) => leftOut)).toBe(false);
      for (const { code } of result.warnings) expect(against).not.toContain(code);
    }
  });

  it('holds nothing, and finds nothing that it would rather move', () => {
    for (const { result } of found) {
      expect(result.held).toEqual([]);
      expect(result.warnings.map(({ code }) => code)).not.toContain('moves-what-is-not-fitted');
    }
  });
});
