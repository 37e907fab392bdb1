import type { Demand } from '../network/balances.js';
import type { Moment } from './transient.js';
import type { Timeline } from './timeline.js';

/** Somebody who minds a fire: what the gauge should settle at [K], and the largest fire that is made [W]. */
export interface Tender {
  target: number;
  full: number;
}

type Way = 'hold' | 'full' | 'out';

/** A fire this share above the largest one still passes for it. */
const SLACK = 0.02;
/** More changes of mind than this in one stretch: the fire and the draft play each other up. */
const MOST_CHANGES = 300;

/**
 * Mind the fire up to a time: just the fire that keeps the gauge's settled reading on its target; the full fire while that
 * is not enough, none while it is too much.
 *
 * @returns false: the steps broke off
 */
export function tend(line: Timeline, tender: Tender, end: number): boolean {
  for (let changes = 0; line.moment.time < end - 1e-6; changes++) {
    const way = changes < MOST_CHANGES ? takeUp(line, tender) : null;
    if (way === null || !goOn(line, tender, way, end)) return false;
  }
  return true;
}

/** Set the fire that is called for now. @returns null: none settles */
function takeUp(line: Timeline, { target, full }: Tender): Way | null {
  const hold = (): Demand => ({ mode: 'hold', target });
  const made = (fire: number) => fire >= 0 && fire <= (1 + SLACK) * full;
  let asked = NaN;
  const noted = (fire: number) => made((asked = fire));
  if (line.burn(hold, noted)) return 'hold';
  const cold = Number.isNaN(asked) ? line.settledReading() < target : asked > 0;
  if (!line.burn(() => ({ mode: 'release', heat: cold ? full : 0 }))) return null;
  const off = line.settledReading() - target;
  if (cold === off < 0) return cold ? 'full' : 'out';
  // the change alone carries it past the target: from there the fire that holds it is easier to find
  return line.burn(hold, made) ? 'hold' : null;
}

/** Step on until the end or until another fire is called for. @returns false: the steps broke off */
function goOn(line: Timeline, { target, full }: Tender, way: Way, end: number): boolean {
  const off = (moment: Moment) => line.settledReading(moment) - target;
  while (line.moment.time < end - 1e-6) {
    const took = line.step(end, way === 'hold' ? undefined : off);
    if (took === 'failed') return false;
    if (took === 'event') return true;
    if (way === 'hold' && (line.fire < 0 || line.fire > (1 + SLACK) * full)) return true;
  }
  return true;
}
