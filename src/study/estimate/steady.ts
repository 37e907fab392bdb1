import type { Demand } from '../../network/balances.js';
import type { Pit } from '../../network/pit.js';
import type { SteadyOutcome } from '../../network/quasiSteady.js';
import { rootWithin } from '../../solve/root.js';

/** Below this share of the heat asked for, the release counts as held down by air. */
export const LIMITED = 0.995;
/** A state that holds the target reads it this closely [K]. */
const HELD_WITHIN = 0.05;

/** A steady state as the solver left it: unknowns, how well they settled, the heat asked for [W]. */
export interface Solved {
  x: Float64Array;
  outcome: SteadyOutcome;
  asked: number;
}

/**
 * Steady state under a given fire [W].
 *
 * @param start unknowns near the answer, where there are any
 * @returns the unknowns; `outcome.converged` false when no solution was found
 */
export function solveUnderFire(pit: Pit, heat: number, start?: Float64Array): Solved {
  const { solver } = pit;
  const demand: Demand = { mode: 'release', heat };
  if (start) {
    const x = start.slice();
    const outcome = solver.newton(x, demand);
    if (outcome.converged) return { x, outcome, asked: heat };
  }
  const x = solver.burningState(heat);
  const outcome = solver.solve(x, demand);
  return { x, outcome, asked: heat };
}

/**
 * The steady state that the unknowns x are near to; null: none is found from there, or only under a fire that can't be.
 */
export function solveNear(pit: Pit, x: Float64Array, demand: Demand): Solved | null {
  const { solver, model } = pit;
  let at = x.slice();
  let outcome = solver.newton(at, demand, 'nothing', 0, true);
  if (!outcome.converged) outcome = solver.solve((at = x.slice()), demand);
  if (!outcome.converged) return null;
  if (demand.mode === 'release') return { x: at, outcome, asked: demand.heat };
  const possible = at[model.fire] >= 0 && at[model.fuel + model.network.fire.zone] < model.fuelLimit;
  return possible ? { x: at, outcome, asked: at[model.fire] } : null;
}

/**
 * Steady state in which the gauge's settled reading is `target`, by the fire it takes.
 *
 * From the state under the full fire Newton with the fire as an unknown gets there in most designs; where it does not,
 * the fire is bracketed and every trial fire solved in full.
 *
 * @returns null when no fire that air allows reaches the target; `reached` then says how far the largest gets [K]
 */
export function solveHoldFire(pit: Pit, target: number, full: Solved): { solved: Solved | null; reached: number } {
  const { solver, balances, model } = pit;
  const outdoors = model.network.outdoors.temperature;
  const fullReading = readingOf(pit, full);
  const x = full.x.slice();
  const ratio = (target - outdoors) / Math.max(1, fullReading - outdoors);
  for (let i = 0; i < model.fuel; i++) x[i] = outdoors + (x[i] - outdoors) * Math.min(2, ratio);
  x[model.fire] *= Math.min(3, ratio ** 1.15);
  const outcome = solver.solve(x, { mode: 'hold', target });
  if (outcome.converged && x[model.fire] >= 0 && !balances.starved(x)) {
    return { solved: { x, outcome, asked: x[model.fire] }, reached: target };
  }
  return heldByBracket(pit, target, full, fullReading);
}

/** The same, by larger fires than the one of a state that does not reach the target. */
export function heldAbove(pit: Pit, target: number, state: Solved): ReturnType<typeof solveHoldFire> {
  return heldByBracket(pit, target, state, readingOf(pit, state));
}

/** What the gauge settles at in a state [K]. */
export function readingOf({ balances, model }: Pit, { x, asked }: Solved): number {
  balances.evaluate(x, { mode: 'release', heat: asked });
  return balances.stems.settled(x, model.network.gauge);
}

/** The slow, sure way: bracket the fire, each trial a full steady solution from its neighbour. */
function heldByBracket(
  pit: Pit,
  target: number,
  full: Solved,
  fullReading: number,
): { solved: Solved | null; reached: number } {
  const { model, solver } = pit;
  let last = full;
  let reached = fullReading;
  const readingAt = (heat: number): number => {
    const solved = solveUnderFire(pit, heat, last.x);
    if (!solved.outcome.converged) return Number.NaN;
    last = solved;
    const value = readingOf(pit, solved);
    reached = Math.max(reached, value);
    return value - target;
  };
  let low = 0;
  let high = full.asked;
  let fHigh = fullReading - target;
  for (let i = 0; i < 12 && fHigh < 0; i++) {
    low = high;
    high *= 1.6;
    const before = fHigh;
    fHigh = readingAt(high);
    const starved = last.x[model.fire] < LIMITED * high;
    if (Number.isNaN(fHigh) || (starved && fHigh < 0 && fHigh - before < 0.5)) return { solved: null, reached };
  }
  if (fHigh < 0) return { solved: null, reached };
  const fLow = low === 0 ? model.network.outdoors.temperature - target : readingAt(low);
  if (!(fLow < 0)) return { solved: null, reached };
  const root = rootWithin(readingAt, { low, high, fLow, fHigh, tolerance: 1e-7 * high });
  // a fire on the way has no steady state of its own
  if (root === null) return { solved: null, reached };
  const solved = solveUnderFire(pit, root, last.x);
  if (!solved.outcome.converged) return { solved: null, reached };
  const x = solved.x.slice();
  const outcome = solver.newton(x, { mode: 'hold', target });
  if (outcome.converged && Math.abs(x[model.fire] - solved.x[model.fire]) < 1e-3 * root) {
    return { solved: { x, outcome, asked: x[model.fire] }, reached: target };
  }
  // between two ways of flowing the reading jumps past the target: no fire holds it there
  const met = Math.abs(readingOf(pit, solved) - target) < HELD_WITHIN;
  return { solved: met ? solved : null, reached };
}
