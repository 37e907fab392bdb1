import { withFullFire } from '../air/burnsItsAir.js';
import { openOf, withOpening } from '../air/cleanHold.js';
import type { Design, StationName } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { bracketedRoot } from '../../solve/root.js';
import { makePit, type Pit } from '../../network/pit.js';
import type { SteadyState } from '../estimate/result.js';
import { describeState } from '../estimate/describeState.js';
import { solveUnderFire, type Solved } from '../estimate/steady.js';

/** A thermometer in cold smoke stays below this: 90 °F, common practice, no source [K]. */
export const USUAL_CEILING = 305.372;
/** The least wood fire that stays alight by itself: half a pound an hour (estimate, spread 0.25-1.5 lb/h) [kg/s]. */
const USUAL_LEAST_WOOD = (0.5 * 0.45359237) / 3600;
/** The same estimate's spread, as shares of it. */
const LEAST_SPREAD = { low: 0.5, high: 3 } as const;
/** A ceiling is kept with something in hand from this on: 5 °F, common practice, no source [K]. */
const IN_HAND = 5 / 1.8;
/** Shares of all by which the intakes are opened where the drawn opening is not the coolest [-]. */
const OPENINGS = [1, 0.6, 0.35, 0.2, 0.1];
/** The hottest day is looked for from here on, this closely [K]. */
const COLDEST_DAY = 243.15;
const DAY_WITHIN = 0.2;
/** A fire gets air enough from this over what its wood needs on: common practice, no source. */
const LEAST_EXCESS_AIR = 1.5;
/** Each fire that is tried is this much larger than the last. */
const LADDER = 1.25;
const MOST_TRIES = 30;

/** What counts as cold, and as a fire. */
export interface ColdSmokeOptions {
  /** what the thermometer may read at most [K] */
  ceiling?: number;
  /** least fire that stays alight [W] */
  least?: number;
}

/** Whether any fire that stays alight keeps the upright cold. */
export interface ColdSmoke {
  ceiling_K: number;
  air_K: number;
  /** least fire that stays alight, as given [W] */
  least_W: number;
  /** the smallest of at least that which also draws the right way and gets its air; null: none does */
  fire: SteadyState | null;
  /** thermometers that count, under that fire */
  stations: { name: StationName; thermometer_K: number; under: boolean }[];
  /** do they all stay under the ceiling? */
  possible: boolean;
  /** share that the intakes stand open in all this: the drawn one, or the one that keeps them the coolest */
  open: number;
  /** how far the warmest of them stays under the ceiling [K]; null: no fire draws */
  inHand_K: number | null;
  /**
   * warmest air on which it keeps under the ceiling, and with the largest and the smallest fire that may be the least
   * [K]; null: none
   */
  hottestDay_K: { likely: number | null; low: number | null; high: number | null };
  /** the largest fire that keeps them under it [W]; null: none, or it is larger than the design's full fire */
  largestFire_W: number | null;
  /** one of: 'air-too-warm' | 'no-draft' | 'fire-too-warm' | 'nothing-in-hand'; null when it is possible */
  why: string | null;
}

/**
 * Can the pit smoke cold: vents and the smallest steady fire that stays alight and draws, whether the thermometers of
 * the upright (of the stack end where there is none) stay under a ceiling with them on the site's day, and up to what
 * day.
 */
export function coldSmoke(given: Design, options: ColdSmokeOptions = {}): ColdSmoke {
  const design = withFullFire(given);
  const ceiling = options.ceiling ?? USUAL_CEILING;
  const least = options.least ?? USUAL_LEAST_WOOD * design.wood.heat;
  const names: StationName[] = design.upright ? ['uprightLower', 'uprightUpper'] : ['stackEnd'];
  let start: Float64Array | undefined;
  const tries = [openOf(design), ...OPENINGS].flatMap((open, i) => {
    if (open <= 0) return [];
    const found = trySetting(i === 0 ? design : withOpening(design, open), names, least, start);
    start = found?.solved.x ?? start;
    return found ? [{ open, ...found }] : [];
  });
  const best = tries.reduce<(typeof tries)[number] | null>(
    (cool, each) => (cool === null || each.warmest < cool.warmest - 0.1 ? each : cool),
    null,
  );
  const inHand = best && ceiling - best.warmest;
  const possible = inHand !== null && inHand >= IN_HAND;
  const dayFor = (heat: number) =>
    best && hottestDay(withOpening(design, best.open), names, heat, ceiling, best.solved.x);
  const likely = dayFor(least);
  return {
    ceiling_K: ceiling,
    air_K: design.site.air,
    least_W: least,
    fire: best && describeState(best.pit, best.solved),
    stations: (best?.readings ?? []).map((each) => ({ ...each, under: each.thermometer_K <= ceiling })),
    possible,
    open: best?.open ?? openOf(design),
    inHand_K: inHand,
    hottestDay_K: {
      likely,
      low: options.least === undefined ? dayFor(LEAST_SPREAD.high * least) : likely,
      high: options.least === undefined ? dayFor(LEAST_SPREAD.low * least) : likely,
    },
    largestFire_W: best && possible ? largestFire(best.pit, names, best.solved, ceiling) : null,
    why: possible ? null : whyNot(design.site.air, ceiling, inHand),
  };
}

