import { inverse, Matrix } from 'ml-matrix';
import type { LeastSquaresSolution } from '../../solve/leastSquares.js';
import type { FittedParameter } from './fitResult.js';
import { valueAt, type FitParameter, type Prior } from './parameters.js';

/** What estimates and probes are after a fit. Coordinates as in the fit: estimates first, then the probes' offsets. */
export interface Posterior {
  /** where the fit ended */
  p: number[];
  covariance: number[][];
  /** correlation of the estimates with each other */
  correlation: number[][];
  parameters: FittedParameter[];
}

/** Half width of the interval that holds nine of ten normal values, in standard deviations (any table of the normal law). */
export const NINE_OF_TEN = 1.645;
/** A log that leaves more than this share of a spread tells nothing of it. */
const TELLS = 0.8;
/** This near an end of its spread an estimate counts as pushed there, in standard deviations of the spread. */
const EDGE = 0.02;

/**
 * Covariance of a solution by its slopes, and what follows for each estimate. An estimate's spread may be wider on one side:
 * each end of its interval takes the side it lies on.
 *
 * @param readings rows of the solution that are measured; the priors come after them
 */
export function posteriorOf(
  parameters: readonly FitParameter[],
  prior: Prior,
  { p, slopes }: LeastSquaresSolution,
  readings: number,
): Posterior {
  const n = parameters.length;
  const measured = new Matrix(slopes.map((row) => Array.from(row.subarray(0, readings))));
  const knowledge = measured.mmul(measured.transpose());
  const sides = prior.sidesAt(p.slice(0, n));
  const covarianceWith = (chosen: ('below' | 'above')[]) => {
    const own = new Matrix(prior.slopes(chosen));
    const all = knowledge.clone();
    const known = own.mmul(own.transpose());
    for (let i = 0; i < p.length; i++) {
      for (let j = 0; j < p.length; j++) {
        if (i < n && j < n) all.set(i, j, all.get(i, j) + known.get(i, j));
        else if (i === j) all.set(i, j, all.get(i, j) + 1);
      }
    }
    return inverse(all);
  };
  const covariance = covarianceWith(sides);
  const deviation = (k: number, side: 'below' | 'above') => {
    const chosen = sides.map((each, j) => (j === k ? side : each));
    return Math.sqrt(covarianceWith(chosen).get(k, k));
  };
  const correlation = parameters.map((_, i) =>
    parameters.map((__, j) => {
      if (i === j) return 1;
      return covariance.get(i, j) / Math.sqrt(covariance.get(i, i) * covariance.get(j, j));
    }),
  );
  return {
    p,
    covariance: covariance.to2DArray(),
    correlation,
    parameters: parameters.map((parameter, k) => {
      const { unknown, low, high } = parameter;
      const [down, up] = [deviation(k, 'below'), deviation(k, 'above')];
      const at = (q: number) => valueAt(parameter, Math.min(high, Math.max(low, q)));
      const left = Math.sqrt(covariance.get(k, k)) / parameter[sides[k]];
      return {
        path: unknown.path,
        unit: unknown.unit,
        before: unknown.value,
        spread: { low: unknown.low, high: unknown.high },
        value: at(p[k]),
        low: at(p[k] - NINE_OF_TEN * down),
        high: at(p[k] + NINE_OF_TEN * up),
        left: Math.min(1, left),
        told: left < TELLS,
        atEdge: p[k] - low < EDGE || high - p[k] < EDGE,
      };
    }),
  };
}
