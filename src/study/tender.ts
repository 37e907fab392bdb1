import { bracketedRoot } from '../solve/root.js';
import type { Moment, StopAt } from './transient.js';
import type { Timeline } from './timeline.js';

/** Somebody who minds a fire: what the gauge should settle at [K], and the largest fire that is made [W]. */
export interface Tender {
  target: number;
  full: number;
}

type Way = 'hold' | 'full' | 'out' | 'keep';

/** The settled reading may leave the target by a hair before a fire that went out, or is full, is minded again [K]. */
const HAIR = 0.1;
/** How near to nothing, to the full fire and to the last of the air the holding fire may come, as a share. */
const EDGE = 1e-4;
/** How long a fire is left alone that comes as near to holding as any [s]. */
const KEPT = 120;
/** More changes of mind than this in one stretch: the fire and the draft play each other up. */
const MOST_CHANGES = 300;

/**
 * Mind the fire up to a time: just the fire that keeps the gauge's settled reading on its target; the full fire while that
 * is not enough, none while it is too much. It is never less than none nor more than full.
 *
 * @param enough looked at after each step: end here?
 * @returns false: the steps broke off
 */
export function tend(line: Timeline, tender: Tender, end: number, enough?: () => boolean): boolean {
  for (let changes = 0; line.moment.time < end - 1e-6; changes++) {
    const way = changes < MOST_CHANGES ? takeUp(line, tender) : null;
    if (way === null) return false;
    const stop = way === 'keep' ? undefined : stopOf(line, tender, way);
    const until = way === 'keep' ? Math.min(end, line.moment.time + KEPT) : end;
    for (let took = 'step'; took !== 'event' && line.moment.time < until - 1e-6;) {
      took = line.step(until, stop);
      if (took === 'failed') return false;
      if (enough?.()) return true;
    }
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

/** Set the fire that is called for now. @returns null: none settles */
function takeUp(line: Timeline, tender: Tender): Way | null {
  const { target, full } = tender;
  const burnFixed = (heat: number, fits?: (moment: Moment) => boolean) =>
    line.burn(() => ({ mode: 'release', heat }), fits);
  const fits = (way: Way) => (moment: Moment) => stopOf(line, tender, way).left(moment) > 0;
  const holds = () => line.burn(() => ({ mode: 'hold', target }), fits('hold'));
  if (holds()) return 'hold';
  if (burnFixed(0, fits('out'))) return 'out';
  if (burnFixed(full, fits('full'))) return 'full';
  // a fire between the two holds it: found by trying, where it could not be found at once
  const off = (heat: number): number => {
    let reading = NaN;
    burnFixed(heat, (moment) => {
      reading = line.settledReading(moment);
      return false;
    });
    return reading - target;
  };
  let heat: number;
  try {
    heat = bracketedRoot(off, { low: 0, high: full, tolerance: EDGE * full }).root;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
  if (!burnFixed(heat)) return null;
  // where the reading jumps from below the target to above, the fire stays for a while at which it does
  return holds() ? 'hold' : 'keep';
}
