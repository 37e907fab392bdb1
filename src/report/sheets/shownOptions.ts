import { baselineOf } from '../../study/compare/baseline.js';
import type { ComparedOption, Comparison } from '../../study/compare/compare.js';

/** Columns that a sheet has room for. */
export const MOST_OPTIONS = 6;

/** The options that the buyer's sheet shows: the baseline, then the others in their order. */
export function shownOptions(comparison: Comparison): ComparedOption[] {
  const first = baselineOf(comparison);
  return [first, ...comparison.options.filter((option) => option !== first)].slice(0, MOST_OPTIONS);
}
