import { describe, expect, it } from 'vitest';
import { inverse, Matrix } from 'ml-matrix';
import { leastSquares, type LeastSquaresProblem } from '../../src/solve/leastSquares.js';

const FREE = { low: [-1e9, -1e9], high: [1e9, 1e9] };

/**
 * Misra1a of the Statistical Reference Datasets of NIST (nonlinear regression, lower difficulty): data and certified
 * values from memory; that the certified residual sum of squares comes out shows that they are right.
 */
const MISRA = {
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  b: [238.94212918, 5.5015643181e-4],
  deviation: [2.7070075241, 7.2668688436e-6],
  sum: 0.12455138894,
};

/** y = b1 (1 - exp(-b2 x)), in parameters scaled to about 1. */
const misra: LeastSquaresProblem = {
  ...FREE,
  start: [500 / 200, 1e-4 / 5e-4],
  residuals: ([a, b]) => Float64Array.from(MISRA.x, (x, i) => MISRA.y[i] - 200 * a * (1 - Math.exp(-5e-4 * b * x))),
  slopes: ([a, b]) => [
    Float64Array.from(MISRA.x, (x) => -200 * (1 - Math.exp(-5e-4 * b * x))),
    Float64Array.from(MISRA.x, (x) => -200 * a * 5e-4 * x * Math.exp(-5e-4 * b * x)),
  ],
};

describe('bounded least squares', () => {
  it('gives the certified values of Misra1a, from its far start', () => {
    const found = leastSquares(misra, 1e-12)!;
    expect(found.converged).toBe(true);
    expect(200 * found.p[0]).toBeCloseTo(MISRA.b[0], 4);
    expect(5e-4 * found.p[1]).toBeCloseTo(MISRA.b[1], 9);
    expect(found.cost).toBeCloseTo(MISRA.sum, 9);
  });

  it('gives slopes at the solution from which the certified standard deviations follow', () => {
    const { slopes, cost } = leastSquares(misra, 1e-14)!;
    const j = new Matrix(slopes.map((row) => Array.from(row)));
    const covariance = inverse(j.mmul(j.transpose())).mul(cost / (MISRA.x.length - 2));
    expect(200 * Math.sqrt(covariance.get(0, 0))).toBeCloseTo(MISRA.deviation[0], 3);
    expect(5e-4 * Math.sqrt(covariance.get(1, 1))).toBeCloseTo(MISRA.deviation[1], 9);
  });

  /** Rosenbrock's valley as a sum of squares: 1 at (1, 1); derived: zero there and nowhere else */
  const valley = (low: number[], high: number[]): LeastSquaresProblem => ({
    start: [-1.2, 1],
    low,
    high,
    residuals: ([x, y]) => Float64Array.of(10 * (y - x * x), 1 - x),
    slopes: ([x]) => [Float64Array.of(-20 * x, -1), Float64Array.of(10, 0)],
  });

  it('finds the bottom of a bent valley', () => {
    const { p, cost } = leastSquares(valley(FREE.low, FREE.high), 1e-16)!;
    expect(p[0]).toBeCloseTo(1, 5);
    expect(p[1]).toBeCloseTo(1, 5);
    expect(cost).toBeLessThan(1e-10);
  });

  it('ends at a bound where the bottom lies beyond it, with the rest at its best there', () => {
    // derived: with x at most 0.5 the sum is least at x = 0.5, y = 0.25
    const { p, cost } = leastSquares(valley([-2, -2], [0.5, 2]), 1e-14)!;
    expect(p[0]).toBe(0.5);
    expect(p[1]).toBeCloseTo(0.25, 5);
    expect(cost).toBeCloseTo(0.25, 8);
  });

  it('asks for no slopes where a step was refused, and steps around points that have no answer', () => {
    let slopes = 0;
    const plain = valley(FREE.low, FREE.high);
    const holed: LeastSquaresProblem = {
      ...plain,
      residuals: (p) => (p[0] > 0.2 && p[0] < 0.3 ? null : plain.residuals(p)),
      slopes: (p) => {
        slopes++;
        return plain.slopes(p);
      },
    };
    const { p, iterations } = leastSquares(holed, 1e-14)!;
    expect(p[0]).toBeCloseTo(1, 4);
    expect(slopes).toBeLessThanOrEqual(iterations + 1);
  });

  it('has no answer where there is none at the start', () => {
    expect(leastSquares({ ...misra, residuals: () => null })).toBeNull();
  });
});
