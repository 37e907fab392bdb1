import type { LogChannel } from './log/log.js';
import { hangTogether, ownNoise, robustSpread } from './residuals.js';

/** How much one reading of a channel counts. */
export interface ChannelWeight {
  /** its standard deviation [K] */
  deviation: number;
  /** readings that know as much as one independent one */
  together: number;
  /** how long its errors hang together [s], and its usual time between readings [s] */
  lasts_s: number;
  spacing_s: number;
}

/** Correlations below this are chance [-]. */
const CHANCE = 0.1;

/**
 * Weights of the channels of one log by what a run leaves over: an error that lasts, or that all probes share, counts
 * as often as it is new, not as often as it was read. Without this a model that lacks something would take its own
 * error for knowledge.
 *
 * @param residuals measured less computed of each channel's readings from `from` on [K]
 */
export function weightsOf(
  channels: readonly LogChannel[],
  from: readonly number[],
  residuals: readonly Float64Array[],
): ChannelWeight[] {
  const shared = channels.map((_, c) =>
    channels.reduce((sum, _other, d) => {
      if (d === c) return sum;
      const rho = correlationInTime(channels, from, residuals, c, d);
      return rho > CHANCE ? sum + rho : sum;
    }, 1),
  );
  return channels.map(({ time_s, value_K, resolution_K }, c) => {
    const count = residuals[c].length;
    const read = value_K.slice(from[c], from[c] + count);
    const spacing = count > 1 ? (time_s[from[c] + count - 1] - time_s[from[c]]) / (count - 1) : 0;
    const row = hangTogether(residuals[c]);
    return {
      deviation: Math.max(robustSpread(residuals[c]), ownNoise(read, resolution_K), LEAST),
      together: row * shared[c],
      lasts_s: row * spacing,
      spacing_s: spacing,
    };
  });
}

/** No probe is taken for better than this [K]. */
const LEAST = 0.05;

/** Correlation of two channels' residuals at the times that both have. */
function correlationInTime(
  channels: readonly LogChannel[],
  from: readonly number[],
  residuals: readonly Float64Array[],
  c: number,
  d: number,
): number {
  const [a, b] = [residuals[c], residuals[d]];
  const [ta, tb] = [channels[c].time_s, channels[d].time_s];
  let [i, j] = [0, 0];
  let [ab, aa, bb] = [0, 0, 0];
  while (i < a.length && j < b.length) {
    const step = ta[from[c] + i] - tb[from[d] + j];
    if (step < 0) i++;
    else if (step > 0) j++;
    else {
      ab += a[i] * b[j];
      aa += a[i] * a[i];
      bb += b[j] * b[j];
      i++;
      j++;
    }
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}
