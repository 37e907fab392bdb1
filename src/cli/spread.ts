import type { Comparison } from '../study/compare/compare.js';
import {
  planComparison,
  summariseComparison,
  type ComparisonCase,
  type ComparisonSpread,
} from '../study/compare/compareSpread.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { seededRandom } from '../study/spread/random.js';
import { planSpread, summariseSpread, type Spread, type SpreadCase } from '../study/spread/uncertainty.js';
import { defaultWorkers, withPool } from './pool.js';
import { progress } from './stderr.js';

/** How many cases a study of the spread runs, and from which seed. */
export interface SpreadOptions {
  /** number of cases; absent: no study */
  spread?: number;
  seed: number;
  /** threads; absent: as many as the machine runs at once */
  workers?: number;
}

/**
 * How far an estimate's numbers spread when its unknowns do. The threads share the work, the seed alone sets the
 * result.
 */
export async function spreadOf(
  base: EstimateResult,
  options: Required<Pick<SpreadOptions, 'spread'>> & SpreadOptions,
): Promise<Spread> {
  const { spread: cases, seed, workers = defaultWorkers() } = options;
  const plan = planSpread(base, { cases, seed, random: seededRandom(seed) });
  const done = await withPool(workers, (run) =>
    run<SpreadCase>({ kind: 'spread', plan }, cases, saying('spread', cases)),
  );
  return summariseSpread(base, plan, done);
}

/** How sure the differences of a comparison are. All options share their samples. */
export async function comparisonSpreadOf(
  comparison: Comparison,
  options: Required<Pick<SpreadOptions, 'spread'>> & SpreadOptions,
): Promise<ComparisonSpread> {
  const { spread: cases, seed, workers = defaultWorkers() } = options;
  const plan = planComparison(comparison, { cases, seed, random: seededRandom(seed) });
  const done = await withPool(workers, (run) =>
    run<ComparisonCase>({ kind: 'compareSpread', plan }, cases, saying('spread', cases)),
  );
  return summariseComparison(comparison, plan, done);
}

/** A word on every tenth of the cases. */
export function saying(what: string, cases: number): (done: number) => void {
  let said = 0;
  return (done) => {
    const tenth = Math.floor((10 * done) / cases);
    if (tenth > said) progress(`${what}, ${done} of ${cases} cases`);
    said = tenth;
  };
}