function whyNot(air: number, ceiling: number, inHand: number | null): string {
  if (air >= ceiling) return 'air-too-warm';
  if (inHand === null) return 'no-draft';
  return inHand < 0 ? 'fire-too-warm' : 'nothing-in-hand';
}

/** The smallest fire that draws with the vents as they are, and what the thermometers then read; null: none does. */
function trySetting(design: Design, names: readonly StationName[], least: number, start?: Float64Array) {
  const pit = makePit(design, geometryOf(design));
  const solved = smallestFire(pit, least, start);
  if (!solved) return null;
  const readings = describeState(pit, solved)
    .stations.filter(({ name }) => names.includes(name))
    .map(({ name, thermometer_K }) => ({ name, thermometer_K }));
  return { pit, solved, readings, warmest: Math.max(...readings.map(({ thermometer_K }) => thermometer_K)) };
}

/**
 * Warmest air on which the thermometers stay under a ceiling [K]; null: on none that is looked at.
 *
 * @param from unknowns of a like pit that draws
 */
function hottestDay(
  design: Design,
  names: readonly StationName[],
  least: number,
  ceiling: number,
  from: Float64Array,
): number | null {
  let start = from;
  let warmest: number | null = null;
  const over = (air: number): number => {
    const surroundings = design.site.surroundings + air - design.site.air;
    const found = trySetting({ ...design, site: { ...design.site, air, surroundings } }, names, least, start);
    // a fire that draws no more counts as one that is too warm
    if (!found) return DAY_WITHIN;
    start = found.solved.x;
    if (found.warmest <= ceiling) warmest = Math.max(air, warmest ?? air);
    return found.warmest - ceiling;
  };
  const [low, high] = [COLDEST_DAY, ceiling];
  const fLow = over(low);
  // on a day as warm as the ceiling any fire is too warm
  if (fLow < 0) bracketedRoot(over, { low, high, fLow, fHigh: DAY_WITHIN, tolerance: DAY_WITHIN });
  return warmest;
}

/** The first of rising fires that draws forwards and gets its air. @param start unknowns of a like pit */
function smallestFire(pit: Pit, least: number, start?: Float64Array): Solved | null {
  for (let [heat, tries] = [least, 0]; tries < MOST_TRIES; heat *= LADDER, tries++) {
    const solved = solveUnderFire(pit, heat, start);
    if (solved.outcome.converged) {
      start = solved.x;
      if (drawsWell(describeState(pit, solved))) return solved;
    }
    if (heat > pit.design.fire.heat) return null;
  }
  return null;
}

function drawsWell(state: SteadyState): boolean {
  const wayThrough = state.openings.filter(
    ({ role }) => role === 'intake' || role === 'throat' || role === 'stackExit',
  );
  const forwards = wayThrough.every(({ flow_kg_per_s }) => flow_kg_per_s > 0);
  return forwards && !state.limitedByAir && state.letInRatio >= LEAST_EXCESS_AIR;
}

/** Where the warmest of the thermometers reaches the ceiling; null: not even under the design's full fire. */
function largestFire(pit: Pit, names: StationName[], from: Solved, ceiling: number): number | null {
  const { balances, model } = pit;
  const { stems } = model.network;
  const watched = stems.flatMap(({ station }, i) => (names.includes(station as StationName) ? [i] : []));
  let last = from;
  const over = (heat: number): number => {
    const solved = solveUnderFire(pit, heat, last.x);
    if (!solved.outcome.converged) return NaN;
    last = solved;
    balances.evaluate(solved.x, { mode: 'release', heat });
    return Math.max(...watched.map((i) => balances.stems.settled(solved.x, i))) - ceiling;
  };
  const low = from.asked;
  const fLow = over(low);
  let high = low;
  let fHigh = fLow;
  while (fHigh < 0 && high < pit.design.fire.heat) {
    high = Math.min(2 * high, pit.design.fire.heat);
    fHigh = over(high);
  }
  if (!(fLow <= 0 && fHigh > 0)) return null;
  return bracketedRoot(over, { low, high, fLow, fHigh, tolerance: 1e-4 * high }).root;
}
