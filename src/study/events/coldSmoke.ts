import { withFullFire } from '../air/burnsItsAir.js';
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
export const USUAL_LEAST_WOOD = (0.5 * 0.45359237) / 3600;
/** A fire gets air enough from this over what its wood needs on: common practice, no source. */
const LEAST_EXCESS_AIR = 1.5;
/** Each fire that is tried is this much larger than the last. */
const LADDER = 1.25;
const MOST_TRIES = 30;

export interface ColdSmokeOptions {
  /** what the thermometer may read at most [K] */
  ceiling?: number;
  /** least fire that stays alight [W] */
  least?: number;
}

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
  /** the largest fire that keeps them under it [W]; null: none, or it is larger than the design's full fire */
  largestFire_W: number | null;
  /** one of: 'air-too-warm' | 'no-draft' | 'fire-too-warm'; null when it is possible */
  why: string | null;
}

/**
 * Can the pit smoke cold: the smallest steady fire that stays alight and draws, and whether the thermometers of the upright
 * (of the stack end where there is none) stay under a ceiling with it, on the site's day.
 */
export function coldSmoke(given: Design, options: ColdSmokeOptions = {}): ColdSmoke {
  const design = withFullFire(given);
  const ceiling = options.ceiling ?? USUAL_CEILING;
  const least = options.least ?? USUAL_LEAST_WOOD * design.wood.heat;
  const pit = makePit(design, geometryOf(design));
  const names: StationName[] = design.upright ? ['uprightLower', 'uprightUpper'] : ['stackEnd'];
  const solved = smallestFire(pit, least);
  const fire = solved && describeState(pit, solved);
  const stations = (fire?.stations ?? [])
    .filter(({ name }) => names.includes(name))
    .map(({ name, thermometer_K }) => ({ name, thermometer_K, under: thermometer_K <= ceiling }));
  const possible = stations.length > 0 && stations.every(({ under }) => under);
  const tooWarm = design.site.air >= ceiling ? 'air-too-warm' : fire ? 'fire-too-warm' : 'no-draft';
  return {
    ceiling_K: ceiling,
    air_K: design.site.air,
    least_W: least,
    fire,
    stations,
    possible,
    largestFire_W: solved && possible ? largestFire(pit, names, solved, ceiling) : null,
    why: possible ? null : tooWarm,
  };
}

/** The first of rising fires that draws forwards and gets its air. */
function smallestFire(pit: Pit, least: number): Solved | null {
  let start: Float64Array | undefined;
  for (let [heat, tries] = [least, 0]; tries < MOST_TRIES; heat *= LADDER, tries++) {
    const solved = solveUnderFire(pit, heat, start);
    if (solved.settled.converged) {
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
    if (!solved.settled.converged) return NaN;
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
