import { splitFire } from '../../physics/splits.js';
import type { HeldPit } from './heldPit.js';
import { Timeline, type Curve } from './timeline.js';

/** Points of a cycle at least, so that its highest and lowest are seen. */
const POINTS = 20;
/** The cycles count as alike when the thermometer's highest and lowest move less than this from one to the next [K]. */
const ALIKE = 0.1;
const MOST_CYCLES = 20;
/** Below this share of the fire asked for it counts as held down by air. */
const LIMITED = 0.995;

/** A fire that goes up and down by a fixed rule, again and again. */
export interface CyclicFire {
  period: number;
  /** heat at a time within the period [W]; smooth between the breaks */
  heatAt(t: number): number;
  /** times within the period at which it jumps or bends (default: its start alone) [s] */
  breaks?: number[];
}

export interface Swing {
  period_s: number;
  /** wood laid on each time [kg]; for splits */
  wood_kg: number | null;
  /** from lowest to highest over a cycle [K] */
  thermometer_K: number;
  steel_K: number;
  /** mean reading over a cycle [K] */
  mean_K: number;
  lowest_K: number;
  highest_K: number;
  /** highest fire in the cycle, and whether air held it down */
  highestFire_W: number;
  limitedByAir: boolean;
  /** the last cycle, from its start */
  curve: Curve;
  cycles: number;
  energyError: number;
  massError_kg_per_s: number;
}

/** The swing that splits make in a pit, their mean being the fire that holds its target. @returns null: steps broke off */
export function splitSwing(held: HeldPit, tolerance = 1): Swing | null {
  const { splits } = held.pit.design.fire;
  const { every } = splits;
  const heatAt = (t: number) => splitFire(splits, held.fire, t);
  const swing = swingUnder(held, { period: every, heatAt }, tolerance);
  return swing && { ...swing, wood_kg: (held.fire * every) / held.pit.design.wood.heat };
}

/**
 * Swing of the gauge's thermometer and of its station's steel once every cycle of the fire is like the last.
 *
 * Starts from the pit that holds its target, which is near the mean of the cycles, and follows them until they are alike.
 * A period of 0 is the steady fire: no swing.
 *
 * @returns null: steps broke off
 */
export function swingUnder(held: HeldPit, fire: CyclicFire, tolerance = 1): Swing | null {
  const { period } = fire;
  const line = new Timeline(held.pit, held.x, { longestStep: Math.max(1e-3, period / POINTS), tolerance });
  if (!(period > 0)) {
    const steady = line.burn(() => ({ mode: 'release', heat: held.fire }));
    return steady ? describe(line, fire, 0, 0) : null;
  }
  const breaks = [0, ...(fire.breaks ?? []).filter((t) => t > 0 && t < period), period];
  let before: [number, number] = [NaN, NaN];
  for (let cycle = 0; cycle < MOST_CYCLES; cycle++) {
    const from = line.curve.time_s.length;
    for (let i = 1; i < breaks.length; i++) {
      const start = cycle * period;
      // what a fire is at a break belongs to the stretch that begins there
      const last = breaks[i] * (1 - 1e-12);
      const demand = (t: number) => fire.heatAt(Math.min(Math.max(t - start, breaks[i - 1]), last));
      if (!line.burn((t) => ({ mode: 'release', heat: demand(t) })) || !line.runTo(start + breaks[i])) return null;
    }
    const now = extremes(line.curve, from);
    if (Math.abs(now[0] - before[0]) < ALIKE && Math.abs(now[1] - before[1]) < ALIKE) {
      return describe(line, fire, from, cycle + 1);
    }
    before = now;
  }
  return describe(
    line,
    fire,
    line.curve.time_s.findIndex((t) => t >= (MOST_CYCLES - 1) * period),
    MOST_CYCLES,
  );
}

function extremes({ thermometer_K }: Curve, from: number): [number, number] {
  const values = thermometer_K.slice(from);
  return [Math.min(...values), Math.max(...values)];
}

function describe(line: Timeline, { period, heatAt }: CyclicFire, from: number, cycles: number): Swing {
  const start = (cycles - 1) * period;
  const { curve: all, energyError, massError } = line;
  const curve: Curve = {
    time_s: all.time_s.slice(from).map((t) => Math.max(0, t - start)),
    fire_W: all.fire_W.slice(from),
    thermometer_K: all.thermometer_K.slice(from),
    gas_K: all.gas_K.slice(from),
    steel_K: all.steel_K.slice(from),
  };
  const [lowest, highest] = [Math.min(...curve.thermometer_K), Math.max(...curve.thermometer_K)];
  const asked = (t: number) => heatAt(Math.min(t, period * (1 - 1e-12)));
  return {
    period_s: period,
    wood_kg: null,
    thermometer_K: highest - lowest,
    steel_K: Math.max(...curve.steel_K) - Math.min(...curve.steel_K),
    mean_K: meanOf(curve.time_s, curve.thermometer_K),
    lowest_K: lowest,
    highest_K: highest,
    highestFire_W: Math.max(...curve.fire_W),
    limitedByAir: period > 0 && curve.time_s.some((t, i) => curve.fire_W[i] < LIMITED * asked(t)),
    curve,
    cycles,
    energyError,
    massError_kg_per_s: massError,
  };
}

/** Mean over time by trapezoids. */
function meanOf(time: number[], values: number[]): number {
  let sum = 0;
  for (let i = 1; i < time.length; i++) sum += 0.5 * (values[i] + values[i - 1]) * (time[i] - time[i - 1]);
  const length = time[time.length - 1] - time[0];
  return length > 0 ? sum / length : values[0];
}
