import type { Design, StationName } from '../../src/design/design.js';
import type { CookLog, LogChannel } from '../../src/fit/log/log.js';
import { runLog } from '../../src/fit/logRun.js';
import { seededRandom } from '../../src/study/spread/random.js';
import { triangularQuantile } from '../../src/study/spread/sampling.js';
import { fitUnknownsOf } from '../../src/study/spread/unknowns.js';

export const FAHRENHEIT = 1.8;

/**
 * Numbers from a seed, uniform and normal; the generator's first numbers of small seeds are alike, so they are passed
 * over.
 */
export function chance(seed: number): { uniform: () => number; normal: () => number } {
  const uniform = seededRandom(seed);
  for (let i = 0; i < 64; i++) uniform();
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** Estimates drawn from their spreads, and the design that has them. */
export function drawnTruth(design: Design, paths: string[], uniform: () => number) {
  const truth = structuredClone(design);
  const values: Record<string, number> = {};
  for (const { path, distribution, fields } of fitUnknownsOf(design)) {
    if (!paths.includes(path)) continue;
    const at = uniform();
    for (const { low, value, high, set } of fields) {
      values[path] = triangularQuantile(distribution, { low, mode: value, high }, at);
      set(truth, values[path]);
    }
  }
  return { truth, values };
}

export interface LogOptions {
  hours?: number;
  every_s?: number;
  stations?: StationName[];
  wood?: CookLog['wood'];
  door?: CookLog['door'];
}

/** A log without readings yet: wood every half hour or so, the door open twice, air and wind that change. */
export function blankLog(
  { hours = 6, every_s = 10, stations = ['fireEnd', 'middle', 'stackEnd'], wood, door }: LogOptions = {},
  uniform: () => number = () => 0.5,
): CookLog {
  const length = hours * 3600;
  const times = Array.from({ length: Math.floor(length / every_s) + 1 }, (_, i) => i * every_s);
  const laid = [{ time_s: 0, mass_kg: 4 }];
  for (let t = 1200; t < length; t += 1800 + 1200 * uniform()) laid.push({ time_s: t, mass_kg: 1 + uniform() });
  const channel = (station: StationName): LogChannel => ({
    header: station,
    station,
    measured: 'thermometer',
    time_s: times,
    value_K: times.map(() => 294),
    resolution_K: 0,
  });
  return {
    name: 'made up',
    length_s: times[times.length - 1],
    interval_s: every_s,
    rows: times.length,
    channels: stations.map(channel),
    wood: wood === undefined ? laid : wood,
    fire: null,
    air: { time_s: times, value: times.map((t) => 294 + 4 * Math.sin(t / 7000)) },
    wind: { time_s: times, value: times.map((t) => 2 + Math.sin(t / 900)) },
    intakes: null,
    damper: null,
    door: door ?? [
      { from_s: 0.42 * length, to_s: 0.42 * length + 60 },
      { from_s: 0.69 * length, to_s: 0.69 * length + 120 },
    ],
    notes: [],
  };
}

export interface ReadingOptions {
  noise_K: number;
  /** share of the readings that are lost, and for how long each probe is silent at some time [s] */
  dropouts?: number;
  silence_s?: number;
  /** how far each probe reads off all the time [K] */
  offsets_K?: number[];
}

/** The log as its probes would have read it on a pit, steps far finer than a fit's. */
export function measured(
  pit: Design,
  log: CookLog,
  { noise_K, dropouts = 0, silence_s = 0, offsets_K }: ReadingOptions,
  { uniform, normal }: ReturnType<typeof chance>,
): CookLog {
  const run = runLog(pit, log, { tolerance: 0.02 });
  if (!run) throw new Error('the pit of a made-up log cannot be followed');
  const channels = log.channels.map((channel, c) => {
    const silent = silence_s > 0 ? (0.15 + 0.7 * uniform()) * log.length_s : Infinity;
    const kept = channel.time_s.map((t) => uniform() >= dropouts && !(t > silent && t < silent + silence_s));
    const read = Array.from(run.computed[c], (value) => value + (offsets_K?.[c] ?? 0) + noise_K * normal());
    return {
      ...channel,
      time_s: channel.time_s.filter((_, i) => kept[i]),
      value_K: read.filter((_, i) => kept[i]),
    };
  });
  return { ...log, channels };
}
