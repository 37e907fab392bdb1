/**
 * Runs a room through the solvers that run a pit: its steady state, or its states along a fire that changes in time.
 */
import { Balances } from '../../network/balances.js';
import { Model } from '../../network/model.js';
import { OUTDOORS, type Network } from '../../network/types.js';
import { columnPressure, neutralHeight } from '../../physics/draft.js';
import { MOLAR_MASS } from '../../physics/gasMixture.js';
import { QuasiSteadySolver } from '../../network/quasiSteady.js';
import { Transient } from '../../network/transient.js';

/** A solved moment of a room. */
export interface RoomState {
  time: number;
  /** unknowns, in the order of the model */
  x: Float64Array;
  /** mean over all its gas, by volume [K] */
  gas: number;
  /** of every zone [K], [kg/m3], and mole fraction of oxygen in its dry gas */
  gases: Float64Array;
  densities: Float64Array;
  oxygen: Float64Array;
  /** of every zone: its pressure against outdoors at the ground, as if its gas reached down there [Pa] */
  grounded: Float64Array;
  /** of every opening, forwards and backwards [kg/s] */
  forward: number[];
  backward: number[];
  /** of all openings to outdoors together [kg/s] */
  outflow: number;
  inflow: number;
  outdoorDensity: number;
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
    const { gas, zoneCount, network, flows } = model;
    const outside = flows.filter((_flow, i) => network.openings[i].to === OUTDOORS);
    const gases = x.slice(gas, gas + zoneCount);
    const volumes = network.zones.map(({ volume }) => volume);
    const whole = volumes.reduce((sum, volume) => sum + volume, 0);
    return {
      time,
      x: x.slice(),
      gas: gases.reduce((sum, T, z) => sum + (T * volumes[z]) / whole, 0),
      gases,
      densities: model.density.slice(),
      oxygen: Float64Array.from(gases, (_T, z) => dryOxygen(model, x[model.fuel + z])),
      grounded: model.grounded.slice(),
      forward: flows.map(({ forward }) => forward),
      backward: flows.map(({ backward }) => backward),
      outflow: outside.reduce((sum, flow) => sum + flow.forward, 0),
      inflow: outside.reduce((sum, flow) => sum + flow.backward, 0),
      outdoorDensity: model.outdoorDensity,
      wallLoss: balances.totalLoss() - balances.leakLoss,
      gasLoss: balances.leakLoss,
    };
  }
}

/** Mole fraction of oxygen in gas whose water has been taken out, as it is sampled. */
function dryOxygen(model: Model, fuel: number): number {
  const moles = (species: 'N2' | 'O2' | 'CO2') => model.massFraction(species, fuel) / MOLAR_MASS[species];
  return moles('O2') / (moles('N2') + moles('O2') + moles('CO2'));
}

/** Pressure of a zone's gas less that of the outdoor air at a height [Pa]. */
export function pressureOverOutdoors(state: RoomState, zone: number, height: number): number {
  return state.grounded[zone] - columnPressure(state.densities[zone] - state.outdoorDensity, height);
}

/**
 * Height at which a column of gas has the pressure of the outdoor air [m above the ground]; NaN where it nowhere has.
 */
export function neutralHeightIn(network: Network, state: RoomState, column: readonly number[]): number {
  for (const zone of column) {
    const found = neutralHeight(state.grounded[zone], state.densities[zone], state.outdoorDensity) ?? NaN;
    const { floor, roof } = network.zones[zone];
    if (column.length === 1 || (found >= floor - 1e-9 && found <= roof + 1e-9)) return found;
  }
  return NaN;
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
