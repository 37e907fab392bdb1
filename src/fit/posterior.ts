import { inverse, Matrix } from 'ml-matrix';
import type { LeastSquaresProblem, LeastSquaresSolution } from '../solve/leastSquares.js';
import type { FittedParameter } from './fitResult.js';
import { valueAt, type FitParameter, type Prior } from './parameters.js';

/** What estimates and probes are after a fit. Coordinates as in the fit: estimates first, then the probes' offsets. */
export interface Posterior {
  /** where the fit ended */
  p: number[];
  /** with all that is not fitted as the design has it */
  covariance: number[][];
  /**
   * how far the readings would rather have each estimate that is not fitted, and how surely, in standard deviations of
   * its spread
   */
  wanted: { path: string; step: number; deviation: number }[];
  /** correlation of the estimates with each other */
  correlation: number[][];
  parameters: FittedParameter[];
}

/**
 * Half width of the interval that holds nine of ten normal values, in standard deviations (any table of the normal
 * law).
 */
export const NINE_OF_TEN = 1.645;
/** A log that leaves more than this share of a spread tells nothing of it. */
const TELLS = 0.8;
/** This near an end of its spread an estimate counts as pushed there, in standard deviations of the spread. */
const EDGE = 0.02;

/** What estimates that are not fitted do to the readings, and how the readings would rather have them. */
export interface Others {
  paths: string[];
  /** slopes, a row each, by a standard deviation of its spread */
  sway: Float64Array[];
}

/**
 * Covariance of a solution by its slopes, and what follows for each estimate. An estimate's spread may be wider on one
 * side: each end of its interval takes the side it lies on.
 *
 * What is not fitted is not known either: it counts as one more unknown each, with its spread and as far as the
 * readings allow it to move, and only what is left of the fitted ones' knowledge beside it is told.
 *
 * @param problem its bounds, and how many rows of the solution are measured; the priors come after them
 */
export function posteriorOf(
  parameters: readonly FitParameter[],
  prior: Prior,
  solution: LeastSquaresSolution,
  { readings, low, high }: Pick<LeastSquaresProblem, 'low' | 'high'> & { readings: number },
  others: Others,
): Posterior {
  const { p, slopes, residuals } = solution;
  const n = parameters.length;
  const rows = [...slopes.map((row) => row.subarray(0, readings)), ...others.sway];
  const measured = new Matrix(rows.map((row) => Array.from(row)));
  const knowledge = measured.mmul(measured.transpose());
  const sides = prior.sidesAt(p.slice(0, n));
  /** of the first `size` unknowns, the others at rest */
  const covarianceOf = (size: number, chosen: ('below' | 'above')[]) => {
    const own = new Matrix(prior.slopes(chosen));
    const known = own.mmul(own.transpose());
    const sum = Matrix.zeros(size, size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        const before = i < n && j < n ? known.get(i, j) : i === j ? 1 : 0;
        sum.set(i, j, knowledge.get(i, j) + before);
      }
    }
    return inverse(sum);
  };
  const covariance = covarianceOf(p.length, sides);
  const all = covarianceOf(rows.length, sides);
  const deviations = (k: number, side: 'below' | 'above') => {
    const chosen = sides.map((each, j) => (j === k ? side : each));
    const of = (size: number) => Math.sqrt(covarianceOf(size, chosen).get(k, k));
    return { alone: of(p.length), all: of(rows.length) };
  };
  const correlation = parameters.map((_, i) =>
    parameters.map((__, j) => {
      if (i === j) return 1;
      // rounding makes an inverse a little lopsided
      const shared = 0.5 * (all.get(i, j) + all.get(j, i));
      return shared / Math.sqrt(all.get(i, i) * all.get(j, j));
    }),
  );
  // where one more step would go if all moved: what was fitted too, for a fit ends a little beside its best, and an
  // estimate that does nearly the same would otherwise be told to make up for that
  const downhill = measured.mmul(Matrix.columnVector(Array.from(residuals.subarray(0, readings)))).neg();
  for (let k = 0; k < p.length; k++) downhill.set(k, 0, downhillWithin(solution, k, low[k], high[k]));
  const step = all.mmul(downhill).to1DArray();
  return {
    p,
    wanted: others.paths.map((path, i) => {
      const k = p.length + i;
      return { path, step: step[k], deviation: Math.sqrt(all.get(k, k)) };
    }),
    covariance: covariance.to2DArray(),
    correlation,
    parameters: parameters.map((parameter, k) => {
      const { unknown } = parameter;
      const [down, up] = [deviations(k, 'below'), deviations(k, 'above')];
      const at = (q: number) => valueAt(parameter, Math.min(high[k], Math.max(low[k], q)));
      const left = Math.sqrt(all.get(k, k)) / parameter[sides[k]];
      return {
        path: unknown.path,
        unit: unknown.unit,
        before: unknown.value,
        spread: { low: unknown.low, high: unknown.high },
        value: at(p[k]),
        low: at(p[k] - NINE_OF_TEN * down.all),
        high: at(p[k] + NINE_OF_TEN * up.all),
        alone: { low: at(p[k] - NINE_OF_TEN * down.alone), high: at(p[k] + NINE_OF_TEN * up.alone) },
        left: Math.min(1, left),
        told: left < TELLS,
        atEdge: p[k] - low[k] < EDGE || high[k] - p[k] < EDGE,
      };
    }),
  };
}

/**
 * How hard a solution pulls at one of its unknowns, readings and priors together; not at all where it stands against a
 * bound.
 */
function downhillWithin({ p, slopes, residuals }: LeastSquaresSolution, k: number, low: number, high: number): number {
  const pull = -slopes[k].reduce((sum, slope, i) => sum + slope * residuals[i], 0);
  return (p[k] <= low && pull < 0) || (p[k] >= high && pull > 0) ? 0 : pull;
}
