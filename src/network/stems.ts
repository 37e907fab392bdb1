import { settledReading, stemCapacity, stemHeating } from '../physics/thermometer.js';
import type { Model } from './model.js';

/** Difference by which a stem's slope is taken [K]. */
const STEP = 0.01;
/** Passes of Newton, and what it may leave over [K]. */
const PASSES = 20;
const LEFT = 1e-5;

/**
 * Stems of a network's thermometers: they follow gas and walls without touching them. All that is asked of x needs an
 * evaluation there.
 */
export class Stems {
  /** heat capacity per surface [J/(m2 K)] */
  readonly capacity: number;

  constructor(private readonly model: Model) {
    const { diameter, fill } = model.network.stem;
    this.capacity = stemCapacity(diameter, fill);
  }

  /** Heat that stem i takes up per surface when it is at `temperature` [W/m2]; zero where it reads true. */
  rate(x: Float64Array, i: number, temperature: number): number {
    const { model } = this;
    const { stem, outdoors } = model.network;
    return stemHeating(
      atStem(model, i, x, model.gas),
      wallsAtStem(model, i, x),
      temperature,
      atStem(model, i, model.speed, 0),
      outdoors.pressure,
      stem.diameter,
      stem.emissivity,
    );
  }

  /** Change of that with the stem's own temperature [W/(m2 K)]. */
  slope(x: Float64Array, i: number, temperature: number): number {
    return (this.rate(x, i, temperature + STEP) - this.rate(x, i, temperature)) / STEP;
  }

  /** Settled reading of stem i [K]. */
  settled(x: Float64Array, i: number): number {
    const { model } = this;
    const { stem, outdoors } = model.network;
    return settledReading(
      atStem(model, i, x, model.gas),
      wallsAtStem(model, i, x),
      atStem(model, i, model.speed, 0),
      outdoors.pressure,
      stem.diameter,
      stem.emissivity,
    );
  }

  /**
   * Solve each stem for H = fixed + gamma rate, H its heat content per surface, by Newton from where it stands in x.
   */
  solve(x: Float64Array, fixed: Float64Array, gamma: number): void {
    const { model, capacity } = this;
    for (let i = 0; i < model.stemCount; i++) {
      const row = model.nodeCount + i;
      let T = x[row];
      for (let pass = 0; pass < PASSES; pass++) {
        const rate = this.rate(x, i, T);
        const slope = (this.rate(x, i, T + STEP) - rate) / STEP;
        const step = (fixed[row] + gamma * rate - capacity * T) / (capacity - gamma * slope);
        T += step;
        if (Math.abs(step) < LEFT) break;
      }
      x[row] = T;
    }
  }
}

/** What stands in an array a zone each, from `first` on, where stem i is. */
export function atStem({ network }: Model, i: number, values: Float64Array, first: number): number {
  const { parts } = network.stems[i];
  let sum = 0;
  for (let k = 0; k < parts.length; k++) sum += parts[k].share * values[first + parts[k].zone];
  return sum;
}

/** Temperature of the surface nodes where stem i is [K]. */
function wallsAtStem({ network, surfaceOf }: Model, i: number, x: Float64Array): number {
  const { parts } = network.stems[i];
  let sum = 0;
  for (let k = 0; k < parts.length; k++) sum += parts[k].share * x[surfaceOf[parts[k].zone]];
  return sum;
}
