/** What a fire released, from a hood calorimeter that shows it late and averaged. */
import { interpolate } from '../../solve/interpolate.js';
import type { HeatRelease } from '../rooms/solveRoom.js';

/** Readings are means over this time about their moment [s]. */
export const AVERAGED_OVER = 45;

/** The hood trails the burner by about this much [s]; stated with the data, an estimate. */
export const HOOD_LAG = 60;

/** A gas valve is open within this [s]; the inputs released with the data take 10. */
const OPENING = 5;

/** Heat released [W] as a hood shows it at a time [s]. */
export interface Reading {
  time: number;
  /** [W]; below zero before ignition, where the hood strays */
  heat: number;
}

/** The hood's readings as they stand: straight lines between them from nothing at time 0, never below zero. */
export function hoodAsIs(readings: readonly Reading[]): HeatRelease {
  const times = [0, ...readings.map(({ time }) => time)];
  const heats = [0, ...readings.map(({ heat }) => Math.max(0, heat))];
  return {
    at: (time) => interpolate(times, heats, time),
    breaks: times.slice(1, -1),
  };
}

/** Heat released once the hood's delay is taken out; times in s. */
export interface CorrectedRelease extends HeatRelease {
  ignition: number;
  /** Infinity where the fire outlasts the readings */
  shut: number;
}

/**
 * The burner behind the readings. A gas burner is a valve: nothing, then its level, then nothing. So:
 *
 * - the level at any moment is what the hood shows `HOOD_LAG` later; before its first full reading, that reading;
 * - ignition is where a step to that level, averaged over `AVERAGED_OVER` and shown `HOOD_LAG` late, gives the partial
 *   reading on the way up; the valve is shut where the same gives the partial reading on the way down.
 *
 * @param readings rising in time; one partial reading on the way up, then full ones, then perhaps one partial on the
 * way down
 * @param litAt another moment of ignition, to see what it does [s]
 */
export function burnerBehind(readings: readonly Reading[], litAt?: number): CorrectedRelease {
  const highest = Math.max(...readings.map((reading) => reading.heat));
  const full = readings.filter((reading) => reading.heat > 0.75 * highest);
  const [first, last] = [full[0], full[full.length - 1]];
  const rising = readings.find((reading) => reading.time < first.time && reading.heat > 0);
  const falling = readings.find((reading) => reading.time > last.time);
  const half = AVERAGED_OVER / 2;
  const shown = rising
    ? rising.time + half - (AVERAGED_OVER * rising.heat) / first.heat - HOOD_LAG
    : first.time - half - HOOD_LAG;
  const shut = falling
    ? falling.time - half + (AVERAGED_OVER * Math.max(0, falling.heat)) / last.heat - HOOD_LAG
    : Infinity;
  const ignition = litAt ?? shown;
  const [times, heats] = [full.map(({ time }) => time), full.map(({ heat }) => heat)];
  return {
    ignition,
    shut,
    at: (time) => {
      if (time <= ignition || time > shut) return 0;
      return Math.min(1, (time - ignition) / OPENING) * interpolate(times, heats, time + HOOD_LAG);
    },
    breaks: [ignition, ignition + OPENING, shut].filter(Number.isFinite),
  };
}
