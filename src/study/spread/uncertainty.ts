import type { Design } from '../../design/design.js';
import { fittedTogether, TOGETHER, withFittedCorrelation } from './correlate.js';
import { estimate, type Further, type Solution } from '../estimate/estimate.js';
import { heldAt } from '../events/heldPit.js';
import { splitSwing } from '../events/swing.js';
import type { Quantity } from '../quantities.js';
import { headlinesOf, SPLIT_HEADLINES } from './headlines.js';
import type { EstimateResult } from '../estimate/result.js';
import { rankRegression } from './rankRegression.js';
import { interpolate } from '../../solve/interpolate.js';
import { latinHypercube, quantile, type Random } from './sampling.js';
import { movedDesign, pathsOf, splitUnknownsOf } from './unknowns.js';

/** How far a number spreads over the cases, and which unknown moves it. SI. */
export interface SpreadNumber {
  key: string;
  /** with every unknown at its likeliest; null: it does not exist */
  estimate: number | null;
  /**
   * a tenth of the cases lie below p10, half below p50, nine tenths below p90; null: among those that never get there
   */
  p10: number | null;
  p50: number | null;
  p90: number | null;
  /** cases in which the number does not exist */
  missing: number;
  /** cases in which it was looked for, where not in all */
  cases?: number;
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
interface Band {
  p10: number[];
  p50: number[];
  p90: number[];
}

/** Curves of a warm-up that have a band. */
export type CurveName = 'thermometer_K' | 'gas_K' | 'steel_K' | 'fire_W';

/** What many cases, each with its own draw of the unknowns, make of the numbers. */
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
  /**
   * a cook with his splits is followed in one case of so many, what matters to them alone drawn too; absent: in none
   */
  tended?: { every: number; paths: string[]; samples: number[][] };
}

/** What one case gives. */
export interface SpreadCase {
  /** in the order of the headlines of the estimate */
  numbers: (number | null)[];
  curves: Record<CurveName, number[]> | null;
  /** in the order of those of splits, where these were followed */
  splits?: (number | null)[];
}

const METHOD =
  'Latin hypercube; percentiles linear between order statistics; causes by squared standardised rank regression coefficients';

/** Points at which curves are read. */
const POINTS = 81;
/** A cook is followed in about so many cases: one takes as long as two estimates. */
const TENDED = 40;
/** Share of the cases whose mean tells what a low or high value of an unknown does. */
const TAIL = 0.2;

/**
 * Cases for a spread study of a design: each unknown drawn from its spread, all of them at once.
 *
 * @param base the design's own estimate, with its warm-up
 * @param options cases (at least 2), seed that is printed with the result, and the generator made from it
 */
export function planSpread(base: EstimateResult, options: { cases: number; seed: number; random: Random }): SpreadPlan {
  const { warmUp } = base;
  const design = withSplitsOf(base);
  const paths = pathsOf([design]);
  const times = warmUp?.series.time_s ?? [];
  const end = times.length > 0 ? times[times.length - 1] : 0;
  const samples = withFittedCorrelation(latinHypercube(options.cases, paths.length, options.random), paths, [design]);
  return {
    design,
    seed: options.seed,
    paths,
    samples,
    time_s: end > 0 ? Array.from({ length: POINTS }, (_, i) => (end * i) / (POINTS - 1)) : [],
    ...(base.splits?.wood_kg ? { tended: planTended(design, options) } : {}),
  };
}

/** The design with splits of the weight that its cook lays on: that stays as it is, whatever else does not. */
function withSplitsOf({ design, splits }: EstimateResult): Design {
  const { fire } = design;
  if (!splits?.wood_kg || fire.splits.mass !== undefined || fire.splits.every !== undefined) return design;
  return { ...design, fire: { ...fire, splits: { ...fire.splits, mass: splits.wood_kg } } };
}

function planTended(design: Design, { cases, random }: { cases: number; random: Random }): SpreadPlan['tended'] {
  const every = Math.ceil(cases / TENDED);
  const paths = splitUnknownsOf(design).map(({ path }) => path);
  return { every, paths, samples: latinHypercube(Math.ceil(cases / every), paths.length, random) };
}

/**
 * Cases `from` to `to` (excluded) of a plan, each an estimate of its own. What they give depends on the plan alone, not
 * on who runs which of them.
 */
export function runSpreadCases(plan: SpreadPlan, from: number, to: number): SpreadCase[] {
  const { design, paths, time_s, tended } = plan;
  const headlines = headlinesOf(design);
  const until = time_s[time_s.length - 1];
  return plan.samples.slice(from, to).map((sample, k) => {
    const moved = movedDesign(design, paths, sample);
    const follows = tended && (from + k) % tended.every === 0;
    const result = follows
      ? estimate(movedDesign(moved, tended.paths, tended.samples[(from + k) / tended.every], splitUnknownsOf(moved)), {
          until,
          further: onSplits,
        })
      : estimate(moved, { until });
    return {
      numbers: headlines.map(({ of }) => of({ result })),
      curves: curvesAt(result, time_s),
      ...(follows ? { splits: SPLIT_HEADLINES.map(({ of }) => of({ result })) } : {}),
    };
  });
}

/** A cook with his splits in a solved pit, and nothing else. */
function onSplits({ pit, held, full }: Solution): Further {
  return { result: { splits: held && splitSwing(heldAt(pit, held, full)) }, warnings: [] };
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
  const followed = cases.flatMap(({ splits }) => (splits ? [splits] : []));
  return {
    cases: cases.length,
    seed: plan.seed,
    method: fittedTogether([plan.design]) ? `${METHOD}; ${TOGETHER}` : METHOD,
    numbers: [
      ...headlines.map((headline, i) =>
        spreadNumber(
          headline,
          headline.of({ result: base }),
          cases.map(({ numbers }) => numbers[i]),
          plan,
        ),
      ),
      ...(followed.length > 0 ? SPLIT_HEADLINES : []).map((headline, i) => ({
        ...spreadNumber(
          headline,
          headline.of({ result: base }),
          followed.map((numbers) => numbers[i]),
        ),
        cases: followed.length,
      })),
    ],
    curves: bandsOf(plan.time_s, cases),
  };
}

function spreadNumber(
  { key, missing }: Quantity,
  own: number | null,
  values: (number | null)[],
  plan?: SpreadPlan,
): SpreadNumber {
  return {
    key,
    estimate: own,
    ...percentilesOf(values, missing),
    missing: values.filter((value) => value === null).length,
    causes: plan ? causesOf(values, plan.paths, plan.samples) : [],
  };
}

/** What a tenth, half and nine tenths of the cases lie below; cases that never get there lie above all others. */
function percentilesOf(
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
 * What moves a number, by rank regression: it asks only that the number rises or falls all the way with each unknown,
 * not that it does so in a straight line.
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
