import { plumeOrigin } from '../physics/ceilingJet.js';
import { gasDensity } from '../physics/gasMixture.js';
import { AIR_HEAT, plumeFlow } from '../physics/plume.js';
import { enter, shift } from './carried.js';
import { apart, within } from './jet.js';
import { FUEL_ROW, MASS_ROW, type Model } from './model.js';

/** Mass flow that counts as none where a plume's temperature is asked for [kg/s]: a heater makes no gas. */
const LEAST_MASS = 1e-9;
/** Steps of the differences by which slopes are taken: [K], and a share of the fire and the least of it [W]. */
const T_STEP = 0.01;
const FIRE_STEP = 1e-4;
const LEAST_FIRE_STEP = 0.01;

/**
 * The plume of a fire in a column of layers: it takes what the fire gives its gas up with it, takes in gas of every layer that it
 * passes, and spreads out where what stands above is as hot as it has become.
 */
export class FirePlume {
  /** place of the fire's layer in the column */
  private readonly level: number;
  /** mass from each layer into each layer [kg/s]; last the shares of the fire's own gas and heat that end in each layer */
  private readonly moved: Float64Array;
  private readonly nearby: Float64Array;
  private readonly plume: Float64Array;
  /** net inflows, three a layer, here and a little off */
  private readonly here: Float64Array;
  private readonly off: Float64Array;

  /**
   * @param zones of the column, lowest first
   * @param floors of these zones, last the roof [m]
   * @param temperature of their gas [K], kept by the column
   */
  constructor(
    private readonly model: Model,
    private readonly zones: readonly number[],
    private readonly floors: readonly number[],
    private readonly temperature: Float64Array,
  ) {
    const n = zones.length;
    this.level = zones.indexOf(model.network.fire.zone);
    this.moved = new Float64Array((n + 1) * n);
    this.nearby = new Float64Array((n + 1) * n);
    this.plume = new Float64Array(n + 1);
    this.here = new Float64Array(3 * n);
    this.off = new Float64Array(3 * n);
  }

  /** Add what it carries from layer to layer at x to `net`, three a layer, and what leaves each to `left`; what the fire gives stands in its layer. */
  evaluate(x: Float64Array, net: Float64Array, left: Float64Array): void {
    const { model, moved, zones } = this;
    this.rise(x[model.fire], moved);
    this.carry(x, x[model.fire], moved, net);
    const n = zones.length;
    for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) if (k !== i) left[i] += moved[i * n + k];
  }

  private carry(x: Float64Array, release: number, moved: Float64Array, out: Float64Array): void {
    const { zones, model, level } = this;
    const { fire } = model.network;
    const n = zones.length;
    const gas = (release / fire.heatValue) * fire.gasPerFuel;
    const heat = (1 - model.radiantShare) * release;
    for (let k = 0; k < n; k++) {
      const share = moved[n * n + k];
      if (share !== 0 && k !== level) shift(out, 3 * level, 3 * k, share * gas, share * heat, share * gas);
    }
    for (let i = 0; i < n; i++) {
      const enthalpy = model.enthalpy[zones[i]];
      const fuel = x[model.fuel + zones[i]];
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass !== 0 && k !== i) shift(out, 3 * i, 3 * k, mass, mass * enthalpy, mass * fuel);
      }
    }
  }

  private rise(release: number, moved: Float64Array): void {
    const { model, zones, temperature, plume, floors, level } = this;
    const { fire, outdoors } = model.network;
    const { at, across, bending } = fire.plume!;
    const n = zones.length;
    moved.fill(0);
    plume.fill(0);
    plume[n] = 1;
    const density = (T: number) => gasDensity(T, outdoors.pressure, model.airConstant);
    const burning = Math.max(0, release);
    const origin = plumeOrigin(burning, across, density(temperature[level]), temperature[level]);
    let mass = (burning / fire.heatValue) * fire.gasPerFuel;
    /** what it carries over gas of no temperature [W] */
    let heat = (1 - model.radiantShare) * burning + AIR_HEAT * mass * temperature[level];
    let share = 1;
    for (let k = level; k < n; k++) {
      const Tk = temperature[k];
      const excess = heat - AIR_HEAT * mass * Tk;
      const hotter = excess / (AIR_HEAT * (mass + LEAST_MASS));
      const on = k < n - 1 ? within(hotter / apart(temperature[k + 1] - Tk)) : 0;
      for (let i = 0; i <= n; i++) {
        if (plume[i] === 0) continue;
        moved[i * n + k] += (1 - on) * plume[i];
        plume[i] *= on;
      }
      if (on <= 0) return;
      mass *= on;
      heat *= on;
      share *= on;
      const from = k === level ? Math.max(floors[k], Math.min(at, floors[k + 1])) : floors[k];
      const carried = (z: number) => plumeFlow(excess, z - at, origin, across, density(Tk), Tk);
      const taken = share * bending * Math.max(0, carried(floors[k + 1]) - carried(from));
      plume[k] += taken;
      mass += taken;
      heat += AIR_HEAT * taken * Tk;
    }
  }

  /** Enter its slopes at the x of the last `evaluate`. */
  addSlopes(x: Float64Array, m: Float64Array): void {
    const { model, zones, temperature, nearby, moved, level } = this;
    const { gas, heatCapacity, fuel, fire, size } = model;
    const n = zones.length;
    for (let i = 0; i < n; i++) {
      const byFuel = model.enthalpyOfFuel(x[gas + zones[i]]);
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass === 0 || k === i) continue;
        enter(model, m, zones[i], zones[k], gas + zones[i], 0, mass * heatCapacity[zones[i]], 0);
        enter(model, m, zones[i], zones[k], fuel + zones[i], 0, mass * byFuel, mass);
      }
    }
    this.here.fill(0);
    this.carry(x, x[fire], moved, this.here);
    const differ = (unknown: number, step: number, release: number) => {
      this.rise(release, nearby);
      this.off.fill(0);
      this.carry(x, release, nearby, this.off);
      for (let k = 0; k < n; k++) {
        for (let row = 0; row < 3; row++) {
          const slope = (this.off[3 * k + row] - this.here[3 * k + row]) / step;
          const at = [model.pressure, gas, fuel][row] + zones[k];
          m[at * size + unknown] -= slope * [MASS_ROW, 1, FUEL_ROW][row];
        }
      }
    };
    for (let k = level; k < n; k++) {
      temperature[k] += T_STEP;
      differ(gas + zones[k], T_STEP, x[fire]);
      temperature[k] -= T_STEP;
    }
    const step = FIRE_STEP * Math.abs(x[fire]) + LEAST_FIRE_STEP;
    differ(fire, step, x[fire] + step);
  }
}
