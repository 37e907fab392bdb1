import type { Design } from '../design/design.js';
import type { CookLog } from './log/log.js';
import { firstReading, FORGOTTEN } from './hotStart.js';

/** Time up to which a log is fitted [s]; what comes after is held back. */
export function fittedUntil({ length_s }: CookLog, heldBack: number): number {
  return length_s * (1 - heldBack);
}

/** Time from which a log is fitted: a hot start is first forgotten [s]. */
export function fittedFrom(design: Design, log: CookLog): number {
  return firstReading(design, log) === null ? 0 : FORGOTTEN;
}

/** Readings of all probes that are left to be fitted. */
export function readingsToFit(design: Design, log: CookLog, heldBack: number): number {
  const [from, until] = [fittedFrom(design, log), fittedUntil(log, heldBack)];
  return log.channels.reduce((sum, { time_s }) => sum + time_s.filter((t) => t >= from && t <= until).length, 0);
}
