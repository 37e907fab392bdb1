import { plumeOrigin } from '../physics/ceilingJet.js';
import { gasDensity } from '../physics/gasMixture.js';
import { AIR_HEAT, plumeFlow } from '../physics/plume.js';
import { shift } from './carried.js';
import type { Model } from './model.js';
import { FUEL_ROW, MASS_ROW } from './rows.js';
import { Rising } from './rising.js';

/** Mass flow that counts as none where a plume's temperature is asked for [kg/s]: a heater makes no gas. */
const LEAST_MASS = 1e-9;
/** Steps of the differences by which slopes are taken: [K], and a share of the fire and the least of it [W]. */
const T_STEP = 0.01;
const FIRE_STEP = 1e-4;
const LEAST_FIRE_STEP = 0.01;

/** The plume of a fire in a column of layers: it takes what the fire gives its gas up with it. */
export class FirePlume extends Rising {
  /** net inflows, three a layer, here and a little off */
  private readonly here: Float64Array;
  private readonly off: Float64Array;

  /** `zones`, `floors` and `temperature`: of the column, as in `Rising`; last of the floors is the roof. */
  constructor(model: Model, zones: readonly number[], floors: readonly number[], temperature: Float64Array) {
    super(model, zones, floors, temperature, zones.indexOf(model.network.fire.zone));
    this.here = new Float64Array(3 * zones.length);
    this.off = new Float64Array(3 * zones.length);
  }

  /**
   * Add what it carries from layer to layer at x to `net`, three a layer, and what leaves each to `left`; what the fire
   * gives stands in its layer.
   */
  evaluate(x: Float64Array, net: Float64Array, left: Float64Array): void {
    const { model, moved } = this;
    this.rise(x[model.fire], moved);
    this.carry(x, x[model.fire], moved, net);
    this.addLeft(left);
  }

  private carry(x: Float64Array, release: number, moved: Float64Array, out: Float64Array): void {
    const { zones, model, level } = this;
    const { fire } = model.network;
    const n = zones.length;
    const gas = (release / fire.heatValue) * fire.gasPerFuel;
    const heat = (1 - model.radiantShare) * release;
    this.carryLayers(x, moved, out);
    for (let k = 0; k < n; k++) {
      const share = moved[n * n + k];
      if (share !== 0 && k !== level) shift(out, 3 * level, 3 * k, share * gas, share * heat, share * gas);
    }
  }

  private rise(release: number, moved: Float64Array): void {
    const { model, zones, temperature, plume, floors, level } = this;
    const { fire, outdoors } = model.network;
    const { at, across, bending } = fire.plume!;
    const n = zones.length;
    this.begin(moved, 1);
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
      const on = this.spread(moved, k, hotter);
      if (on <= 0) return;
      mass *= on;
      heat *= on;
      share *= on;
      const carried = (z: number) => plumeFlow(excess, z - at, origin, across, density(Tk), Tk);
      const taken = share * bending * Math.max(0, carried(floors[k + 1]) - carried(this.takesFrom(k, at)));
      plume[k] += taken;
      mass += taken;
      heat += AIR_HEAT * taken * Tk;
    }
  }

  /** Enter its slopes at the x of the last `evaluate`. */
  addSlopes(x: Float64Array, m: Float64Array): void {
    const { model, zones, temperature, nearby, moved, level } = this;
    const { gas, fuel, fire, size } = model;
    const n = zones.length;
    for (let i = 0; i < n; i++) this.enterOrigin(x, m, i, zones[i], zones[i]);
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
