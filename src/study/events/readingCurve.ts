/** What the curve of a thermometer tells whoever looks at it. */
import { meanOverTime } from './timeWithin.js';
import type { Curve } from './timeline.js';

/** How fast it falls at the end of the curve [K/s]. */
export function fallingRate({ time_s: time, thermometer_K: reading }: Curve): number {
  const last = time.length - 1;
  return last > 0 && time[last] > time[last - 1]
    ? (reading[last - 1] - reading[last]) / (time[last] - time[last - 1])
    : 0;
}

/** When it last fell through a level [s]; its end where it is above. */
export function lastFellTo(level: number, { time_s: time, thermometer_K: reading }: Curve): number {
  let i = reading.length - 1;
  while (i > 0 && reading[i - 1] <= level) i--;
  if (i === 0 || reading[i] > level) return time[i];
  const share = (reading[i - 1] - level) / (reading[i - 1] - reading[i]);
  return time[i - 1] + share * (time[i] - time[i - 1]);
}

/** Mean reading over time, from a point of the curve on [K]. */
export function meanSince(curve: Curve, from: number): number {
  return meanOverTime(curve.time_s.slice(from), curve.thermometer_K.slice(from));
}
