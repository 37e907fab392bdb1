/**
 * Probes that tell nothing of the pit: stuck at one reading while others move, or lying outside while others heat up.
 *
 * Both need another probe as witness. A pit that holds reads the same for long on a logger of whole degrees, a far
 * probe stays cold for a while after lighting, the skin of an insulated part hardly warms: none of these counts as
 * dead.
 */
import type { Design, StationName } from '../../design/design.js';
import { partOfStation } from '../../design/stations.js';
import { format } from '../../units/index.js';
import { firstAtOrAfter } from './outliers.js';
import { median, quantile } from 'simple-statistics';
import { resolutionOf, without, type Readings } from './readings.js';
import { counted, type Report } from './report.js';

const FAHRENHEIT = 5 / 9;

/** A stuck probe reads the same for at least so long [s] and so many readings. */
const STUCK_TIME = 1200;
const STUCK_READINGS = 8;
/**
 * The witness has moved by this much [K], and by so many of the stuck probe's own steps where it moves less than the
 * witness.
 */
const LEAST_MOVE = 20 * FAHRENHEIT;
const MOVE_STEPS = 10;
/** Moved by the fire alone, or while the stuck probe is still cold, a witness must move further [K]. */
const FAR_MOVE = 100 * FAHRENHEIT;
/** How long the stuck probe stays so after the witness has moved [s], and after a far move. */
const STAYS = 600;
const STAYS_FAR = 1200;
/** Within this of outdoors a probe counts as cold [K]. */
const COLD = 20;
/** Readings of a witness are taken as medians over this long [s]: a flickering flame is no move. */
const BLOCK = 300;
/** Share of a probe's time that makes the whole of it dead. */
const MOST_DEAD = 0.5;
/** A probe outside stays within this of its beginning [K], which is within that of outdoors. */
const OUTSIDE_RISE = 20 * FAHRENHEIT;
const OUTSIDE_START = 40 * FAHRENHEIT;
/** How long others are hot meanwhile [s]. */
const OUTSIDE_TIME = 1800;

export function withoutDeadProbes(
  channels: readonly Readings[],
  design: Design,
  outdoors: number,
  report: Report,
): Readings[] {
  return channels.flatMap((channel) => {
    if (liesOutside(channel, channels, design, outdoors)) {
      tell(
        report,
        channel,
        channel.value.length,
        channel.line[0],
        `stays at outdoor temperature while others heat up: unplugged, or lying outside. The whole column is left out`,
      );
      return [];
    }
    const runs = stuckRuns(channel);
    const step = runs.length === 0 ? 0 : stepOf(channel, channels);
    const stuck = runs.filter((run) => isDead(channel, run, step, channels, outdoors));
    if (stuck.length === 0) return [channel];
    const time = stuck.reduce((sum, { from, to }) => sum + channel.time_s[to - 1] - channel.time_s[from], 0);
    const span = channel.time_s[channel.time_s.length - 1] - channel.time_s[0];
    const line = channel.line[stuck[0].from];
    const reads = format('temperature', channel.value[stuck[0].from]);
    if (time > MOST_DEAD * span) {
      tell(
        report,
        channel,
        channel.value.length,
        line,
        `reads ${reads} and nothing else for ${format('time', time)} while others move: dead. The whole column is left out`,
      );
      return [];
    }
    const out = new Set(stuck.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, k) => from + k)));
    tell(
      report,
      channel,
      out.size,
      line,
      `is stuck at ${reads} for ${format('time', time)} while others move: ${counted(out.size, 'reading')} left out`,
    );
    return [without(channel, out)];
  });
}

function tell(report: Report, { column }: Readings, count: number, line: number, what: string): void {
  report.note({
    code: 'dead-probe',
    message: `It ${what}.`,
    where: column.header,
    line,
    count,
    leftOut: 'readings',
  });
}

interface Run {
  from: number;
  to: number;
}

