import { levenbergMarquardt } from 'ml-levenberg-marquardt';

/** Residuals in units of their standard deviations, to be made small in the sum of their squares. */
export interface LeastSquaresProblem {
  start: readonly number[];
  /** bounds of each parameter */
  low: readonly number[];
  high: readonly number[];
  /** @returns null where there is no answer: such a point is never taken */
  residuals(p: readonly number[]): Float64Array | null;
  /** slopes of the residuals at p, a row a parameter; asked for only where there are residuals */
  slopes(p: readonly number[]): Float64Array[];
}

/** Where the search ended: parameters, what is left over there, and whether it settled. */
export interface LeastSquaresSolution {
  p: number[];
  residuals: Float64Array;
  /** slopes there, or at a point less than `enough` away */
  slopes: Float64Array[];
  /** sum of squares */
  cost: number;
  iterations: number;
  /** false: the steps ran out first */
  converged: boolean;
}

const MOST_ITERATIONS = 60;
/**
 * Slopes by differences are a little wrong: a gain up to this many times what is enough that this many steps in a row
 * do not get is not there.
 */
const ROUGH = 5;
const MOST_REFUSED = 3;
/**
 * A step that gains this share of what its slopes promise was straight enough to go on with them, updated, so many
 * times.
 */
const STRAIGHT = 0.6;
const MOST_UPDATES = 4;
const DAMPING = { least: 1e-9, start: 1e-3, up: 11, down: 9, most: 1e8 };

/**
 * Bounded nonlinear least squares by Levenberg & Marquardt, for residuals that are dear to compute: each step is taken
 * by ml-levenberg-marquardt, slopes are computed only where a step was accepted, and it ends when a step no longer
 * matters.
 *
 * @param enough a drop of the sum of squares below this ends it; with residuals in standard deviations 0.2 means that
 *   parameters are within half of theirs
 * @returns null: no residuals at the start
 * Reference: Marquardt (1963), Journal of the Society for Industrial and Applied Mathematics 11, 431.
 */
export function leastSquares(problem: LeastSquaresProblem, enough = 0.2): LeastSquaresSolution | null {
  const clamp = (p: readonly number[]) => p.map((v, k) => Math.min(Math.max(v, problem.low[k]), problem.high[k]));
  let p = clamp(problem.start);
  const first = problem.residuals(p);
  if (!first) return null;
  let residuals = first;
  let cost = sumOfSquares(residuals);
  let slopes = problem.slopes(p);
  let damping = DAMPING.start;
  let iterations = 0;
  let refused = 0;
  let updates = 0;
  const end = (converged: boolean) => ({ p, residuals, slopes, cost, iterations, converged });
  while (iterations < MOST_ITERATIONS && damping < DAMPING.most) {
    const free = withoutHeld(p, slopes, residuals, problem);
    const left = gain(p, residuals, free);
    if (left < enough || refused >= MOST_REFUSED) {
      if (updates === 0 && (left < enough || left < ROUGH * enough)) return end(true);
      if (updates > 0) {
        // updated slopes are good for a step, not for a verdict
        slopes = problem.slopes(p);
        updates = refused = 0;
        damping = Math.min(damping, DAMPING.start);
        continue;
      }
    }
    iterations++;
    const trial = stepFrom(p, residuals, free, damping, problem);
    const moved = problem.residuals(trial);
    const after = moved ? sumOfSquares(moved) : NaN;
    if (!moved || !(after < cost)) {
      damping *= DAMPING.up;
      refused++;
      continue;
    }
    const drop = cost - after;
    const promised = cost - predicted(residuals, free, p, trial);
    const straight = drop > STRAIGHT * promised && updates < MOST_UPDATES;
    if (straight) secantUpdate(slopes, p, residuals, trial, moved);
    [p, residuals, cost] = [trial, moved, after];
    refused = 0;
    // a whole step that gains next to nothing; a damped one may be short for another reason
    if (drop < enough && damping <= DAMPING.start && updates === 0) {
      slopes = problem.slopes(p);
      return end(true);
    }
    if (straight) updates++;
    else {
      slopes = problem.slopes(p);
      updates = 0;
    }
    damping = Math.max(damping / DAMPING.down, DAMPING.least);
  }
  return end(false);
}

/**
 * Slopes that fit the step just taken, by the least change of them: saves computing them anew while the way is nearly
 * straight.
 *
 * Reference: Broyden (1965), Mathematics of Computation 19, 577.
 */
function secantUpdate(
  slopes: Float64Array[],
  p: readonly number[],
  residuals: Float64Array,
  trial: readonly number[],
  moved: Float64Array,
): void {
  const step = trial.map((value, k) => value - p[k]);
  const length = step.reduce((sum, each) => sum + each * each, 0);
  for (let i = 0; i < residuals.length; i++) {
    let off = moved[i] - residuals[i];
    for (let k = 0; k < step.length; k++) off -= slopes[k][i] * step[k];
    for (let k = 0; k < step.length; k++) slopes[k][i] += (off * step[k]) / length;
  }
}

/** What a whole step could take off the sum of squares if the slopes went on straight and nothing were bounded. */
function gain(p: readonly number[], residuals: Float64Array, free: Float64Array[]): number {
  const nowhere = { low: p.map(() => -Infinity), high: p.map(() => Infinity) };
  const trial = stepFrom(p, residuals, free, DAMPING.least, nowhere);
  return sumOfSquares(residuals) - predicted(residuals, free, p, trial);
}

/** Slopes with those parameters at rest that stand at a bound and are pushed against it. */
function withoutHeld(
  p: readonly number[],
  slopes: Float64Array[],
  residuals: Float64Array,
  { low, high }: LeastSquaresProblem,
): Float64Array[] {
  return slopes.map((row, k) => {
    const uphill = dot(row, residuals);
    const held = (p[k] <= low[k] && uphill > 0) || (p[k] >= high[k] && uphill < 0);
    return held ? new Float64Array(row.length) : row;
  });
}

/** One step of the library's, from residuals and slopes that are already there. */
function stepFrom(
  p: readonly number[],
  residuals: Float64Array,
  slopes: Float64Array[],
  damping: number,
  { low, high }: Pick<LeastSquaresProblem, 'low' | 'high'>,
): number[] {
  // the library keeps the better of its start and where its step ends; told that the step ends at zero it gives the
  // step
  const there = (q: readonly number[]) => q.every((v, k) => v === p[k]);
  const { parameterValues } = levenbergMarquardt(
    { x: Array.from(residuals.keys()), y: new Float64Array(residuals.length) },
    (q: number[]) => (there(q) ? (i: number) => residuals[i] : () => 0),
    {
      initialValues: [...p],
      minValues: [...low],
      maxValues: [...high],
      damping,
      maxIterations: 1,
      errorTolerance: 0,
      jacobianFunction: () => (i: number) => slopes.map((row) => row[i]),
    },
  );
  return parameterValues;
}

/** Sum of squares that straight slopes promise at a trial. */
function predicted(residuals: Float64Array, slopes: Float64Array[], p: readonly number[], trial: readonly number[]) {
  let sum = 0;
  for (let i = 0; i < residuals.length; i++) {
    let r = residuals[i];
    for (let k = 0; k < p.length; k++) r += slopes[k][i] * (trial[k] - p[k]);
    sum += r * r;
  }
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function sumOfSquares(values: Float64Array): number {
  return dot(values, values);
}
