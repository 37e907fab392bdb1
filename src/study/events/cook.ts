import type { Cook, CookEvent, Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import type { Demand } from '../../network/balances.js';
import type { BuiltPit } from '../../network/cells.js';
import { openDoor } from './door.js';
import { leaveFoodOut, nodesOfFood, withFood } from './food.js';
import { holdPit } from './heldPit.js';
import { makePit, type Pit } from '../../network/pit.js';
import { burnDown } from '../../physics/splits.js';
import { tend, type Tender } from './tender.js';
import { readsTarget, Timeline, type Curve } from './timeline.js';
import { variantOf } from './variant.js';
import { turnWeather } from './weather.js';

/** A target that takes longer than this is never reached [s]. */
const LONGEST_TO_REACH = 24 * 3600;
/** Longest step, so that curves bend where they should [s]. */
const LONGEST_STEP = 600;

export interface CookResult {
  /** times from lighting [s] */
  reached_s: number;
  loaded_s: number;
  lastWood_s: number;
  end_s: number;
  /** wood burned until the target is reached, laid on from then to the last, and in all [kg] */
  woodToReach_kg: number;
  woodTending_kg: number;
  wood_kg: number;
  /** of it, what still lies glowing at the end [kg] */
  left_kg: number;
  /** from loading to the last wood: time within the band, and as a share [s], [-] */
  inBand_s: number;
  inBand_share: number;
  /** lagging reading in that time [K] */
  lowest_K: number;
  highest_K: number;
  /** each load going in, and where evaporation holds a body that stays wet, at the last wood: no core temperature [K] */
  food: { name: string; start_K: number; wet_K: number }[];
  marks: { time_s: number; what: string }[];
  curve: Curve;
  energyError: number;
  massError_kg_per_s: number;
}

/**
 * A cook's day by the design's schedule: the full fire until the gauge reads the target, the tender's until loading, the
 * door open to load, tending with what happens meanwhile, then no more wood: what lies on the fire burns down as the splits of
 * the design do. While a door stands open the fire stays as it was; in weather it is tended.
 *
 * Food is a wet body of one temperature: the water that leaves it holds it near the wet bulb, but its loss of weight is not
 * followed, and its inside lags behind what is given here.
 *
 * @returns null: no schedule, a target that is not reached, or steps that broke off
 */
export function followCook(design: Design, tolerance = 1): CookResult | null {
  const { cook } = design;
  const held = cook && holdPit(design);
  if (!cook || !held) return null;
  const full = makePit(withFood(design), geometryOf(design));
  const pits = new Pits(full, design, cook);
  const line = new Timeline(pits.empty, pits.empty.settler.coldState(), {
    longestStep: LONGEST_STEP,
    tolerance,
  });
  const tender: Tender = { target: design.fire.target, full: held.full };
  const reached = light(line, design);
  if (reached === null) return null;
  const woodToReach = line.moment.fireHeat / design.wood.heat;
  // the tender's fire is on before the door opens, even where loading follows at once
  if (!tend(line, tender, reached + Math.max(cook.soak, 1))) return null;
  const loaded = line.moment.time;
  const start = line.curve.time_s.length - 1;
  if (!load(line, pits, cook) || !tendThrough(line, pits, cook, tender, loaded)) return null;
  const lastWood = line.moment.time;
  const { splits } = design.fire;
  const { curve } = line;
  const fire = Math.max(0, line.fire);
  // what is burning at the last wood was laid on before
  const laid = line.moment.fireHeat + fire * burnDown(splits, 0).left;
  const wood = laid / design.wood.heat;
  const tended = curve.thermometer_K.slice(start);
  const inBand = timeWithin(curve, start, tender.target, cook.band);
  const food = cook.load.map(({ name, start: cold }, i) => ({
    name,
    start_K: cold,
    wet_K: meanOf(nodesOfFood(full.built, i).map((n) => line.moment.x[n])),
  }));
  const dying = (t: number): Demand => ({ mode: 'release', heat: fire * burnDown(splits, t - lastWood).share });
  if (cook.dieDown > 0 && !(line.burn(dying) && line.runTo(lastWood + cook.dieDown))) return null;
  return {
    reached_s: reached,
    loaded_s: loaded,
    lastWood_s: lastWood,
    end_s: line.moment.time,
    woodToReach_kg: woodToReach,
    woodTending_kg: wood - woodToReach,
    wood_kg: wood,
    left_kg: (laid - line.moment.fireHeat) / design.wood.heat,
    inBand_s: inBand,
    inBand_share: lastWood > loaded ? inBand / (lastWood - loaded) : 1,
    lowest_K: Math.min(...tended),
    highest_K: Math.max(...tended),
    food,
    marks: marksOf(cook, { reached, loaded, lastWood }),
    curve,
    energyError: line.energyError,
    massError_kg_per_s: line.massError,
  };
}

/** The full fire, coming up, until the gauge reads the target. @returns when; null: it never does */
function light(line: Timeline, { fire }: Design): number | null {
  line.light((t) => ({ mode: 'release', heat: fire.heat * (1 - Math.exp(-t / fire.rise)) }));
  while (line.moment.time < LONGEST_TO_REACH) {
    const took = line.step(LONGEST_TO_REACH, readsTarget(line));
    if (took === 'failed') return null;
    if (took === 'event') return line.moment.time;
  }
  return null;
}

/** Put the food in through the open door. */
function load(line: Timeline, pits: Pits, { load: food, loading }: Cook): boolean {
  const cold = (x: Float64Array) =>
    food.forEach(({ start }, i) => {
      for (const n of nodesOfFood(pits.full.built, i)) x[n] = start;
    });
  if (loading <= 0) {
    line.enter(pits.full, cold);
    return true;
  }
  line.enter(pits.changed([pits.door]), cold);
  return openUntil(line, pits, line.moment.time + loading);
}

function tendThrough(
  line: Timeline,
  pits: Pits,
  { events, tend: lasts }: Cook,
  tender: Tender,
  loaded: number,
): boolean {
  for (const event of events) {
    if (!tend(line, tender, loaded + event.at)) return false;
    line.enter(pits.changed([turnWeather(event), ...(event.door ? [pits.door] : [])]));
    const end = line.moment.time + event.lasts;
    if (event.door ? !openUntil(line, pits, end) : !tend(line, tender, end)) return false;
    line.enter(pits.full);
  }
  return tend(line, tender, loaded + lasts);
}

/** With a door open: the fire as it was, until the door is shut. */
function openUntil(line: Timeline, pits: Pits, end: number): boolean {
  const { fire } = line;
  if (!line.burn(() => ({ mode: 'release', heat: fire })) || !line.runTo(end)) return false;
  line.enter(pits.full);
  return true;
}

/** The pits that a cook passes through: empty, with food, and with food and something changed. */
class Pits {
  readonly empty: Pit;
  readonly door: (built: BuiltPit) => void;

  constructor(
    readonly full: Pit,
    design: Design,
    { load: food }: Cook,
  ) {
    this.empty = variantOf(full, leaveFoodOut(food.length));
    this.door = openDoor(design);
  }

  changed(changes: ((built: BuiltPit) => void)[]): Pit {
    return variantOf(this.full, (built) => changes.forEach((change) => change(built)));
  }
}

function meanOf(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Time that the reading is within a band of the target, from a point of the curve on; straight between its points [s]. */
export function timeWithin(
  { time_s: time, thermometer_K: reading }: Curve,
  from: number,
  target: number,
  band: number,
): number {
  let sum = 0;
  for (let i = from + 1; i < time.length; i++) {
    const [a, b] = [reading[i - 1] - target, reading[i] - target];
    const step = time[i] - time[i - 1];
    if (a === b) {
      sum += Math.abs(a) <= band ? step : 0;
      continue;
    }
    // shares of the step at which the line through both points enters and leaves the band
    const [p, q] = [(-band - a) / (b - a), (band - a) / (b - a)];
    sum += step * Math.max(0, Math.min(1, Math.max(p, q)) - Math.max(0, Math.min(p, q)));
  }
  return sum;
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

function wordsOf({ door, wind, rain }: CookEvent): string {
  return [door && 'door', wind !== undefined && 'wind', rain !== undefined && 'rain'].filter(Boolean).join(' and ');
}
