import type { Design } from '../../design/design.js';
import type { Comparison, ComparisonSettings } from './compare.js';
import { fittedTogether, TOGETHER, withFittedCorrelation } from '../spread/correlate.js';
import { measuresOf, type Measure } from './measures.js';
import { latinHypercube, quantile, type Random } from '../spread/sampling.js';
import { studyOption } from './studyOption.js';
import { movedDesign, pathsOf } from '../spread/unknowns.js';

/**
 * What a tenth, half and nine tenths of the cases lie below; null where there are no cases, or among those without a
 * number.
 */
interface Percentiles {
  p10: number | null;
  p50: number | null;
  p90: number | null;
}

/** How sure the difference of an option to the baseline is, in one measure. */
export interface SureDifference {
  key: string;
  value: Percentiles;
  /** option less baseline, case by case: both have the same fire, wood, wind and weather */
  difference: Percentiles;
  /** cases in which the option has more, less, or no telling difference; in the rest one of the two has no number */
  more: number;
  less: number;
  same: number;
  missing: number;
}

/** How sure each difference is, over cases in which all options share the same draws. */
export interface ComparisonSpread {
  cases: number;
  seed: number;
  method: string;
  /** one an option, the baseline among them, in their order */
  options: { label: string; measures: SureDifference[] }[];
}

/** Everything that a case of a comparison needs, in plain data. */
export interface ComparisonPlan {
  designs: Design[];
  settings: ComparisonSettings;
  seed: number;
  paths: string[];
  samples: number[][];
}

/** What one case gives: each measure's numbers, one an option. */
export type ComparisonCase = Record<string, (number | null)[]>;

const METHOD = 'Latin hypercube, the same samples for all options; percentiles linear between order statistics';

/**
 * Cases for all options of a comparison: each draws the unknowns once, and all options run with them, so that what is
 * unknown about the fire or the wind drops out of their differences.
 */
export function planComparison(
  comparison: Comparison,
  { cases, seed, random }: { cases: number; seed: number; random: Random },
): ComparisonPlan {
  const designs = comparison.options.map(({ result }) => result.design);
  const paths = pathsOf(designs);
  const samples = withFittedCorrelation(latinHypercube(cases, paths.length, random), paths, designs);
  return { designs, settings: comparison.settings, seed, paths, samples };
}

/** Cases `from` to `to` (excluded) of a plan, every option studied in full in each. */
export function runComparisonCases(plan: ComparisonPlan, from: number, to: number): ComparisonCase[] {
  const { designs, settings, paths, samples } = plan;
  return samples.slice(from, to).map((sample) => {
    const studies = designs.map((design) => studyOption(movedDesign(design, paths, sample), settings));
    const measures = measuresOf(studies, settings);
    return Object.fromEntries(measures.map(({ key, of }) => [key, studies.map((study) => of(study))]));
  });
}

/** What all cases say of the differences of the options. */
export function summariseComparison(
  comparison: Comparison,
  plan: ComparisonPlan,
  cases: ComparisonCase[],
): ComparisonSpread {
  const measures = measuresOf(comparison.options, comparison.settings);
  const base = comparison.options.findIndex(({ label }) => label === comparison.baseline);
  return {
    cases: cases.length,
    seed: plan.seed,
    method: fittedTogether(plan.designs) ? `${METHOD}; ${TOGETHER}` : METHOD,
    options: comparison.options.map(({ label }, i) => ({
      label,
      measures: measures.map((measure) => sureDifference(measure, cases, { base, option: i })),
    })),
  };
}

function sureDifference(
  { key, none }: Measure,
  cases: ComparisonCase[],
  { base, option }: { base: number; option: number },
): SureDifference {
  const values: number[] = [];
  const differences: number[] = [];
  const counts = { more: 0, less: 0, same: 0, missing: 0 };
  for (const numbers of cases) {
    const [from, to] = [numbers[key]?.[base] ?? null, numbers[key]?.[option] ?? null];
    if (to !== null) values.push(to);
    if (from === null || to === null) {
      counts.missing++;
      continue;
    }
    const difference = to - from;
    differences.push(difference);
    if (Math.abs(difference) <= none(from)) counts.same++;
    else if (difference > 0) counts.more++;
    else counts.less++;
  }
  return { key, value: percentiles(values), difference: percentiles(differences), ...counts };
}

function percentiles(values: number[]): Percentiles {
  const sorted = values.sort((a, b) => a - b);
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
}
