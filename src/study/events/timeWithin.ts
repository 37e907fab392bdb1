import type { Curve } from './timeline.js';

/**
 * Time that the reading is within a band of the target, from a point of the curve on; straight between its points [s].
 */
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

/** Mean over time by trapezoids. */
export function meanOverTime(time: number[], values: number[]): number {
  let sum = 0;
  for (let i = 1; i < time.length; i++) sum += 0.5 * (values[i] + values[i - 1]) * (time[i] - time[i - 1]);
  const length = time[time.length - 1] - time[0];
  return length > 0 ? sum / length : values[0];
}
