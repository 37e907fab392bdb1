import { bracketedRoot } from '../../solve/root.js';
import { gasAtStem, stationGas, stationSteel, type Pit } from '../../network/pit.js';
import type { PlaceSeries, StationSeries, WarmUp } from './result.js';
import { readingOf, solveNear, type Solved } from './steady.js';
import { tend } from '../events/tender.js';
import { readsTarget, Timeline } from '../events/timeline.js';
import { betweenEnds, inside, ratesBetween, type Moment, type Stride } from '../../network/stride.js';

/** Soaked: the steel holds this share of the heat above outdoors that it holds once settled. */
const SOAKED_SHARE = 0.9;
/** Longest warm-up that is shown [s]. */
const LONGEST = 24 * 3600;
/**
 * A pit that has not settled by then, nor read its target, is followed further, for what it comes to in the end [s].
 */
const FOLLOWED = 30 * LONGEST;
/** Curves go on this far past the soaked time, or past the settling of a fire that cannot reach the target. */
const AFTERWARDS = 1.25;
/** Stretches of a step that are looked through for a crossing. */
const CHECKS = 4;
/** Shares of each step at which the curves are filled in. */
const BETWEEN = [0.25, 0.5, 0.75];
/**
 * A pit seems to have settled when in a step of this share of the time since the match its steel and its fire have
 * moved less than that share; it has when a steady state is that near.
 */
const STILL = { step: 0.1, moved: 0.01, near: 0.03 };

/**
 * The fire under which it settles: one that holds the target, the full one short of it, or the full one wherever it
 * leads.
 */
type Settling = 'hold' | 'full' | 'beyond';

/** How finely and how far a warm-up is followed. */
export interface WarmUpOptions {
  /** factor on the tolerances of the time steps (default 1), for step studies */
  tolerance?: number;
  /** follow a pit that soaks at least this far [s], so that curves of several runs can be laid over each other */
  until?: number;
  /** end where it first reads the target */
  toFirst?: boolean;
}

/** A warm-up, and states on its way from which other studies go on. */
export interface WarmUpRun {
  warmUp: WarmUp;
  /**
   * where it settles: under the fire that holds the target once it has read it, else under the full fire; null: it was
   * not followed so far
   */
  settled: Solved | null;
  /** the moment at which it reads the target first, under the full fire; it may be later than what is shown */
  first: Moment | null;
  /** worst imbalances over the run */
  energyError: number;
  massError: number;
  evaluations: number;
  /** false: the run broke off because no step length converged */
  finished: boolean;
}

/**
 * Warm-up from cold: the full fire, rising as 1 - exp(-t/rise), until the lagged thermometer reads the target; from
 * then on a tender's, who keeps it there. Gauge time, soaked time, wood to each, and the curves of every station.
 *
 * Soaked is told from behind: the pit is followed until it has settled, so that it is known what its steel holds then,
 * and that it never holds less than nine tenths of that again.
 *
 * @param holds a state known to hold the target, for where none is found from the run's own end
 */
export function runWarmUp(pit: Pit, options: WarmUpOptions = {}, holds: Solved | null = null): WarmUpRun {
  const { design, solver } = pit;
  const { fire } = design;
  const parts: (Moment | Stride)[] = [];
  const line = new Timeline(pit, solver.coldState(), {
    tolerance: options.tolerance,
    follow: (part) => parts.push(part),
  });
  const steel = new SteelHeat(pit);
  const wood = (moment: Moment) => moment.fireHeat / design.wood.heat;
  let first: Moment | null = null;
  let settled: Solved | null = null;
  let soaked: Moment | null = null;
  const finish = (finished: boolean): WarmUpRun => {
    const end = soaked ? Math.max(AFTERWARDS * soaked.time, options.until ?? 0) : LONGEST;
    const shown = first && first.time <= LONGEST ? first : null;
    return {
      warmUp: {
        gauge_s: shown && shown.time,
        soaked_s: soaked && soaked.time,
        woodToGauge_kg: shown && wood(shown),
        woodToSoaked_kg: soaked && wood(soaked),
        series: seriesOf(pit, parts, soaked, end),
        steps: line.steps,
      },
      settled,
      first,
      energyError: line.energyError,
      massError: line.massError,
      evaluations: line.evaluations,
      finished,
    };
  };
  const still = (demand: 'hold' | 'full') => (): boolean => {
    settled = quietState(pit, steel, parts[parts.length - 1], demand, holds);
    return settled !== null;
  };

  // 1: full fire up to the target
  line.light((t) => ({ mode: 'release', heat: fire.heat * (1 - Math.exp(-t / fire.rise)) }));
  const reads = readsTarget(line);
  const quiet = still('full');
  for (;;) {
    const took = line.step(line.moment.time < LONGEST - 1 ? LONGEST : FOLLOWED, reads);
    if (took === 'failed') return finish(line.moment.time >= LONGEST - 1);
    if (took === 'event') break;
    if (quiet() || line.moment.time >= FOLLOWED - 1) return finish(true);
  }
  first = line.moment;
  const from = parts.length;
  // so late nobody minds it any more
  if (options.toFirst || first.time > LONGEST) return finish(true);

  // 2: a tender's fire, until all has settled
  const tender = { target: fire.target, full: fire.heat };
  if (!tend(line, tender, LONGEST, still('hold'))) return finish(false);
  settled ??= stateNear(pit, steel, line.moment, 'hold', holds);
  if (settled) soaked = lastRise(steel, first, parts.slice(from), SOAKED_SHARE * steel.aboveAt((settled as Solved).x));
  const end = soaked ? Math.max(AFTERWARDS * soaked.time, options.until ?? 0) : 0;
  return finish(tend(line, tender, end) || soaked !== null);
}

