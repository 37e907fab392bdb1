/**
 * A stiff system of bodies with heat contents and of quantities that follow at once:
 *   dH_i(x_i)/dt = rate_i(x)          for the first `differential` unknowns,
 *   inertia_i dx_i/dt = algebraic(x)  for the rest, most of them without inertia.
 * H may be any rising function (a phase change included); what is conserved is H itself.
 */
export interface StiffSystem {
  size: number;
  differential: number;
  /** H of each differential unknown at x */
  contents(x: Float64Array, out: Float64Array): void;
  /**
   * Fill rate (differential) and algebraic (the rest) at time t; `inner`: followers may be left out; `closed`: `close`
   * was the last to touch x, after an evaluation at t.
   */
  evaluate(t: number, x: Float64Array, rate: Float64Array, algebraic: Float64Array, how?: 'inner' | 'closed'): void;
  /**
   * last of the differential unknowns, bodies that follow the others without touching them; solved when a stage has
   * converged
   */
  followers?: number;
  /** inertia of the rest (default: none of it has any), the same throughout a step */
  inertia?(): Float64Array | null;
  /**
   * Rows: capacity dH/dx - gamma drate/dx; inertia / gamma less the derivative of algebraic. After `evaluate` at the
   * same x.
   */
  jacobian(t: number, x: Float64Array, matrix: Float64Array, gamma: number): void;
  limit(x: Float64Array, step: Float64Array): number;
  measure(x: Float64Array, step: Float64Array): number;
  /**
   * what Newton may leave over by that measure where it is told from how its steps shrink (default: it is not told so)
   */
  ahead?: number;
  /** the same steps must come to the same whatever was tried between them: no matrix serves the next step */
  repeats?: boolean;
  /**
   * Optional help where Newton loses its way: solve those of the algebraic quantities that surely can be by themselves,
   * all else held.
   */
  balance?(x: Float64Array): void;
  /**
   * Optional last touch on a converged stage: a balance that must close more tightly than the rest, and the followers,
   * from H = fixed + gamma rate.
   */
  close?(x: Float64Array, fixed: Float64Array, gamma: number): void;
  /** Optional: the followers alone, where nothing need close tightly. */
  solveFollowers?(x: Float64Array, fixed: Float64Array, gamma: number): void;
  /** sums to be integrated along (fire heat, losses): values at the last evaluation */
  quadrature(out: Float64Array): void;
  quadratures: number;
  /**
   * What those change by where a small step changes the rates and the rest by so much (default: by nothing).
   *
   * @param moves of the rates, but those of followers, then of the rest
   */
  quadratureMoves?(moves: Float64Array, step: Float64Array, out: Float64Array): void;
  /** weight of each unknown's error, where it has heat content or inertia: 1 / tolerance */
  errorWeights(x: Float64Array, out: Float64Array): void;
}
