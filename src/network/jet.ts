import { gasDensity } from '../physics/gasMixture.js';
import { AIR_HEAT, jetEntrainment } from '../physics/plume.js';
import { enter, shift } from './carried.js';
import type { Model } from './model.js';

/** Layers less apart than this count as so much apart, where a stream's gas is shared out between them [K]. */
const LEAST_APART = 5;
/** Rounding of the ends of such a share. */
const ROUND = 0.1;
/** Steps of the differences by which slopes are taken: [K], and a share of a flow. */
const T_STEP = 0.01;
const FLOW_STEP = 1e-4;

/** A hot stream that enters a column of layers by an opening, rises in it and takes in what it passes. */
export class Jet {
  /** zone that it comes from */
  readonly source: number;
  /** of its gas, where it ends: a layer each [kg/s] */
  readonly own: Float64Array;
  /** change of the net inflows with the jet's own mass flow, three a layer */
  readonly byFlow: Float64Array;
  /** place of the zone that it enters in the column */
  private readonly level: number;
  private readonly width: number;
  private readonly centre: number;
  /** mass from each layer, last from the source, into each layer [kg/s], origin by origin */
  private readonly moved: Float64Array;
  private readonly plume: Float64Array;
  private readonly nearby: Float64Array;

  /**
   * @param zones of the column, lowest first
   * @param floors of these zones [m]
   * @param temperature of their gas [K], kept by the column
   */
  constructor(
    private readonly model: Model,
    private readonly zones: readonly number[],
    private readonly floors: readonly number[],
    private readonly temperature: Float64Array,
    readonly opening: number,
  ) {
    const { from, to, jet, centre } = model.network.openings[opening];
    const n = zones.length;
    this.source = from;
    this.level = zones.indexOf(to);
    this.width = jet!;
    this.centre = centre;
    this.moved = new Float64Array((n + 1) * n);
    this.own = this.moved.subarray(n * n);
    this.byFlow = new Float64Array(3 * n);
    this.plume = new Float64Array(n + 1);
    this.nearby = new Float64Array((n + 1) * n);
  }

  /** Add what it carries from layer to layer at x to `net`, three a layer, and what leaves each to `left`. Its own gas has been set down where it enters. */
  evaluate(x: Float64Array, net: Float64Array, left: Float64Array): void {
    const { model, opening, source, moved } = this;
    this.rise(model.flows[opening].forward, x[model.gas + source], moved);
    this.carry(x, moved, model.enthalpy[source], net);
    const n = left.length;
    for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) if (k !== i) left[i] += moved[i * n + k];
  }

  /** @param ownHeat enthalpy of its own gas [J/kg] */
  private carry(x: Float64Array, moved: Float64Array, ownHeat: number, out: Float64Array): void {
    const { zones, model } = this;
    const n = zones.length;
    for (let i = 0; i <= n; i++) {
      const from = i < n ? i : this.level;
      const origin = i < n ? zones[i] : this.source;
      const heat = i < n ? model.enthalpy[origin] : ownHeat;
      const share = x[model.fuel + origin];
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass !== 0 && k !== from) shift(out, 3 * from, 3 * k, mass, mass * heat, mass * share);
      }
    }
  }

  /**
   * It rises from the layer that it enters, takes in gas of every layer that it passes, and spreads out where what stands above is
   * as hot as it has become: between two layers in shares, as its temperature lies between theirs.
   */
  private rise(flow: number, source: number, moved: Float64Array): void {
    const { model, zones, temperature, plume, floors, level } = this;
    const n = zones.length;
    moved.fill(0);
    if (flow <= 0) return;
    plume.fill(0);
    plume[n] = flow;
    let T = source;
    let mass = flow;
    let share = 1;
    for (let k = level; k < n; k++) {
      const on = k < n - 1 ? within((T - temperature[k]) / apart(temperature[k + 1] - temperature[k])) : 0;
      for (let i = 0; i <= n; i++) {
        if (plume[i] === 0) continue;
        moved[i * n + k] += (1 - on) * plume[i];
        plume[i] *= on;
      }
      if (on <= 0) return;
      mass *= on;
      share *= on;
      const from = k === level ? Math.max(floors[k], Math.min(this.centre, floors[k + 1])) : floors[k];
      const Tk = temperature[k];
      const density = gasDensity(Tk, model.network.outdoors.pressure, model.airConstant);
      const perMetre = jetEntrainment(mass * AIR_HEAT * (T - Tk), T, this.width, density, Tk);
      const taken = share * model.network.entrainment * perMetre * (floors[k + 1] - from);
      plume[k] += taken;
      T = (mass * T + taken * Tk) / (mass + taken);
      mass += taken;
    }
  }

  /** Enter its slopes at the x of the last `evaluate`, but for those that follow the flow of its opening: they stand in `byFlow`. */
  addSlopes(x: Float64Array, m: Float64Array): void {
    const { model, zones, temperature, nearby, moved, level } = this;
    const { gas, fuel, heatCapacity } = model;
    const n = zones.length;
    const flow = model.flows[this.opening].forward;
    // what is missing in its own gas is missing where that gets to
    const ownHeat = model.enthalpy[this.source] - model.plugFlow.deficitByFlow[2 * this.opening];
    for (let i = 0; i <= n; i++) {
      const from = zones[i < n ? i : level];
      const origin = i < n ? zones[i] : this.source;
      const byFuel = model.enthalpyOfFuel(x[gas + origin]);
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass === 0 || zones[k] === from) continue;
        enter(model, m, from, zones[k], gas + origin, 0, mass * heatCapacity[origin], 0);
        enter(model, m, from, zones[k], fuel + origin, 0, mass * byFuel, mass);
      }
    }
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

/** A share between 0 and 1, its ends rounded. */
export function within(x: number): number {
  if (x <= -ROUND) return 0;
  if (x >= 1 + ROUND) return 1;
  if (x < ROUND) return ((x + ROUND) * (x + ROUND)) / (4 * ROUND);
  if (x > 1 - ROUND) return 1 - ((1 + ROUND - x) * (1 + ROUND - x)) / (4 * ROUND);
  return x;
}

/** A difference of temperatures in a divisor: never below some kelvins, without a corner. */
export function apart(difference: number): number {
  return 0.5 * (difference + Math.sqrt(difference * difference + 4 * LEAST_APART * LEAST_APART));
}
