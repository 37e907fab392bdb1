import type { Design } from '../../design/design.js';
import { fittedTogether, TOGETHER, withFittedCorrelation } from './correlate.js';
import { estimate } from '../estimate/estimate.js';
import type { Quantity } from '../quantities.js';
import { headlinesOf } from './headlines.js';
import type { EstimateResult } from '../estimate/result.js';
import { rankRegression } from './rankRegression.js';
import { interpolate } from '../../solve/interpolate.js';
import { latinHypercube, quantile, type Random } from './sampling.js';
import { movedDesign, pathsOf } from './unknowns.js';

/** How far a number spreads over the cases, and which unknown moves it. SI. */
export interface SpreadNumber {
  key: string;
  /** with every unknown at its likeliest; null: it does not exist */
  estimate: number | null;
  /** a tenth of the cases lie below p10, half below p50, nine tenths below p90; null: among those that never get there */
  p10: number | null;
  p50: number | null;
  p90: number | null;
  /** cases in which the number does not exist */
  missing: number;
  /** unknowns, the weightiest first */
  causes: Cause[];
}

/** What one unknown does to one number. */
export interface Cause {
  path: string;
  /** share of the number's spread that this unknown makes: squared standardised rank regression coefficient */
  share: number;
  /** mean of the number over the fifth of the cases with the lowest, and with the highest, value of the unknown */
  atLow: number;
  atHigh: number;
}

/** Bands of a curve: at each time, what a tenth, half and nine tenths of the cases lie below. */
export interface Band {
  p10: number[];
  p50: number[];
  p90: number[];
}

export const CURVES = ['thermometer_K', 'gas_K', 'steel_K', 'fire_W'] as const;
export type CurveName = (typeof CURVES)[number];

export interface Spread {
  cases: number;
  seed: number;
  method: string;
  numbers: SpreadNumber[];
  /** of the gauge's station; null when no case has a warm-up */
  curves: ({ time_s: number[] } & Record<CurveName, Band>) | null;
}

/** Everything that a case needs, in plain data, so that it can be sent to another thread. */
export interface SpreadPlan {
  design: Design;
  seed: number;
  paths: string[];
  samples: number[][];
  /** times at which curves are read [s] */
  time_s: number[];
}

/** What one case gives. */
export interface SpreadCase {
  /** in the order of the headlines of the estimate */
  numbers: (number | null)[];
  curves: Record<CurveName, number[]> | null;
}

const METHOD =
  'Latin hypercube; percentiles linear between order statistics; causes by squared standardised rank regression coefficients';

/** Points at which curves are read. */
const POINTS = 81;
/** Share of the cases whose mean tells what a low or high value of an unknown does. */
const TAIL = 0.2;

/**
 * Cases for a spread study of a design: each unknown drawn from its spread, all of them at once.
 *
 * @param base the design's own estimate, with its warm-up
 * @param options cases (at least 2), seed that is printed with the result, and the generator made from it
 */
export function planSpread(base: EstimateResult, options: { cases: number; seed: number; random: Random }): SpreadPlan {
  const { design, warmUp } = base;
  const paths = pathsOf([design]);
  const times = warmUp?.series.time_s ?? [];
  const end = times.length > 0 ? times[times.length - 1] : 0;
  return {
    design,
    seed: options.seed,
    paths,
    samples: withFittedCorrelation(latinHypercube(options.cases, paths.length, options.random), paths, [design]),
    time_s: end > 0 ? Array.from({ length: POINTS }, (_, i) => (end * i) / (POINTS - 1)) : [],
  };
}

/**
 * Cases `from` to `to` (excluded) of a plan, each an estimate of its own. What they give depends on the plan alone, not on
 * who runs which of them.
 */
export function runSpreadCases(plan: SpreadPlan, from: number, to: number): SpreadCase[] {
  const { design, paths, time_s } = plan;
  const headlines = headlinesOf(design);
  const until = time_s[time_s.length - 1];
  return plan.samples.slice(from, to).map((sample) => {
    const result = estimate(movedDesign(design, paths, sample), { until });
    return { numbers: headlines.map(({ of }) => of({ result })), curves: curvesAt(result, time_s) };
  });
}

