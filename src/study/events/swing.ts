import type { Design } from '../../design/design.js';
import { Bed } from './bed.js';
import type { HeldPit } from './heldPit.js';
import { boxOf, openAtFirst, ruleOf, withIntakes } from './minding.js';
import { BED_STEP, CURVE_STEP, SMOULDERS, Stoker } from './stoker.js';
import { meanOverTime, timeWithin } from './timeWithin.js';
import { Timeline, type Curve } from './timeline.js';

/** A split is forgotten for so long, and its dip followed so long after it is laid on [s]. */
export const LATE = 1200;
const DIP = 900;
/** Cycles count as alike when the thermometer's highest and lowest move less than this from one to the next [K]. */
const ALIKE = 0.5;
/** So many cycles, and so long, until they are taken as they come [s]. */
const MOST_CYCLES = 14;
const LONGEST = 16 * 3600;
/** Of cycles that are never alike the last so many are told. */
const TOLD = 5;
/** The thermometer counts as in the band when it is this near the target, unless the cook says otherwise: 15 °F [K]. */
const BAND = 15 / 1.8;
/** What splits, one after the other, do to a thermometer and to steel. */
export interface Swing {
  /** mean time from one split to the next, the shortest and the longest [s]; 0: a steady fire */
  period_s: number;
  shortest_s: number;
  longest_s: number;
  /** wood laid on each time [kg]; null: a steady fire */
  wood_kg: number | null;
  /** every cycle is like the last, or like the last but one */
  repeats: boolean;
  /** from lowest to highest [K] */
  thermometer_K: number;
  steel_K: number;
  mean_K: number;
  lowest_K: number;
  highest_K: number;
  /** share of the time within the cook's band [-] */
  inBand_share: number;
  /** highest fire [W], and whether air held flames down until they smouldered */
  highestFire_W: number;
  limitedByAir: boolean;
  /** lowest reading where the next split is laid on 20 min late [K]; null: it was not followed */
  late_K: number | null;
  /** share that the intakes stood open at the end, where the cook turned them; else null */
  open: number | null;
  /** the cycles told, from a split laid on */
  curve: Curve;
  cycles: number;
  /** wood laid on against heat released and left in the bed, as a share */
  woodError: number;
  energyError: number;
  massError_kg_per_s: number;
}

/**
 * Does the thermometer, for want of air, stay under the line at which a split is laid on? Then nothing goes up and
 * down.
 */
export function sinks({ limitedByAir, mean_K }: Swing, { target, cook }: Design['fire']): boolean {
  return limitedByAir && mean_K < target + cook.line;
}

/**
 * How the thermometer swings under the splits of a cook: laid on by the clock, or when it has fallen to the line.
 *
 * Starts from the pit that holds its target and follows cycles until they are alike.
 *
 * @returns null: steps broke off, or the thermometer never falls to the line
 */
export function splitSwing(held: HeldPit): Swing | null {
  const { design } = held.pit;
  const { splits } = design.fire;
  const rule = ruleOf(design, held.fire);
  const start = openAtFirst(design, rule);
  const pit = rule.intakes ? withIntakes(design, start) : held.pit;
  const line = new Timeline(pit, held.x, { longestStep: BED_STEP, spacing: CURVE_STEP });
  if (splits.every === 0) {
    return line.burn(() => ({ mode: 'release', heat: held.fire })) ? describe(line, null, [0], Infinity, true) : null;
  }
  const bed = new Bed(splits);
  const stoker = new Stoker(line, bed, rule, boxOf(design), start);
  stoker.burnIn();
  stoker.lay();
  if (!stoker.takeOver()) return null;
  const { laid } = stoker;
  const told = (cycles: number, repeats: boolean): Swing => {
    const swing = describe(
      line,
      stoker,
      laid.slice(-1 - cycles).map(({ at }) => at),
      air,
      repeats,
    );
    return { ...swing, late_K: lowestWhenLate(stoker) };
  };
  const peaks: [number, number][] = [];
  let air = Infinity;
  while (laid.length <= MOST_CYCLES) {
    const count = laid.length;
    stoker.leastAir = Infinity;
    if (!stoker.mind(LONGEST, { enough: () => laid.length > count })) return null;
    if (laid.length === count) break;
    air = stoker.leastAir;
    peaks.push(extremes(line.curve, laid[count - 1].at, laid[count].at));
    const alike = [1, 2].find(
      (back) =>
        peaks.length > back + 1 &&
        near(peaks[peaks.length - 1], peaks[peaks.length - 1 - back]) &&
        laid[laid.length - 1].open === laid[laid.length - 1 - back].open,
    );
    if (alike) return told(alike, true);
  }
  return laid.length > TOLD ? told(TOLD, false) : null;
}

