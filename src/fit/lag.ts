/**
 * Standard deviation of a logger's lag, which is never below 0 [s] (estimate: slow sheaths, and readings averaged by
 * the logger).
 */
export const USUAL_LAG = 30;
/** A logger that lags by more is not followed [s]. */
export const LONGEST_LAG = 300;

/**
 * What a logger with a first-order lag reads of a course that is straight between its points: dy/dt = (f - y) / lag,
 * from y = f at the first point on.
 *
 * @param time_s rising times [s], as many as values
 * @param values [K]
 * @param lag time constant [s]; 0 gives the values themselves
 * @param count how many of the values are wanted (default: all)
 */
export function lagged(
  time_s: readonly number[],
  values: Float64Array,
  lag: number,
  count = values.length,
): Float64Array {
  const out = values.slice(0, count);
  if (!(lag > 0)) return out;
  for (let i = 1; i < count; i++) {
    const passed = time_s[i] - time_s[i - 1];
    const behind = ((values[i] - values[i - 1]) / passed) * lag;
    out[i] = values[i] - behind + (out[i - 1] - values[i - 1] + behind) * Math.exp(-passed / lag);
  }
  return out;
}
