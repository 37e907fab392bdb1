import { enter, shift } from './carried.js';
import type { Model } from './model.js';

/** Layers less apart than this count as so much apart, where a stream's gas is shared out between them [K]. */
const LEAST_APART = 5;
/** Rounding of the ends of such a share. */
const ROUND = 0.1;

/**
 * Gas that rises in a column of layers, takes in what it passes, and spreads out where what stands above is as hot as
 * it has become.
 */
export abstract class Rising {
  /** mass from each layer into each layer [kg/s], origin by origin; last what it began with */
  protected readonly moved: Float64Array;
  protected readonly nearby: Float64Array;
  /** what goes on upwards, by where it comes from */
  protected readonly plume: Float64Array;

  /**
   * @param zones of the column, lowest first
   * @param floors of these zones [m]
   * @param temperature of their gas [K], kept by the column
   * @param level place in the column of the zone where it begins
   */
  constructor(
    protected readonly model: Model,
    protected readonly zones: readonly number[],
    protected readonly floors: readonly number[],
    protected readonly temperature: Float64Array,
    protected readonly level: number,
  ) {
    const n = zones.length;
    this.moved = new Float64Array((n + 1) * n);
    this.nearby = new Float64Array((n + 1) * n);
    this.plume = new Float64Array(n + 1);
  }

  /** Begin anew with its own gas alone. */
  protected begin(moved: Float64Array, own: number): void {
    moved.fill(0);
    this.plume.fill(0);
    this.plume[this.zones.length] = own;
  }

  /**
   * Set down in layer k what does not rise on: between two layers in shares, as its temperature lies between theirs.
   * @param hotter how much hotter it is than the layer [K]
   * @returns share that rises on
   */
  protected spread(moved: Float64Array, k: number, hotter: number): number {
    const { plume, temperature } = this;
    const n = this.zones.length;
    const on = k < n - 1 ? within(hotter / apart(temperature[k + 1] - temperature[k])) : 0;
    for (let i = 0; i <= n; i++) {
      if (plume[i] === 0) continue;
      moved[i * n + k] += (1 - on) * plume[i];
      plume[i] *= on;
    }
    return on;
  }

  /** Height from which it takes in gas of layer k, given where it begins [m]. */
  protected takesFrom(k: number, at: number): number {
    const { floors, level } = this;
    return k === level ? Math.max(floors[k], Math.min(at, floors[k + 1])) : floors[k];
  }

  /** Add what leaves each layer with it to `left`. */
  protected addLeft(left: Float64Array): void {
    const n = left.length;
    for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) if (k !== i) left[i] += this.moved[i * n + k];
  }

  /** Add what it carries of layers' gas to `out`, three a layer. */
  protected carryLayers(x: Float64Array, moved: Float64Array, out: Float64Array): void {
    const { model, zones } = this;
    const n = zones.length;
    for (let i = 0; i < n; i++) {
      const heat = model.enthalpy[zones[i]];
      const share = x[model.fuel + zones[i]];
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass !== 0 && k !== i) shift(out, 3 * i, 3 * k, mass, mass * heat, mass * share);
      }
    }
  }

  /**
   * Enter how heat and fuel of what `moved` holds change with the gas that it comes from; row `i` of it, from a place
   * of the column.
   */
  protected enterOrigin(x: Float64Array, m: Float64Array, i: number, from: number, origin: number): void {
    const { model, zones, moved } = this;
    const { gas, fuel, heatCapacity } = model;
    const n = zones.length;
    const byFuel = model.enthalpyOfFuel(x[gas + origin]);
    for (let k = 0; k < n; k++) {
      const mass = moved[i * n + k];
      if (mass === 0 || zones[k] === from) continue;
      enter(model, m, from, zones[k], gas + origin, 0, mass * heatCapacity[origin], 0);
      enter(model, m, from, zones[k], fuel + origin, 0, mass * byFuel, mass);
    }
  }
}

/** A share between 0 and 1, its ends rounded. */
function within(x: number): number {
  if (x <= -ROUND) return 0;
  if (x >= 1 + ROUND) return 1;
  if (x < ROUND) return ((x + ROUND) * (x + ROUND)) / (4 * ROUND);
  if (x > 1 - ROUND) return 1 - ((1 + ROUND - x) * (1 + ROUND - x)) / (4 * ROUND);
  return x;
}

/** A difference of temperatures in a divisor: never below some kelvins, without a corner. */
function apart(difference: number): number {
  return 0.5 * (difference + Math.sqrt(difference * difference + 4 * LEAST_APART * LEAST_APART));
}
