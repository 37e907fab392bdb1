/** The way from one branch of flows to another, where no step converges. */
import type { Demand } from './balances.js';
import type { QuasiSteadySolver } from './quasiSteady.js';
import { EVENT_TIME, SHORTEST, type StopAt } from './stopAt.js';
import type { Moment } from './stride.js';

/**
 * Whether gas settles again is tried once on a bridge when it is this long [s], then whenever it is so many times as
 * long as at the last try.
 */
const ARRIVED = { first: 1, again: 1.25 };

/** Where a bridge ends, and the moments on the way. */
interface Bridge {
  moment: Moment;
  trail: Moment[];
  /** gas settles there again; else a stop came on the way, and it goes on */
  settled: boolean;
}

/**
 * Where no step converges the gas has come to the end of the branch of flows it was on (a plume that tips over, a draft
 * that turns). Carries it over by implicit Euler steps in which gas has its own small heat capacity, until quasi-steady
 * gas settles again. What the gas takes up on the way is booked as stored. A stop on the way is landed on as by any
 * step.
 *
 * @returns null: it does not come over
 */
export function bridgeFrom(
  start: Moment,
  solver: QuasiSteadySolver,
  demandAt: (t: number) => Demand,
  stop?: StopAt,
): Bridge | null {
  const { balances, model } = solver;
  const x = start.x.slice();
  const from = start.x.slice();
  const storage = new Float64Array(model.size);
  const fixed = new Float64Array(model.differential);
  let at = start;
  let left = stop ? stop.left(at) : 1;
  const watched = left > 0;
  const trail: Moment[] = [];
  let tryAt = start.time + ARRIVED.first;
  let h = 0.05;
  for (let attempt = 0; attempt < 120 && h > 1e-6; attempt++) {
    from.set(at.x);
    x.set(at.x);
    const demand = asRelease(demandAt(at.time + h), x[model.fire]);
    solver.balanceFlows(x);
    const outcome = solver.implicitStep(x, from, demand, 'nothing', h);
    if (!outcome.converged) {
      h *= 0.3;
      continue;
    }
    solver.balanceFlows(x);
    balances.evaluate(x, demand, true, true);
    balances.contents(from, fixed);
    balances.stems.solve(x, fixed, h);
    storage.fill(0);
    balances.addGasStorage(x, from, h, storage);
    let { stored } = at;
    for (let z = 0; z < model.zoneCount; z++) stored -= h * storage[model.gas + z];
    for (let i = 0; i < model.nodeCount; i++) stored += h * balances.rate[i];
    const loss = balances.totalLoss();
    const next: Moment = {
      time: at.time + h,
      x: x.slice(),
      fireHeat: at.fireHeat + h * x[model.fire],
      lost: at.lost + h * loss,
      stored,
      loss,
      massError: balances.massError(),
    };
    if (stop && watched) {
      const now = stop.left(next);
      if (now < -Math.min(stop.within, (EVENT_TIME * (left - now)) / h) && h > SHORTEST) {
        h *= Math.min(0.9, Math.max(0.1, (left + 0.5 * stop.within) / (left - now)));
        continue;
      }
      left = now;
    }
    at = next;
    trail.push(at);
    if (left <= 0 && watched) return { moment: at, trail, settled: false };
    h *= outcome.iterations <= 6 ? 2 : 1.2;
    if (at.time < tryAt) continue;
    tryAt = start.time + ARRIVED.again * (at.time - start.time);
    const trial = at.x.slice();
    const steady = solver.newton(trial, demandAt(at.time), 'nodes');
    if (!steady.converged) continue;
    const arrived = { ...at, x: trial, loss: balances.totalLoss(), massError: steady.massError };
    if (stop && watched && stop.left(arrived) <= 0) {
      // the jump itself goes past the stop: whoever waits for it takes the pit over as it is on the way
      return { moment: at, trail, settled: false };
    }
    return { moment: arrived, trail, settled: true };
  }
  return null;
}

/** The fire as a release: what is asked for, or where the gauge is held, what burns now. */
function asRelease(demand: Demand, now: number): Demand & { mode: 'release' } {
  return demand.mode === 'release' ? demand : { mode: 'release', heat: Math.max(0, now) };
}
