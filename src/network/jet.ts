import { gasDensity } from '../physics/gasMixture.js';
import { AIR_HEAT, jetEntrainment } from '../physics/plume.js';
import { enter, shift } from './carried.js';
import type { Model } from './model.js';
import { Rising } from './rising.js';

/** Steps of the differences by which slopes are taken: [K], and a share of a flow. */
const T_STEP = 0.01;
const FLOW_STEP = 1e-4;

/** A hot stream that enters a column of layers by an opening, rises in it and takes in what it passes. */
export class Jet extends Rising {
  /** zone that it comes from */
  readonly source: number;
  /** of its gas, where it ends: a layer each [kg/s] */
  readonly own: Float64Array;
  /** change of the net inflows with the jet's own mass flow, three a layer */
  readonly byFlow: Float64Array;
  private readonly width: number;
  private readonly centre: number;

  /** `zones`, `floors` and `temperature`: of the column, as in `Rising`. */
  constructor(
    model: Model,
    zones: readonly number[],
    floors: readonly number[],
    temperature: Float64Array,
    readonly opening: number,
  ) {
    const { from, to, jet, centre } = model.network.openings[opening];
    super(model, zones, floors, temperature, zones.indexOf(to));
    const n = zones.length;
    this.source = from;
    this.width = jet!;
    this.centre = centre;
    this.own = this.moved.subarray(n * n);
    this.byFlow = new Float64Array(3 * n);
  }

  /**
   * Add what it carries from layer to layer at x to `net`, three a layer, and what leaves each to `left`. Its own gas
   * has been set down where it enters.
   */
  evaluate(x: Float64Array, net: Float64Array, left: Float64Array): void {
    const { model, opening, source, moved } = this;
    this.rise(model.flows[opening].forward, x[model.gas + source], moved);
    this.carry(x, moved, model.enthalpy[source], net);
    this.addLeft(left);
  }

  /** @param ownHeat enthalpy of its own gas [J/kg] */
  private carry(x: Float64Array, moved: Float64Array, ownHeat: number, out: Float64Array): void {
    const { model, level } = this;
    const n = this.zones.length;
    this.carryLayers(x, moved, out);
    const share = x[model.fuel + this.source];
    for (let k = 0; k < n; k++) {
      const mass = moved[n * n + k];
      if (mass !== 0 && k !== level) shift(out, 3 * level, 3 * k, mass, mass * ownHeat, mass * share);
    }
  }

  /** It rises from the layer that it enters. */
  private rise(flow: number, source: number, moved: Float64Array): void {
    const { model, zones, temperature, plume, floors, level } = this;
    const n = zones.length;
    this.begin(moved, Math.max(0, flow));
    if (flow <= 0) return;
    let T = source;
    let mass = flow;
    let share = 1;
    for (let k = level; k < n; k++) {
      const on = this.spread(moved, k, T - temperature[k]);
      if (on <= 0) return;
      mass *= on;
      share *= on;
      const Tk = temperature[k];
      const density = gasDensity(Tk, model.network.outdoors.pressure, model.airConstant);
      const perMetre = jetEntrainment(mass * AIR_HEAT * (T - Tk), T, this.width, density, Tk);
      const taken = share * model.network.entrainment * perMetre * (floors[k + 1] - this.takesFrom(k, this.centre));
      plume[k] += taken;
      T = (mass * T + taken * Tk) / (mass + taken);
      mass += taken;
    }
  }

  /**
   * Enter its slopes at the x of the last `evaluate`, but for those that follow the flow of its opening: they stand in
   * `byFlow`.
   */
  addSlopes(x: Float64Array, m: Float64Array): void {
    const { model, zones, temperature, nearby, moved, level } = this;
    const { gas, fuel } = model;
    const n = zones.length;
    const flow = model.flows[this.opening].forward;
    // what is missing in its own gas is missing where that gets to
    const ownHeat = model.enthalpy[this.source] - model.plugFlow.deficitByFlow[2 * this.opening];
    for (let i = 0; i < n; i++) this.enterOrigin(x, m, i, zones[i], zones[i]);
    this.enterOrigin(x, m, n, zones[level], this.source);
    const source = x[gas + this.source];
    const step = FLOW_STEP * flow + 1e-7;
    this.rise(flow + step, source, nearby);
    for (let i = 0; i < nearby.length; i++) nearby[i] = (nearby[i] - moved[i]) / step;
    this.byFlow.fill(0);
    this.carry(x, nearby, ownHeat, this.byFlow);
    for (let layer = level; layer <= n; layer++) {
      const unknown = gas + (layer < n ? zones[layer] : this.source);
      if (layer < n) temperature[layer] += T_STEP;
      this.rise(flow, layer < n ? source : source + T_STEP, nearby);
      if (layer < n) temperature[layer] -= T_STEP;
      for (let i = 0; i <= n; i++) {
        const from = zones[i < n ? i : level];
        const origin = i < n ? zones[i] : this.source;
        const heat = i < n ? model.enthalpy[origin] : ownHeat;
        for (let k = 0; k < n; k++) {
          const mass = (nearby[i * n + k] - moved[i * n + k]) / T_STEP;
          if (mass === 0 || zones[k] === from) continue;
          enter(model, m, from, zones[k], unknown, mass, mass * heat, mass * x[fuel + origin]);
        }
      }
    }
  }
}
