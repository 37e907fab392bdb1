/** Runs a room through the solvers that run a pit: its steady state, or its states along a fire that changes in time. */
import { Balances } from '../../network/balances.js';
import { Model } from '../../network/model.js';
import { OUTDOORS, type Network } from '../../network/types.js';
import { neutralHeight } from '../../physics/draft.js';
import { QuasiSteadySolver } from '../../network/quasiSteady.js';
import { Transient } from '../../network/transient.js';

/** A solved moment of a room. */
export interface RoomState {
  time: number;
  /** unknowns, in the order of the model */
  x: Float64Array;
  gas: number;
  /** of every zone [K] */
  gases: Float64Array;
  /** of all openings to outdoors together [kg/s] */
  outflow: number;
  inflow: number;
  /** height at which inside and outside pressure are equal [m above the floor] */
  neutralHeight: number;
  /** heat through walls and with the gas [W] */
  wallLoss: number;
  gasLoss: number;
}

/** Largest step by which a room is followed [s]; the solver takes shorter ones by itself. */
const FIRST_STEP = 0.5; // s
const FIRST_MOMENT = 1e-3; // s

class SolvedRoom {
  readonly model: Model;
  readonly balances: Balances;
  readonly solver: QuasiSteadySolver;

  constructor(network: Network) {
    this.model = new Model(network);
    this.balances = new Balances(this.model);
    this.solver = new QuasiSteadySolver(this.balances);
  }

  describe(time: number, x: Float64Array, heat: number): RoomState {
    const { model, balances } = this;
    balances.evaluate(x, { mode: 'release', heat });
    const outside = model.flows.filter((_, i) => model.network.openings[i].to === OUTDOORS);
    return {
      time,
      x: x.slice(),
      gas: x[model.gas],
      gases: x.slice(model.gas, model.gas + model.zoneCount),
      outflow: outside.reduce((sum, flow) => sum + flow.forward, 0),
      inflow: outside.reduce((sum, flow) => sum + flow.backward, 0),
      neutralHeight: neutralHeight(x[model.pressure], model.density[0], model.outdoorDensity) ?? NaN,
      wallLoss: balances.totalLoss() - balances.leakLoss,
      gasLoss: balances.leakLoss,
    };
  }
}

/**
 * Steady state under a fire.
 * @throws RangeError when none is found
 */
export function steadyRoom(network: Network, heat: number): RoomState {
  const room = new SolvedRoom(network);
  const x = room.solver.burningState(heat);
  const { converged, heatError } = room.solver.solve(x, { mode: 'release', heat });
  if (!converged) throw new RangeError(`the room does not settle: ${heatError} W are left over`);
  return room.describe(Infinity, x, heat);
}

/** Heat release as a function of time, with the moments at which it jumps or bends. */
export interface HeatRelease {
  at(time: number): number;
  breaks: readonly number[];
}

/**
 * States at wanted times [s, rising], from everything at outdoor temperature at time 0.
 * @param gas follows the fire at once, or takes up heat of its own, as a pit's does from the match on
 * @throws RangeError when no step converges
 */
export function roomThroughTime(
  network: Network,
  release: HeatRelease,
  times: readonly number[],
  gas: 'atOnce' | 'ownHeat' = 'atOnce',
): RoomState[] {
  const room = new SolvedRoom(network);
  const { solver } = room;
  const run = new Transient(solver, solver.burningState(0, solver.coldState()), FIRST_MOMENT);
  const demandAt = (time: number) => ({ mode: 'release' as const, heat: release.at(time) });
  const begin = () => {
    if (gas === 'ownHeat') return run.goOn(demandAt, FIRST_STEP);
    if (!run.change(demandAt, FIRST_STEP))
      throw new RangeError(`the room's gas does not settle at ${run.moment.time} s`);
  };
  const follow = (until: number) => {
    while (run.moment.time < until - 1e-9) {
      if (run.step(until) === 'failed') throw new RangeError(`no time step converges at ${run.moment.time} s`);
    }
  };
  begin();
  return times.map((time) => {
    for (const moment of release.breaks) {
      if (moment <= run.moment.time || moment >= time) continue;
      follow(moment);
      begin();
    }
    follow(time);
    return room.describe(time, run.moment.x, release.at(time));
  });
}