/** The gauge's curves read at given times; a run that ended before stands at its last value. */
function curvesAt(result: EstimateResult, times: number[]): SpreadCase['curves'] {
  const series = result.warmUp?.series;
  if (!series || series.time_s.length < 2 || times.length === 0) return null;
  const read = (values: number[]) => times.map((t) => interpolate(series.time_s, values, t));
  return {
    thermometer_K: read(series.thermometer_K),
    gas_K: read(series.gas_K),
    steel_K: read(series.steel_K),
    fire_W: read(series.fire_W),
  };
}

/** What all cases of a plan say together. */
export function summariseSpread(base: EstimateResult, plan: SpreadPlan, cases: SpreadCase[]): Spread {
  const headlines = headlinesOf(plan.design);
  return {
    cases: cases.length,
    seed: plan.seed,
    method: fittedTogether([plan.design]) ? `${METHOD}; ${TOGETHER}` : METHOD,
    numbers: headlines.map((headline, i) =>
      spreadNumber(
        headline,
        headline.of({ result: base }),
        cases.map(({ numbers }) => numbers[i]),
        plan,
      ),
    ),
    curves: bandsOf(plan.time_s, cases),
  };
}

function spreadNumber(
  { key, missing }: Quantity,
  own: number | null,
  values: (number | null)[],
  plan: SpreadPlan,
): SpreadNumber {
  return {
    key,
    estimate: own,
    ...percentilesOf(values, missing),
    missing: values.filter((value) => value === null).length,
    causes: causesOf(values, plan.paths, plan.samples),
  };
}

/** What a tenth, half and nine tenths of the cases lie below; cases that never get there lie above all others. */
export function percentilesOf(
  values: readonly (number | null)[],
  missing: Quantity['missing'],
): Pick<SpreadNumber, 'p10' | 'p50' | 'p90'> {
  const there = values.filter((value) => value !== null);
  const sorted = [...there].sort((a, b) => a - b);
  if (missing !== 'unknown') sorted.push(...new Array<number>(values.length - there.length).fill(Infinity));
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
}

/** A spread below this share of the number itself is the solver's own noise. */
const NOISE = 1e-4;

/**
 * What moves a number, by rank regression: it asks only that the number rises or falls all the way with each unknown, not
 * that it does so in a straight line.
 *
 * @returns the weightiest first; empty when there are too few cases to tell, or when the number does not move
 */
export function causesOf(values: (number | null)[], paths: string[], samples: number[][]): Cause[] {
  const there = values.flatMap((value, i) => (value === null ? [] : [i]));
  const numbers = there.map((i) => values[i]!);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  if (!(most - least > NOISE * Math.max(Math.abs(least), Math.abs(most)))) return [];
  const inputs = paths.map((_, d) => there.map((i) => samples[i][d]));
  const coefficients = rankRegression(inputs, numbers);
  const tail = Math.floor(TAIL * there.length);
  return coefficients
    .map((coefficient, d) => {
      const order = inputs[d].map((_, i) => i).sort((a, b) => inputs[d][a] - inputs[d][b]);
      const mean = (part: number[]) => part.reduce((sum, i) => sum + numbers[i], 0) / part.length;
      return {
        path: paths[d],
        share: coefficient ** 2,
        atLow: mean(order.slice(0, tail)),
        atHigh: mean(order.slice(-tail)),
      };
    })
    .sort((a, b) => b.share - a.share);
}

function bandsOf(time_s: number[], cases: SpreadCase[]): Spread['curves'] {
  const curves = cases.flatMap((each) => (each.curves ? [each.curves] : []));
  if (curves.length === 0) return null;
  const band = (name: CurveName): Band => {
    const out: Band = { p10: [], p50: [], p90: [] };
    time_s.forEach((_, i) => {
      const sorted = curves.map((each) => each[name][i]).sort((a, b) => a - b);
      out.p10.push(quantile(sorted, 0.1)!);
      out.p50.push(quantile(sorted, 0.5)!);
      out.p90.push(quantile(sorted, 0.9)!);
    });
    return out;
  };
  return {
    time_s,
    thermometer_K: band('thermometer_K'),
    gas_K: band('gas_K'),
    steel_K: band('steel_K'),
    fire_W: band('fire_W'),
  };
}