/**
 * The steady state under the full fire that a pit goes to from the moment at which it reads its target, followed
 * through time: Newton, and implicit Euler in lengthening steps, may jump to another way of flowing.
 *
 * @returns null: it does not settle
 */
export function fullFireFrom(pit: Pit, { x, time }: Moment, heat: number): Solved | null {
  let last: Moment | Stride | null = null;
  // in no longer steps than the warm-up's: in those ten times as loose the gas may jump
  const line = new Timeline(pit, x, { time, follow: (part) => (last = part) });
  const steel = new SteelHeat(pit);
  line.light(() => ({ mode: 'release', heat }));
  while (line.moment.time < FOLLOWED - 1) {
    if (line.step(FOLLOWED) === 'failed') return null;
    const settled = last && quietState(pit, steel, last, 'beyond');
    if (settled) return settled;
  }
  return null;
}

/** The steady state that a pit has come to with its last step; null: it has not settled. */
function quietState(
  pit: Pit,
  steel: SteelHeat,
  last: Moment | Stride,
  demand: Settling,
  holds: Solved | null = null,
): Solved | null {
  if (!('after' in last)) return null;
  const { before, after } = last;
  const moved = (a: number, b: number) => Math.abs(b - a) > STILL.moved * Math.abs(b);
  if (after.time - before.time < STILL.step * after.time) return null;
  if (moved(before.x[pit.model.fire], after.x[pit.model.fire])) return null;
  if (moved(steel.above(before), steel.above(after))) return null;
  return stateNear(pit, steel, after, demand, holds);
}

/** The steady state that a moment is nearly in; null: none is that near. */
function stateNear(pit: Pit, steel: SteelHeat, { x }: Moment, demand: Settling, holds: Solved | null): Solved | null {
  const { fire } = pit.design;
  const { model } = pit;
  const near = (a: number, b: number) => Math.abs(b - a) <= STILL.near * Math.abs(a);
  const here = (state: Solved | null) =>
    state && near(state.x[model.fire], x[model.fire]) && near(steel.aboveAt(state.x), steel.aboveAt(x)) ? state : null;
  if (demand === 'hold') return here(solveNear(pit, x, { mode: 'hold', target: fire.target })) ?? here(holds);
  const state = here(solveNear(pit, x, { mode: 'release', heat: fire.heat }));
  // a full fire that gets to the target in the end is not done before it has
  return state && (demand === 'beyond' || readingOf(pit, state) < fire.target) ? state : null;
}

/**
 * Heat above outdoors that the steel of chamber and upright holds: their shells with doors, a reverse-flow plate, the
 * plate between them. Not counted are the plate they share with the firebox, which follows the fire, skins over
 * insulation, racks and pans.
 */
class SteelHeat {
  private readonly nodes: number[];
  private readonly cold: number;
  private readonly contents: Float64Array;

  constructor(private readonly pit: Pit) {
    const { nodes, faces, fire, outdoors } = pit.model.network;
    const byFire = new Set(faces.filter(({ zone }) => zone === fire.zone).map(({ node }) => node));
    const follows = (hiddenFrom: number[] = []) => hiddenFrom.includes(fire.zone);
    this.nodes = nodes.flatMap(({ part, thickness, hiddenFrom }, i) =>
      (part === 'chamber' || part === 'upright') && thickness > 0 && !byFire.has(i) && !follows(hiddenFrom) ? [i] : [],
    );
    this.contents = new Float64Array(nodes.length);
    this.cold = this.heldAt(new Float64Array(nodes.length).fill(outdoors.temperature));
  }

  /** [J] */
  above({ x }: Moment): number {
    return this.aboveAt(x);
  }

