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

const MOST_ITERATIONS = 30;
const DAMPING = { start: 1e-3, up: 11, down: 9, most: 1e8 };

/**
 * Bounded nonlinear least squares by Levenberg & Marquardt, for residuals that are dear to compute: each step is taken by
 * ml-levenberg-marquardt, slopes are computed only where a step was accepted, and it ends when a step no longer matters.
 *
 * @param enough a drop of the sum of squares below this ends it; with residuals in standard deviations 0.01 means that all
 *   parameters are within a tenth of theirs
 * @returns null: no residuals at the start
 * Reference: Marquardt (1963), Journal of the Society for Industrial and Applied Mathematics 11, 431.
 */
export function leastSquares(problem: LeastSquaresProblem, enough = 0.01): LeastSquaresSolution | null {
  const clamp = (p: readonly number[]) => p.map((v, k) => Math.min(Math.max(v, problem.low[k]), problem.high[k]));
  let p = clamp(problem.start);
  const first = problem.residuals(p);
  if (!first) return null;
  let residuals = first;
  let cost = sumOfSquares(residuals);
  let slopes = problem.slopes(p);
  let damping = DAMPING.start;
  let iterations = 0;
  while (iterations < MOST_ITERATIONS && damping < DAMPING.most) {
    iterations++;
    const free = withoutHeld(p, slopes, residuals, problem);
    const trial = stepFrom(p, residuals, free, damping, problem);
    const moved: Float64Array | null = trial.some((v, k) => v !== p[k]) ? problem.residuals(trial) : residuals;
    const after = moved ? sumOfSquares(moved) : NaN;
    if (!moved || !(after < cost)) {
      if (moved === residuals || cost - predicted(residuals, free, p, trial) < enough) {
        return { p, residuals, slopes, cost, iterations, converged: true };
      }
      damping *= DAMPING.up;
      continue;
    }
    const drop = cost - after;
    [p, residuals, cost] = [trial, moved, after];
    if (drop < enough) return { p, residuals, slopes, cost, iterations, converged: true };
    slopes = problem.slopes(p);
    damping = Math.max(damping / DAMPING.down, 1e-9);
  }
  return { p, residuals, slopes, cost, iterations, converged: false };
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
  { low, high }: LeastSquaresProblem,
): number[] {
  // the library keeps the better of its start and where its step ends; told that the step ends at zero it gives the step
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
