/** Rows in the order of time: restarts and stray times taken out, a few rows sorted, rows of one time put together. */
import { median } from 'simple-statistics';
import { format } from '../../units/index.js';
import { counted, type Report } from './report.js';
import type { LogTable } from './table.js';

/** Rows of a table in the order of time. */
export interface Timeline {
  /** rising, from 0 [s] */
  time_s: number[];
  /** rows of the table at each of them, nearly always one */
  rows: number[][];
  /** usual step [s] */
  interval_s: number;
}

/** Rows that may stand out of order and still be sorted: a few, or a share of all. */
const FEW_UNORDERED = 3;
const SHARE_UNORDERED = 0.02;
/** Steps back that make a restart rather than a row out of order. */
const RESTART_DROP = 3;
/** Steps from its beginning within which a logger that restarts sets in again. */
const NEAR_START = 5;
/** Rows after a restart that must rise from there. */
const RESTART_ROWS = 3;
/** Runs of a logger in one file; more are rows in no order. */
const MOST_RUNS = 8;
/** Steps without a row that make a gap. */
const GAP_STEPS = 5;
/** Without a row for longer than this two cooks stand in one file [s]. */
const LONG_GAP = 86_400;
/** Beyond this a log is no cook, and its unit of time is wrong [s]. */
const LONGEST = 7 * 86_400;

/** Undefined: the faults are in the report. */
export function orderRows(seconds: Float64Array, table: LogTable, report: Report): Timeline | undefined {
  const all = [...seconds.keys()].filter((row) => Number.isFinite(seconds[row]));
  const step = medianStep(all.map((row) => seconds[row]));
  if (step === undefined) {
    report.fault({
      code: 'out-of-range',
      line: table.lines[all[0] ?? 0] ?? table.headerLine,
      message: all.length < 2 ? `holds ${counted(all.length, 'row')} with a time` : 'holds no time that rises',
      allowed: 'rows in the order of time, 20 readings or more',
    });
    return undefined;
  }
  const runs = splitAtRestarts(all, seconds, step);
  if (runs.length > MOST_RUNS) return refuseOrder(runs[1][0], runs.length - 1, all.length, 'times', table, report);
  const run = longest(runs, table, report, 'restart');
  const sorted = sort(run, seconds, step, table, report);
  if (!sorted) return undefined;
  const kept = longest(splitAt(sorted, seconds), table, report, 'long-gap');
  const timeline = group(kept, seconds, table, report);
  const span = timeline.time_s.at(-1) ?? 0;
  if (span > LONGEST) {
    report.fault({
      code: 'out-of-range',
      line: table.lines[kept[0]],
      message: `the log spans ${format('time', span, 'shop', { unit: 'd' })}`,
      allowed: 'up to 7 d; is the unit of time right?',
    });
    return undefined;
  }
  tellGaps(timeline, table, report);
  return timeline;
}

/** Median of the steps that rise, of times in the order of a list. */
function medianStep(times: readonly number[]): number | undefined {
  const steps = times.slice(1).map((time, i) => time - times[i]);
  const rising = steps.filter((step) => step > 1e-6);
  return rising.length === 0 ? undefined : median(rising);
}

function splitAtRestarts(rows: readonly number[], seconds: Float64Array, step: number): number[][] {
  const runs: number[][] = [];
  let start = 0;
  for (let i = 1; i < rows.length; i++) {
    const [before, now, first] = [seconds[rows[i - 1]], seconds[rows[i]], seconds[rows[start]]];
    if (before - now <= RESTART_DROP * step || now > first + NEAR_START * step) continue;
    const after = rows.slice(i, i + 1 + RESTART_ROWS).map((row) => seconds[row]);
    if (!after.every((time, k) => time < before && (k === 0 || time >= after[k - 1]))) continue;
    runs.push(rows.slice(start, i));
    start = i;
  }
  runs.push(rows.slice(start));
  return runs;
}

function splitAt(rows: readonly number[], seconds: Float64Array): number[][] {
  const runs: number[][] = [];
  let start = 0;
  for (let i = 1; i < rows.length; i++) {
    if (seconds[rows[i]] - seconds[rows[i - 1]] <= LONG_GAP) continue;
    runs.push(rows.slice(start, i));
    start = i;
  }
  runs.push(rows.slice(start));
  return runs;
}

/** The longest run of rows; the others are told. */
function longest(runs: number[][], table: LogTable, report: Report, code: 'restart' | 'long-gap'): number[] {
  const best = runs.reduce((most, run) => (run.length > most.length ? run : most), []);
  const others = runs.filter((run) => run !== best).flat();
  const count = others.length;
  const line = table.lines[others[0]] ?? null;
  const kept = `lines ${table.lines[best[0]]} to ${table.lines[best[best.length - 1]]} are used`;
  report.note({
    code,
    message:
      code === 'restart'
        ? `The logger's time starts over ${counted(runs.length - 1, 'time')}: how long it was off can't be known, so ${counted(count, 'row')} left out and ${kept}. Clock times or ISO 8601 in the log keep them.`
        : `More than a day passes without a row: two cooks in one file. ${counted(count, 'row')} left out, ${kept}.`,
    where: 'log',
    line,
    count,
    leftOut: 'rows',
  });
  return best;
}

