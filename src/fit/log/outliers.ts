/** Readings that stand out from those around them and come back at once: spikes of a logger, not of a pit. */
import type { Stretch } from './log.js';
import { median } from 'simple-statistics';
import { without, type Readings } from './readings.js';
import { counted, type Report } from './report.js';
import { format } from '../../units/index.js';

/** Least height of a spike [K]: 20 °F. */
const LEAST_SPIKE = (20 * 5) / 9;
/** The longer between readings, the more a probe can really do meanwhile: the least height doubles at this step [s]. */
const DOUBLING_STEP = 30;
/** A bare wire in the gas can do more than a stem. */
const BARE = 2;
/** Readings that a spike may last. */
const MOST_READINGS = 5;
/** After a spike the reading is back to within this share of its height. */
const BACK_WITHIN = 0.25;
/** Times the noise that a spike must reach, and the readings on each side that the noise is taken from. */
const NOISE_TIMES = 8;
const NOISE_REACH = 10;
/** Median absolute deviation to standard deviation of a normal distribution: one over its upper quartile. */
const MAD_TO_SIGMA = 1.4826;
/** After a door has been open a probe may do anything for so long [s]. */
const AFTER_DOOR = 180;
/** A fall that another probe shares by this much of it is a door or a gust; so many K, and times that probe's noise. */
const SHARED = 0.1;
const LEAST_SHARED = 1;
const SHARED_NOISE = 4;
/** A thicker stem shares it so much later [s]. */
const SHARED_LATE = 30;
/**
 * A rise that others share is real when it lasts so long, as between two openings of a door [s]; a shorter one is the
 * logger's.
 */
const REAL_RISE = 60;
/** Nothing of a pit is much colder than outdoors [K]. */
const BELOW_OUTDOORS = 15;

/**
 * Takes out spikes, in the manner of the Hampel identifier (Davies and Gather 1993, from memory) with the neighbours'
 * level for the median: a run of up to five readings that all lie off both neighbours, the same way, by over 20 °F and
 * eight times the noise, with the neighbours at one level.
 *
 * What a pit does is kept: a door makes a fall that recovers slowly, is written in the log, or shows on other probes as
 * well; and with long steps between readings a probe may well have been there and back.
 */
export function withoutOutliers(
  channels: readonly Readings[],
  door: readonly Stretch[],
  outdoors: number,
  report: Report,
): Readings[] {
  return channels.map((channel) => {
    const spikes = spikesOf(channel).filter((spike) => {
      const { from, to, height } = spike;
      const time = channel.time_s[from];
      if (door.some(({ from_s, to_s }) => time >= from_s - 1 && time <= to_s + AFTER_DOOR)) return false;
      if (Math.min(...channel.value.slice(from, to)) < outdoors - BELOW_OUTDOORS) return true;
      if (height > 0 && channel.time_s[to] - time < REAL_RISE) return true;
      return !isShared(channel, channels, spike);
    });
    const out = new Set(spikes.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i)));
    const [first] = out;
    const largest = spikes.reduce((most, { height }) => Math.max(most, Math.abs(height)), 0);
    report.note({
      code: 'outlier',
      message:
        `${counted(out.size, 'reading')} in ${counted(spikes.length, 'spike')} that come back at once ` +
        `left out, the highest of ${format('temperatureDifference', largest)}.`,
      where: channel.column.header,
      line: channel.line[first] ?? null,
      count: out.size,
      leftOut: 'readings',
    });
    return without(channel, out);
  });
}

interface Spike {
  from: number;
  to: number;
  /** least of its readings over the level around [K] */
  height: number;
}

function spikesOf({ column, time_s, value }: Readings): Spike[] {
  const spikes: Spike[] = [];
  if (time_s.length < 2) return [];
  const step = median(time_s.slice(1).map((time, i) => time - time_s[i]));
  const least = LEAST_SPIKE * (1 + step / DOUBLING_STEP) * (column.measured === 'gas' ? BARE : 1);
  const usual = noiseOf(value, 1, value.length);
  for (let from = 1; from < value.length - 1; from++) {
    if (Math.abs(value[from] - value[from - 1]) <= least) continue;
    const spike = spikeAt(value, from, least);
    if (!spike || Math.abs(spike.height) <= NOISE_TIMES * Math.max(usual, noiseAround(value, spike))) continue;
    if (time_s[spike.to] - time_s[from - 1] > 5 * step * (MOST_READINGS + 1)) continue;
    spikes.push(spike);
    from = spike.to;
  }
  return spikes;
}

function spikeAt(value: readonly number[], from: number, least: number): Spike | undefined {
  const before = value[from - 1];
  const sign = Math.sign(value[from] - before);
  let nearest = Infinity;
  for (let to = from + 1; to <= from + MOST_READINGS && to < value.length; to++) {
    nearest = Math.min(nearest, sign * value[to - 1]);
    const after = value[to];
    const height = nearest - Math.max(sign * before, sign * after);
    if (height <= least) {
      // Back inside before it was back at the level: a slow return, and no spike.
      if (nearest - sign * before <= least) return undefined;
      continue;
    }
    if (Math.abs(after - before) <= BACK_WITHIN * height) return { from, to, height: sign * height };
  }
  return undefined;
}

/** Noise of the readings on both sides of a spike [K]. */
function noiseAround(value: readonly number[], { from, to }: Spike): number {
  return Math.max(
    noiseOf(value, Math.max(1, from - NOISE_REACH), from),
    noiseOf(value, to + 1, Math.min(value.length, to + NOISE_REACH)),
  );
}

/** Standard deviation of the noise, from the steps that lead to the readings of a stretch [K]. */
function noiseOf(value: readonly number[], from: number, to: number): number {
  if (to <= from) return 0;
  const steps = value.slice(from, to).map((each, i) => Math.abs(each - value[from + i - 1]));
  return (MAD_TO_SIGMA * median(steps)) / Math.SQRT2;
}

/** Does another probe go the same way at the same time, or just after? */
function isShared(channel: Readings, channels: readonly Readings[], { from, to, height }: Spike): boolean {
  const sign = Math.sign(height);
  return channels.some((other) => {
    if (other === channel) return false;
    const at = firstAtOrAfter(other.time_s, channel.time_s[from]);
    const end = firstAtOrAfter(other.time_s, channel.time_s[to] + SHARED_LATE);
    if (at < 1 || at >= other.time_s.length) return false;
    let most = 0;
    for (let i = at; i < Math.max(end, at + 2) && i < other.value.length; i++) {
      most = Math.max(most, sign * (other.value[i] - other.value[at - 1]));
    }
    const noise = noiseOf(other.value, Math.max(1, at - NOISE_REACH), at);
    return most > Math.max(SHARED * Math.abs(height), LEAST_SHARED, SHARED_NOISE * noise);
  });
}

/** Place of the first time that is not before another; the length where there is none. */
export function firstAtOrAfter(times: readonly number[], time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
