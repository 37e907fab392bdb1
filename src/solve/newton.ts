import type { LuSolver } from './linear.js';

/** A square system of equations that Newton's method can work on. */
export interface NewtonProblem {
  /** fill `rhs` with the right-hand side of the step at x */
  residual(x: Float64Array, rhs: Float64Array): void;
  /** enter the slopes at x into the matrix of the step, which is zero, after `residual` at the same x */
  matrix(x: Float64Array, matrix: Float64Array): void;
  /** largest share of the step that may be taken, 0..1; may also clip entries of the step */
  limit(x: Float64Array, step: Float64Array): number;
  /** size of a step in units of what may be left over: converged when below 1 */
  measure(x: Float64Array, step: Float64Array): number;
}

/** How an iteration ended. */
export interface NewtonOutcome {
  converged: boolean;
  iterations: number;
  /** measure of the last step */
  change: number;
  /** share of the last step that was taken, for whoever goes on from what it was made of */
  taken: number;
}

/**
 * Steps are let go their way so many times before they are damped; they shrink well when one is below this share of the
 * last.
 */
const PATIENCE = 5;
const SHRINKS = 0.7;
/** A matrix costs as much as so many turns with the one there is. */
const TURNS = 4;
/** A step so many times as large as the smallest before it leads away. */
const ASTRAY = 4;

/**
 * Damped Newton iteration, x improved in place. A matrix is kept as long as steps shrink well with it.
 *
 * @param options.reuse start with `lu` as it was last factored
 * @param options.keep keep a matrix while fewer turns more than another costs would do, going by how the last steps
 * shrank (default: never)
 * @param options.patient damp steps that don't shrink
 * @param options.ahead end as soon as what is left, going by how the last two steps shrank, is below this measure
 * (default 0: never)
 * @param options.bail give up as soon as steps lead away, for there is a surer way
 * @param options.enough measure of a step that ends it (default 1): more where a guess is known to be so near that the
 * next one would be small
 */
export function newton(
  problem: NewtonProblem,
  x: Float64Array,
  rhs: Float64Array,
  lu: LuSolver,
  options: {
    maxIterations: number;
    reuse?: boolean;
    keep?: boolean;
    patient?: boolean;
    enough?: number;
    ahead?: number;
    bail?: boolean;
  },
): NewtonOutcome {
  const { keep = false, enough = 1, ahead = 0 } = options;
  let least = Infinity;
  let renew = !options.reuse;
  let change = Infinity;
  let damping = 1;
  // does the last step come of a matrix of its own?
  let own = false;
  // entries come at a place of their own all at once, where a flow turns: looked for in one matrix, the first, or where
  // they have been foreseen the third, which is only wanted where the first have not led far
  const lookedFor = lu.foreseen ? 3 : 1;
  let matrices = 0;
  for (let iteration = 1; iteration <= options.maxIterations; iteration++) {
    problem.residual(x, rhs);
    if (renew) {
      const known = ++matrices !== lookedFor;
      lu.clear(known);
      problem.matrix(x, lu.matrix);
      if (!lu.factor(known)) return { converged: false, iterations: iteration, change: Infinity, taken: 0 };
    }
    lu.solve(rhs);
    const share = problem.limit(x, rhs);
    const previous = change;
    change = problem.measure(x, rhs);
    // steps that don't shrink, though each has a matrix of its own, go to and fro over a bend; half of one ends
    // between. Where a damped step leaves what it left out and little else, there is no bend
    if (options.patient && iteration > PATIENCE && own && renew && change > SHRINKS * previous)
      damping = Math.max(0.25, 0.5 * damping);
    else if (damping < 1 && change < (1.1 - damping) * previous) damping = Math.min(1, 2 * damping);
    own = renew;
    for (let i = 0; i < x.length; i++) x[i] += share * damping * rhs[i];
    if (!Number.isFinite(change)) return { converged: false, iterations: iteration, change, taken: share * damping };
    if (options.bail && change > ASTRAY * least)
      return { converged: false, iterations: iteration, change, taken: share * damping };
    least = Math.min(least, change);
    const whole = share === 1 && damping === 1;
    if (share === 1 && change < enough)
      return { converged: true, iterations: iteration, change, taken: share * damping };
    // a series that shrinks by the same share on and on
    if (whole && iteration > 1 && change * change < ahead * (previous - change))
      return { converged: true, iterations: iteration, change, taken: share * damping };
    renew = share < 1 || !keep || !(change * (change / previous) ** TURNS < enough);
  }
  return { converged: false, iterations: options.maxIterations, change, taken: 0 };
}
