import { rootWithin } from '../../solve/root.js';
import type { Moment } from '../../network/stride.js';
import type { StopAt } from '../../network/stopAt.js';
import type { Timeline } from './timeline.js';

/** Somebody who minds a fire: what the gauge should settle at [K], and the largest fire that is made [W]. */
interface Tender {
  target: number;
  full: number;
}

type Way = 'hold' | 'full' | 'out' | 'keep';

/** The settled reading may leave the target by a hair before a fire that went out, or is full, is minded again [K]. */
const HAIR = 0.1;
/** How near to nothing, to the full fire and to the last of the air the holding fire may come, as a share. */
const EDGE = 1e-4;
/** Shares by which a fire is made larger and smaller where the one that holds is looked for near it. */
const NEARBY = [0.05, 0.3];
/** How long a fire is left alone that comes as near to holding as any [s]. */
const KEPT = 120;
/**
 * After more changes of mind than this in one stretch the fire and the draft play each other up, and it is only looked
 * after now and then.
 */
const MOST_CHANGES = 6;
/**
 * How long a fire is left alone that is only looked after now and then: at first [s], and as a share of the time since;
 * twice as long as the last when it has changed by less than a share, or, up to half an hour, has gone to and fro.
 */
const LOOK = { first: 300, share: 0.05, calm: 0.05, fro: 1800 };

/**
 * Mind the fire up to a time: just the fire that keeps the gauge's settled reading on its target; the full fire while
 * that is not enough, none while it is too much. It is never less than none nor more than full.
 *
 * In some pits no such fire can be kept to: less fire makes the gauge read more at first, and less only later, so that
 * what keeps it on its target at every moment runs away. There a fire burns until the cook looks again.
 *
 * @param enough looked at after each step: end here?
 * @returns false: the steps broke off
 */
export function tend(line: Timeline, tender: Tender, end: number, enough?: () => boolean): boolean {
  for (let changes = 0; line.moment.time < end - 1e-6; changes++) {
    const way = changes < MOST_CHANGES ? takeUp(line, tender) : null;
    if (way === null) return lookAfter(line, tender, end, enough);
    const stop = way === 'keep' ? undefined : stopOf(line, tender, way);
    const until = way === 'keep' ? Math.min(end, line.moment.time + KEPT) : end;
    for (let took = 'step'; took !== 'event' && line.moment.time < until - 1e-6;) {
      took = line.step(until, stop);
      if (took === 'failed') return lookAfter(line, tender, end, enough);
      if (enough?.()) return true;
    }
  }
  return true;
}

/**
 * Look after the fire now and then up to a time: each burns until the next look, the one under which the gauge then
 * settles at its target.
 */
function lookAfter(line: Timeline, { target, full }: Tender, end: number, enough?: () => boolean): boolean {
  const start = line.moment.time;
  let [before, last] = [NaN, NaN];
  let length = LOOK.first;
  while (line.moment.time < end - 1e-6) {
    const until = Math.min(end, line.moment.time + length);
    const heat = fireFor((heat) => line.foresee(heat, until) - target, line.fire, full);
    if (heat === null || !line.burn(() => ({ mode: 'release', heat }))) return false;
    while (line.moment.time < until - 1e-6) {
      if (line.step(until) === 'failed') return false;
      if (enough?.()) return true;
    }
    const calm = Math.abs(heat - last) < LOOK.calm * heat;
    const fro = (heat - last) * (last - before) < 0 && length < LOOK.fro;
    length = Math.max(LOOK.first, LOOK.share * (line.moment.time - start), calm || fro ? 2 * length : 0);
    [before, last] = [last, heat];
  }
  return true;
}

/** Until when a way to burn will do. */
function stopOf(line: Timeline, { target, full }: Tender, way: Way): StopAt {
  const { model } = line.pit;
  const fuel = model.fuel + model.network.fire.zone;
  if (way === 'hold') {
    const left = ({ x }: Moment) =>
      Math.min(x[model.fire] / full, 1 - x[model.fire] / full, 1 - x[fuel] / model.fuelLimit) - EDGE;
    return { left, within: EDGE };
  }
  const side = way === 'out' ? 1 : -1;
  return { left: (moment) => side * (line.settledReading(moment) - target) + HAIR, within: 0.1 * HAIR };
}

/**
 * Set the fire that is called for now.
 *
 * The fire that holds the reading may not be found at once. Then it is looked for near the fire that burns, by trying;
 * then none and the full one are tried, and last any between.
 *
 * @returns null: none settles
 */
function takeUp(line: Timeline, tender: Tender): Way | null {
  const { target, full } = tender;
  const burns = (heat: number, fits?: (moment: Moment) => boolean) =>
    line.burn(() => ({ mode: 'release', heat }), fits);
  const fits = (way: Way) => (moment: Moment) => stopOf(line, tender, way).left(moment) > 0;
  const holds = () => line.burn(() => ({ mode: 'hold', target }), fits('hold'), undefined, line.moment.x);
  const off = (heat: number): number => {
    let reading = NaN;
    burns(heat, (moment) => {
      reading = line.settledReading(moment);
      return false;
    });
    return reading - target;
  };
  /**
   * Burn what holds it between two fires; where the reading jumps past the target, the fire at which it does stays a
   * while.
   */
  const between = (low: number, high: number): Way | null => {
    const [fLow, fHigh] = [off(low), off(high)];
    if (!(fLow < 0 && fHigh > 0)) return null;
    const heat = rootWithin(off, { low, high, fLow, fHigh, tolerance: EDGE * full });
    if (heat === null || !burns(heat)) return null;
    return holds() ? 'hold' : 'keep';
  };
  if (holds()) return 'hold';
  for (const share of line.fire > 0 ? NEARBY : []) {
    const way = between((1 - share) * line.fire, Math.min(full, (1 + share) * line.fire));
    if (way) return way;
  }
  if (burns(0, fits('out'))) return 'out';
  if (burns(full, fits('full'))) return 'full';
  return between(0, full);
}

/**
 * The fire, of none to the full one, under which a reading is off by nothing: looked for near the one that burns first;
 * null: none is found.
 */
function fireFor(off: (heat: number) => number, now: number, full: number): number | null {
  const near = now > 0 ? NEARBY.map((share) => [(1 - share) * now, Math.min(full, (1 + share) * now)]) : [];
  for (const [low, high] of [...near, [0, full]]) {
    const [fLow, fHigh] = [off(low), off(high)];
    if (fLow * fHigh <= 0) return rootWithin(off, { low, high, fLow, fHigh, tolerance: 1e-3 * full });
    if (low === 0 && high === full && fLow * fHigh > 0) return fLow < 0 ? full : 0;
  }
  return null;
}