/** Sorts a few rows that stand out of order; undefined where they are many. */
function sort(
  rows: readonly number[],
  seconds: Float64Array,
  step: number,
  table: LogTable,
  report: Report,
): number[] | undefined {
  const inOrder = rising(rows, seconds);
  const off = rows.filter((row) => !inOrder.has(row));
  if (off.length > Math.max(FEW_UNORDERED, SHARE_UNORDERED * rows.length)) {
    return refuseOrder(off[0], off.length, rows.length, 'rows', table, report);
  }
  const ordered = rows.filter((row) => inOrder.has(row));
  const low = seconds[ordered[0]] - NEAR_START * step;
  const high = seconds[ordered[ordered.length - 1]] + NEAR_START * step;
  const stray = off.filter((row) => seconds[row] < low || seconds[row] > high);
  report.note({
    code: 'stray-time',
    message: `${counted(stray.length, 'row')} with a time far from those around left out (first in line ${table.lines[stray[0]]}).`,
    where: 'log',
    line: table.lines[stray[0]] ?? null,
    count: stray.length,
    leftOut: 'rows',
  });
  const moved = off.length - stray.length;
  const firstMoved = off.find((row) => !stray.includes(row));
  report.note({
    code: 'unordered-time',
    message: `${counted(moved, 'row')} out of the order of time sorted in (first in line ${table.lines[firstMoved ?? 0]}).`,
    where: 'log',
    line: table.lines[firstMoved ?? 0] ?? null,
    count: moved,
  });
  const left = new Set(stray);
  return rows.filter((row) => !left.has(row)).sort((a, b) => seconds[a] - seconds[b] || a - b);
}

function refuseOrder(
  row: number,
  count: number,
  rows: number,
  what: 'rows' | 'times',
  table: LogTable,
  report: Report,
): undefined {
  const off =
    what === 'rows' ? `${count} of ${counted(rows, 'row')} stand out of order` : `${count} times in ${rows} rows`;
  report.fault({
    code: 'out-of-range',
    line: table.lines[row],
    message: `times run backwards: ${off}, too many to sort`,
    allowed: 'rows in the order of time; where a clock was set back, ISO 8601 with its zone',
  });
  return undefined;
}

/** Longest sequence of rows whose times don't fall: patience sorting, n log n. */
function rising(rows: readonly number[], seconds: Float64Array): ReadonlySet<number> {
  if (rows.every((row, i) => i === 0 || seconds[row] >= seconds[rows[i - 1]])) return new Set(rows);
  const tails: number[] = [];
  const before = new Map<number, number>();
  for (const row of rows) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (seconds[tails[middle]] <= seconds[row]) low = middle + 1;
      else high = middle;
    }
    if (low > 0) before.set(row, tails[low - 1]);
    tails[low] = row;
  }
  const found = new Set<number>();
  for (let row = tails.at(-1); row !== undefined; row = before.get(row)) found.add(row);
  return found;
}

function group(rows: readonly number[], seconds: Float64Array, table: LogTable, report: Report): Timeline {
  const start = seconds[rows[0]] ?? 0;
  const time_s: number[] = [];
  const groups: number[][] = [];
  for (const row of rows) {
    const time = Math.round((seconds[row] - start) * 1e6) / 1e6;
    if (time_s.length > 0 && time === time_s[time_s.length - 1]) groups[groups.length - 1].push(row);
    else {
      time_s.push(time);
      groups.push([row]);
    }
  }
  const same: number[] = [];
  const differing: number[] = [];
  for (const [i, group] of groups.entries()) {
    if (group.length === 1) continue;
    const distinct = new Map<string, number>();
    for (const row of group) {
      const cells = table.cells[row].join('\u0000');
      if (distinct.has(cells)) same.push(row);
      else distinct.set(cells, row);
    }
    const kept = [...distinct.values()];
    for (const row of kept.slice(1)) differing.push(row);
    groups[i] = kept;
  }
  const [firstSame] = same;
  report.note({
    code: 'repeated-row',
    message: `${counted(same.length, 'row')} that repeat another whole row count once (first in line ${table.lines[firstSame]}).`,
    where: 'log',
    line: table.lines[firstSame] ?? null,
    count: same.length,
    leftOut: 'rows',
  });
  report.note({
    code: 'repeated-time',
    message: `${counted(differing.length, 'row')} with the time of another row: their readings are averaged (first in line ${table.lines[differing[0]]}).`,
    where: 'log',
    line: table.lines[differing[0]] ?? null,
    count: differing.length,
    leftOut: 'rows',
  });
  return { time_s, rows: groups, interval_s: medianStep(time_s) ?? 0 };
}

function tellGaps({ time_s, rows, interval_s }: Timeline, table: LogTable, report: Report): void {
  const gaps: number[] = [];
  for (let i = 1; i < time_s.length; i++) if (time_s[i] - time_s[i - 1] > GAP_STEPS * interval_s) gaps.push(i - 1);
  const most = gaps.reduce((length, i) => Math.max(length, time_s[i + 1] - time_s[i]), 0);
  const line = gaps.length === 0 ? null : table.lines[rows[gaps[0] + 1][0]];
  report.note({
    code: 'gap',
    message:
      `${counted(gaps.length, 'gap')} of more than ${GAP_STEPS} usual steps (${format('time', interval_s)}), ` +
      `the longest of ${format('time', most)}, the first before line ${line}: nothing is made up for them, and what was laid on or opened meanwhile is not known.`,
    where: 'log',
    line,
    count: gaps.length,
  });
}