/** Smallest step of a probe's readings; of the finest other one where it never changes [K]. */
function stepOf(channel: Readings, channels: readonly Readings[]): number {
  const own = resolutionOf(channel.value);
  if (own > 0) return own;
  const others = channels.map(({ value }) => resolutionOf(value)).filter((step) => step > 0);
  return others.length === 0 ? 0 : Math.min(...others);
}

/** Stretches of one and the same reading. */
function stuckRuns({ time_s, value }: Readings): Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (let to = 1; to <= value.length; to++) {
    if (to < value.length && Math.abs(value[to] - value[from]) < 1e-6) continue;
    if (to - from >= STUCK_READINGS && time_s[to - 1] - time_s[from] >= STUCK_TIME) runs.push({ from, to });
    from = to;
  }
  return runs;
}

function isDead(
  channel: Readings,
  { from, to }: Run,
  step: number,
  channels: readonly Readings[],
  outdoors: number,
): boolean {
  const [start, end] = [channel.time_s[from], channel.time_s[to - 1]];
  const own = Math.abs(channel.value[from] - outdoors);
  return channels.some((witness) => {
    if (witness === channel) return false;
    const blocks = blocksOf(witness, start, end);
    if (blocks.length < 2) return false;
    const level = blocks.reduce((most, { value }) => Math.max(most, Math.abs(value - outdoors)), 0);
    const slow = channel.column.measured === 'steel';
    const far = own < COLD || slow || witness.column.station === 'firebox';
    const inSteps = own < COLD ? 0 : MOVE_STEPS * step * Math.max(1, level / own);
    const move = Math.max(far ? FAR_MOVE : LEAST_MOVE, inSteps);
    // What comes and goes with every split does not show on steel: there the witness must have moved for good.
    if (slow && Math.abs(halfMedian(blocks, 0) - halfMedian(blocks, 1)) < move) return false;
    const moved = blocks.find(({ value }) => Math.abs(value - blocks[0].value) > move);
    return moved !== undefined && end - moved.time >= (far ? STAYS_FAR : STAYS);
  });
}

function halfMedian(blocks: readonly { value: number }[], half: 0 | 1): number {
  const middle = blocks.length >> 1;
  return median((half === 0 ? blocks.slice(0, middle) : blocks.slice(middle)).map(({ value }) => value));
}

/** Medians of a channel over stretches of five minutes. */
function blocksOf({ time_s, value }: Readings, start: number, end: number): { time: number; value: number }[] {
  const blocks: { time: number; value: number }[] = [];
  let from = firstAtOrAfter(time_s, start);
  while (from < time_s.length && time_s[from] <= end) {
    const to = Math.max(from + 1, firstAtOrAfter(time_s, time_s[from] + BLOCK));
    blocks.push({ time: time_s[from], value: median(value.slice(from, to)) });
    from = to;
  }
  return blocks;
}

function liesOutside(channel: Readings, channels: readonly Readings[], design: Design, outdoors: number): boolean {
  const { column, value, time_s } = channel;
  if (column.measured === 'steel' && isInsulated(design, column.station)) return false;
  const first = median(value.slice(0, 5));
  if (Math.abs(first - outdoors) > OUTSIDE_START) return false;
  const high = quantile(value, 0.98);
  if (high - first > OUTSIDE_RISE) return false;
  const [start, end] = [time_s[0], time_s[time_s.length - 1]];
  return channels.some((witness) => {
    if (witness === channel) return false;
    const hot = blocksOf(witness, start, end).filter((block) => block.value > outdoors + FAR_MOVE);
    return hot.length > 1 && hot[hot.length - 1].time - hot[0].time >= OUTSIDE_TIME;
  });
}

/** The outside of an insulated part may stay near outdoor temperature. */
function isInsulated(design: Design, station: StationName | undefined): boolean {
  const part = design[station === undefined ? 'chamber' : partOfStation(station)];
  return part?.insulation !== undefined && part.insulation.thickness > 0;
}