  aboveAt(x: Float64Array): number {
    return this.heldAt(x) - this.cold;
  }

  private heldAt(x: Float64Array): number {
    this.pit.balances.heats.evaluate(x, this.contents);
    return this.nodes.reduce((sum, i) => sum + this.contents[i], 0);
  }

  /** The same along a step, at a share of it: the cubic through what it holds and takes up at both ends. */
  along({ before, after }: Stride): (share: number) => number {
    const h = after.time - before.time;
    const [a, b] = [this.above(before), this.above(after)];
    const [up, on] = [h * this.taken(before), h * this.taken(after)];
    return (share) => betweenEnds([a, b], [up, on], share);
  }

  /** [W] */
  private taken({ x }: Moment): number {
    const { balances, model } = this.pit;
    balances.evaluate(x, { mode: 'release', heat: x[model.fire] }, false);
    return this.nodes.reduce((sum, i) => sum + balances.rate[i], 0);
  }
}

/**
 * Where the heat last rises to a level, never to fall below it again: `first` where it is never below; null: it ends
 * below.
 */
function lastRise(steel: SteelHeat, first: Moment, parts: readonly (Moment | Stride)[], level: number): Moment | null {
  let later: Moment | null = null;
  for (let i = parts.length - 1; i >= 0; i--) {
    const part = parts[i];
    if (!('after' in part)) {
      if (steel.above(part) < level) return later;
      later = part;
      continue;
    }
    if (steel.above(part.after) < level) return later;
    const curve = steel.along(part);
    for (let k = CHECKS - 1; k >= 0; k--) {
      const [low, high] = [k / CHECKS, (k + 1) / CHECKS];
      if (curve(low) >= level) continue;
      const { root } = bracketedRoot((share) => curve(share) - level, { low, high, tolerance: 1e-6 });
      return inside(part, root);
    }
    later = part.before;
  }
  return first;
}

/** Curves of every station: each moment from the match up to `end`, and the soaked one. */
function seriesOf(pit: Pit, parts: readonly (Moment | Stride)[], soaked: Moment | null, end: number): WarmUp['series'] {
  const { model } = pit;
  const { stems, gauge } = model.network;
  const moments: Moment[] = [];
  let joint: Float64Array | undefined;
  parts.forEach((part, i) => {
    if (!('after' in part)) {
      if (part.time <= end) moments.push(part);
      return;
    }
    const { before, after } = part;
    if (before.time >= end) return;
    const next = parts[i + 1];
    const [from, to] = [joint, next && 'after' in next && next.before === after ? ratesBetween(part, next) : undefined];
    joint = to;
    const at = (share: number) => inside(part, share, from && to && [from, to]);
    const length = after.time - before.time;
    moments.push(...BETWEEN.filter((share) => before.time + share * length < end).map(at));
    moments.push(after.time <= end ? after : at((end - before.time) / length));
  });
  if (soaked) {
    const at = moments.findIndex(({ time }) => time >= soaked.time);
    if (moments[at].time > soaked.time) moments.splice(at, 0, soaked);
  }
  const all = (of: (moment: Moment) => number) => moments.map(of);
  const dials = stems.flatMap(({ place }, i) => (place ? [] : [i]));
  const stations: StationSeries[] = dials.map((i) => ({
    name: stems[i].station as StationSeries['name'],
    thermometer_K: all(({ x }) => x[model.nodeCount + i]),
    gas_K: all(({ x }) => stationGas(pit, x, stems[i].station)),
    steel_K: all(({ x }) => stationSteel(pit, x, stems[i].station)),
  }));
  const read = (i: number) => ({
    thermometer_K: all(({ x }) => x[model.nodeCount + i]),
    gas_K: all(({ x }) => gasAtStem(pit, x, i)),
  });
  const places: PlaceSeries[] = stems.flatMap(({ place, station, height }, i) =>
    place
      ? [
          {
            ...place,
            part: place.part as PlaceSeries['part'],
            station: station as PlaceSeries['station'],
            height_m: height,
            ...read(i),
          },
        ]
      : [],
  );
  const own = stations.find(({ name }) => name === stems[gauge].station)!;
  return {
    time_s: all(({ time }) => time),
    fire_W: all(({ x }) => x[model.fire]),
    ...(stems[gauge].place
      ? { ...read(gauge), steel_K: own.steel_K }
      : { thermometer_K: own.thermometer_K, gas_K: own.gas_K, steel_K: own.steel_K }),
    stations,
    places,
    fire_J: all(({ fireHeat }) => fireHeat),
    lost_J: all(({ lost }) => lost),
    stored_J: all(({ stored }) => stored),
  };
}