/** How far the reading falls where the next split comes late [K]; null: steps broke off. */
function lowestWhenLate(stoker: Stoker): number | null {
  const { line, laid } = stoker;
  const [from, count] = [line.curve.time_s.length - 1, laid.length];
  stoker.beLate(LATE);
  if (!stoker.mind(line.moment.time + LONGEST, { enough: () => laid.length > count })) return null;
  if (!stoker.mind(line.moment.time + DIP)) return null;
  return Math.min(...line.curve.thermometer_K.slice(from));
}

function near(a: [number, number], b: [number, number]): boolean {
  return Math.abs(a[0] - b[0]) < ALIKE && Math.abs(a[1] - b[1]) < ALIKE;
}

function extremes({ thermometer_K }: Curve, from: number, to: number): [number, number] {
  const values = thermometer_K.slice(from, to + 1);
  return [Math.min(...values), Math.max(...values)];
}

/** @param starts points of the curve at which the cycles told begin, and where the last one ends */
function describe(line: Timeline, stoker: Stoker | null, starts: number[], air: number, repeats: boolean): Swing {
  const [from, to] = [starts[0], starts[starts.length - 1]];
  const { curve: all, energyError, massError } = line;
  const { design } = line.pit;
  const of = (values: number[]) => values.slice(from, to + 1);
  const zero = all.time_s[from];
  const curve: Curve = {
    time_s: of(all.time_s).map((t) => t - zero),
    fire_W: of(all.fire_W),
    thermometer_K: of(all.thermometer_K),
    gas_K: of(all.gas_K),
    steel_K: of(all.steel_K),
  };
  const times = starts.map((at) => all.time_s[at]);
  const intervals = times.slice(1).map((t, i) => t - times[i]);
  const [lowest, highest] = extremes(curve, 0, to - from);
  const target = design.fire.target;
  const length = times[times.length - 1] - times[0];
  const { laid = 0, released = 0, left = { wood: 0, charcoal: 0 } } = stoker?.bed ?? {};
  return {
    period_s: intervals.length > 0 ? length / intervals.length : 0,
    shortest_s: intervals.length > 0 ? Math.min(...intervals) : 0,
    longest_s: intervals.length > 0 ? Math.max(...intervals) : 0,
    wood_kg: stoker && stoker.rule.split / design.wood.heat,
    repeats,
    thermometer_K: highest - lowest,
    steel_K: Math.max(...curve.steel_K) - Math.min(...curve.steel_K),
    mean_K: meanOverTime(curve.time_s, curve.thermometer_K),
    lowest_K: lowest,
    highest_K: highest,
    inBand_share: length > 0 ? timeWithin(curve, 0, target, design.cook?.band ?? BAND) / length : 1,
    highestFire_W: Math.max(...curve.fire_W),
    limitedByAir: air < SMOULDERS,
    late_K: null,
    open: stoker?.rule.intakes ? stoker.open : null,
    curve,
    cycles: stoker ? stoker.laid.length - 1 : 0,
    woodError: laid > 0 ? Math.abs(laid - released - left.wood - left.charcoal) / laid : 0,
    energyError,
    massError_kg_per_s: massError,
  };
}
