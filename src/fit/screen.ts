/** Probes held against each other and the model before a fit: means over blocks of readings. */
import type { Beside, FitPart } from './fitRuns.js';
import type { LogRun } from './logRun.js';
import type { ScreenedProbe } from './suspects.js';

/** Length of a block of readings that counts as one, where probes are held against each other [s]. */
const BLOCK = 900;
/** How far a model that is right may be off over such a block: so many K, and a share of the rise above outdoors. */
const MODEL = { least: 3, share: 0.04 };

/** First and last (excluded) reading of each block; the very first reading, of a pit that is cold, is one by itself. */
function blocksOf(
  time_s: readonly number[],
  from: number,
  to: number,
): { first: number; last: number; place: number }[] {
  const blocks: { first: number; last: number; place: number }[] = [];
  const place = (i: number) => (i === 0 ? -1 : Math.floor(time_s[i] / BLOCK));
  for (let first = from, i = from + 1; i <= to; i++) {
    if (i < to && place(i) === place(first)) continue;
    blocks.push({ first, last: i, place: place(first) });
    first = i;
  }
  return blocks;
}

function meanOf(of: (i: number) => number, first: number, last: number): number {
  let sum = 0;
  for (let i = first; i < last; i++) sum += of(i);
  return sum / (last - first);
}

/**
 * What each probe reads against what was computed, by blocks.
 *
 * @param base runs at the start, one a log
 * @param beside runs with each estimate a step aside
 * @param outdoors [K]
 */
export function screened(
  parts: readonly FitPart[],
  base: readonly LogRun[],
  beside: readonly Beside[],
  outdoors: number,
): ScreenedProbe[] {
  return parts.flatMap(({ log, from, to }, l) =>
    log.channels.map(({ header, time_s, value_K }, c): ScreenedProbe => {
      const computed = base[l].computed[c];
      const blocks = blocksOf(time_s, from[c], to[c]);
      const mean = (of: (i: number) => number) => blocks.map(({ first, last }) => meanOf(of, first, last));
      return {
        header,
        log: l,
        block: blocks.map(({ place }) => place),
        computed: mean((i) => computed[i]),
        left: mean((i) => value_K[i] - computed[i]),
        deviation: mean((i) => MODEL.least + MODEL.share * Math.abs(computed[i] - outdoors)),
        slopes: beside.map(({ runs, step }) => mean((i) => (runs ? (runs[l].computed[c][i] - computed[i]) / step : 0))),
      };
    }),
  );
}
