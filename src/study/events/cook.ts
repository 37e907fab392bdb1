import { withFullFire } from '../air/burnsItsAir.js';
import type { Cook, CookEvent, Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import type { BuiltPit } from '../../network/cells.js';
import { TOUCH_LIMIT } from '../../physics/burn.js';
import { fallsTo, hottestOutside } from './coolDown.js';
import { lightUp } from './lighting.js';
import { openDoor } from './door.js';
import { leaveFoodOut, nodesOfFood, withFood } from './food.js';
import { holdPit } from './heldPit.js';
import { makePit, type Pit } from '../../network/pit.js';
import { withOpening } from '../air/cleanHold.js';
import { Bed } from './bed.js';
import { boxOf, coalsOf, openAtFirst, ruleOf } from './minding.js';
import { BED_STEP, CURVE_STEP, Stoker } from './stoker.js';
import { Timeline, type Curve } from './timeline.js';
import { timeWithin } from './timeWithin.js';
import { variantOf } from './variant.js';
import { turnWeather } from './weather.js';
import { listed } from '../../units/listed.js';

/** A cook's day: what it took, and how the thermometer went. */
export interface CookResult {
  /** times from the match [s] */
  reached_s: number;
  loaded_s: number;
  lastWood_s: number;
  end_s: number;
  /** charcoal that it is lit with [kg] */
  coals_kg: number;
  /** one split, and how many are laid on until the target is first read and in all */
  split_kg: number;
  splitsToReach: number;
  splits: number;
  /** the same by weight: until then, from then on and in all [kg] */
  woodToReach_kg: number;
  woodTending_kg: number;
  wood_kg: number;
  /** heat still in wood and charcoal at the end, as wood [kg] */
  left_kg: number;
  /** from loading to the last wood: time within the band, and as a share [s], [-] */
  inBand_s: number;
  inBand_share: number;
  /** lagging reading in that time [K] */
  lowest_K: number;
  highest_K: number;
  /** after the last wood [s]: the thermometer leaves the band for good, downwards; null: not while it is followed */
  outOfBand_s: number | null;
  /**
   * after the last wood [s]: nothing outside is above the touch limit of ASTM C1055 any more; null: not while it is
   * followed
   */
  touch_s: number | null;
  /**
   * after the last wood [s]: what is left on the bed is worth a hundredth of a split; null: not while it is followed
   */
  out_s: number | null;
  /**
   * each load going in, and where evaporation holds a body that stays wet, at the last wood: no core temperature [K]
   */
  food: { name: string; start_K: number; wet_K: number }[];
  marks: { time_s: number; what: string }[];
  curve: Curve;
  /** wood and coals laid on against heat released and left, as a share */
  woodError: number;
  energyError: number;
  massError_kg_per_s: number;
}

/** A bed with this share of a split left on it counts as out [-]. */
const OUT = 0.01;

/**
 * A cook's day by the design's schedule: a chimney of charcoal and splits on it until the gauge reads the target,
 * minded until loading, the door open to load, minded with what happens meanwhile, then no more wood: what lies there
 * burns down. While a door stands open nobody looks, and the bed burns on.
 *
 * Food is a wet body of one temperature: the water that leaves it holds it near the wet bulb, but its loss of weight is
 * not followed, and its inside lags behind what is given here.
 *
 * @returns null: no schedule, a target that is not reached, or steps that broke off
 */
export function followCook(given: Design, tolerance = 1): CookResult | null {
  const design = withFullFire(given);
  const { cook } = design;
  // only for the size of what is laid on: the day itself is followed from the match
  const held = cook && holdPit(design, undefined, 'forks');
  if (!cook || !held) return null;
  const rule = ruleOf(design, held.fire);
  const start = openAtFirst(design, rule);
  const fed = withFood(withOpening(design, start));
  const full = makePit(fed, geometryOf(fed));
  const pits = new Pits(full, fed, cook);
  const line = new Timeline(pits.empty, pits.empty.solver.coldState(), {
    longestStep: BED_STEP,
    spacing: CURVE_STEP,
    tolerance,
  });
  const bed = new Bed(design.fire.splits);
  const stoker = new Stoker(line, bed, rule, boxOf(design), start);
  const coals = coalsOf(design, held.fire);
  const reached = lightUp(stoker, coals);
  if (reached === null) return null;
  const splitsToReach = stoker.laid.length;
  if (!stoker.mind(reached + Math.max(cook.soak, 1))) return null;
  const loaded = line.moment.time;
  const from = line.curve.time_s.length - 1;
  if (!load(stoker, pits, cook) || !mindThrough(stoker, pits, cook, loaded)) return null;
  const lastWood = line.moment.time;
  const { curve } = line;
  const to = curve.time_s.length;
  const inBand = timeWithin(curve, from, rule.target, cook.band);
  const tended = curve.thermometer_K.slice(from);
  const food = cook.load.map(({ name, start: cold }, i) => ({
    name,
    start_K: cold,
    wet_K: meanOf(nodesOfFood(full.built, i).map((n) => line.moment.x[n])),
  }));
  const after = [line.moment.time];
  const hottest = [hottestOutside(line.pit, line.moment.x)];
  const embers = [bed.left.wood + bed.left.charcoal];
  const watch = () => {
    after.push(line.moment.time);
    embers.push(bed.left.wood + bed.left.charcoal);
    hottest.push(hottestOutside(line.pit, line.moment.x));
    return false;
  };
  if (cook.dieDown > 0 && !stoker.mind(lastWood + cook.dieDown, { feed: false, enough: watch })) return null;
  const split = rule.split / design.wood.heat;
  const { wood, charcoal } = bed.left;
  return {
    reached_s: reached,
    loaded_s: loaded,
    lastWood_s: lastWood,
    end_s: line.moment.time,
    coals_kg: coals,
    split_kg: split,
    splitsToReach,
    splits: stoker.laid.length,
    woodToReach_kg: split * splitsToReach,
    woodTending_kg: split * (stoker.laid.length - splitsToReach),
    wood_kg: split * stoker.laid.length,
    left_kg: (wood + charcoal) / design.wood.heat,
    inBand_s: inBand,
    inBand_share: lastWood > loaded ? inBand / (lastWood - loaded) : 1,
    lowest_K: Math.min(...tended),
    highest_K: Math.max(...tended),
    outOfBand_s: fallsBelow(curve, to - 1, rule.target - cook.band),
    touch_s: fallsTo(after, hottest, TOUCH_LIMIT.temperature, design.site.air, lastWood),
    out_s: fallsTo(after, embers, OUT * rule.split, 0, lastWood),
    food,
    marks: marksOf(cook, { reached, loaded, lastWood }),
    curve,
    woodError: Math.abs(bed.laid - bed.released - wood - charcoal) / bed.laid,
    energyError: line.energyError,
    massError_kg_per_s: line.massError,
  };
}

/** Put the food in through the open door. */
function load(stoker: Stoker, pits: Pits, { load: food, loading }: Cook): boolean {
  const cold = (x: Float64Array) =>
    food.forEach(({ start }, i) => {
      for (const n of nodesOfFood(pits.full.built, i)) x[n] = start;
    });
  if (loading <= 0) return stoker.enter(pits.full, cold);
  return stoker.enter(pits.changed([pits.door]), cold) && openFor(stoker, pits, loading);
}

function mindThrough(stoker: Stoker, pits: Pits, { events, tend: lasts }: Cook, loaded: number): boolean {
  for (const event of events) {
    if (!stoker.mind(loaded + event.at)) return false;
    const opened = [...(event.door ? [pits.door] : []), ...(event.fireboxDoor ? [pits.fireboxDoor] : [])];
    if (!stoker.enter(pits.changed([turnWeather(event), ...opened]))) return false;
    if (opened.length > 0) {
      if (!openFor(stoker, pits, event.lasts)) return false;
    } else if (!stoker.mind(loaded + event.at + event.lasts) || !stoker.enter(pits.full)) return false;
  }
  return stoker.mind(loaded + lasts);
}

/** A door open for a while, then shut. */
function openFor(stoker: Stoker, pits: Pits, lasts: number): boolean {
  return stoker.mind(stoker.line.moment.time + lasts, { feed: false }) && stoker.enter(pits.full);
}

/** When the reading falls below a level for good, counted from a point of the curve [s]; null: it ends above. */
function fallsBelow({ time_s: time, thermometer_K: reading }: Curve, from: number, level: number): number | null {
  let i = reading.length - 1;
  if (reading[i] >= level) return null;
  while (i > from && reading[i - 1] < level) i--;
  if (i === from) return 0;
  const share = (reading[i - 1] - level) / (reading[i - 1] - reading[i]);
  return time[i - 1] + share * (time[i] - time[i - 1]) - time[from];
}

/** The pits that a cook passes through: empty, with food, and with food and something changed. */
class Pits {
  readonly empty: Pit;
  readonly door: (built: BuiltPit) => void;
  readonly fireboxDoor: (built: BuiltPit) => void;

  constructor(
    readonly full: Pit,
    design: Design,
    { load: food }: Cook,
  ) {
    this.empty = variantOf(full, leaveFoodOut(food.length));
    this.door = openDoor(design);
    this.fireboxDoor = openDoor(design, 'firebox');
  }

  changed(changes: ((built: BuiltPit) => void)[]): Pit {
    return variantOf(this.full, (built) => changes.forEach((change) => change(built)));
  }
}

function meanOf(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function marksOf(
  { load: food, events, loading }: Cook,
  { reached, loaded, lastWood }: { reached: number; loaded: number; lastWood: number },
): CookResult['marks'] {
  return [
    { time_s: reached, what: 'reads the target' },
    ...(food.length > 0 || loading > 0 ? [{ time_s: loaded, what: 'loaded' }] : []),
    ...events.map((event) => ({ time_s: loaded + event.at, what: wordsOf(event) })),
    { time_s: lastWood, what: 'last wood' },
  ];
}

function wordsOf({ door, fireboxDoor, wind, rain }: CookEvent): string {
  return listed([
    ...(door ? ['door'] : []),
    ...(fireboxDoor ? ['firebox door'] : []),
    ...(wind === undefined ? [] : ['wind']),
    ...(rain === undefined ? [] : ['rain']),
  ]);
}
