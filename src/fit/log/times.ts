/** Times of rows, as written, to seconds from a mark of their own; clock times passing midnight run on. */
import type { OtherUnits } from '../../units/index.js';
import { clockPattern } from '../../design/logHeaders.js';
import type { Column } from './columns.js';
import { readNumbers, type NumberStyle } from './numbers.js';
import { counted, type Report } from './report.js';
import { daysOf, readStamp, type Stamp } from './stamps.js';
import type { LogTable } from './table.js';

const DAY = 86_400;
const HOUR = 3600;
/** A step back by more than this share of a turn of the clock is a step over midnight; by less, a row out of order. */
const SURE_TURN = 0.75;
/** Share of rows without a readable time above which the column counts as misread. */
const MOST_UNREADABLE = 1 / 3;
/** Longest stretch of days by which two ways of reading a date can be told apart. */
const PLAUSIBLE_DAYS = 10;

const FORMS =
  'time [s], time [min] or time [h] with numbers; clock times (10:15, 10:15:30, 1:05 PM); ISO 8601 (2026-07-04T10:15:00)';

/** Seconds of each row of the table, NaN where its time can't be read; undefined: the faults are in the report. */
export function readTimes(
  table: LogTable,
  columns: readonly Column[],
  style: NumberStyle,
  otherUnits: OtherUnits | undefined,
  report: Report,
): Float64Array | undefined {
  const date = columns.find(({ kind }) => kind === 'date');
  const time = columns.find(({ kind }) => kind === 'time') ?? date;
  if (!time) return undefined;
  const numbers = time.unit !== null && !clockPattern(time.unit);
  if (date && date !== time && (numbers || !needsDate(table, time))) tellUnusedDate(date, table, report);
  const seconds = numbers
    ? readNumbers(table, time, style, otherUnits).si
    : stampTimes(table, time, date, style, otherUnits, report);
  if (!seconds) return undefined;
  return tellUnreadable(table, time, seconds, report) ? undefined : seconds;
}

/** Clock times without a date of their own. */
function needsDate(table: LogTable, time: Column): boolean {
  return table.cells.some((row) => {
    const stamp = readStamp(row[time.index]);
    return stamp?.clock !== undefined && !stamp.date;
  });
}

function tellUnusedDate(date: Column, table: LogTable, report: Report): void {
  report.note({
    code: 'unused-column',
    message: `'${date.header}' is not used: the column of times needs no date.`,
    where: date.header,
    line: table.headerLine,
    count: table.cells.length,
  });
}

/** True when the column as a whole can't be what its header says. */
function tellUnreadable(table: LogTable, time: Column, seconds: Float64Array, report: Report): boolean {
  const bad = seconds.reduce((count, value) => count + (Number.isFinite(value) ? 0 : 1), 0);
  if (bad === 0) return false;
  const first = seconds.findIndex((value) => !Number.isFinite(value));
  const cell = table.cells[first][time.index];
  if (bad > MOST_UNREADABLE * seconds.length) {
    const bare = time.unit === null && /^[-+]?\d+([.,]\d+)?$/.test(cell);
    report.fault({
      code: bare ? 'no-unit' : 'not-a-quantity',
      line: table.lines[first],
      header: time.header,
      value: cell || null,
      message: bare
        ? 'has no unit'
        : `${cell === '' ? 'is empty' : 'is no time that can be read'} here, as in ${bad} of ${counted(seconds.length, 'row')}`,
      allowed: FORMS,
      nearest: bare ? `${time.header} [s]` : undefined,
    });
    return true;
  }
  report.note({
    code: 'unreadable-time',
    message: `${counted(bad, 'row')} without a readable time left out (first in line ${table.lines[first]}: '${cell}').`,
    where: time.header,
    line: table.lines[first],
    count: bad,
    leftOut: 'rows',
  });
  return false;
}

/** Cells that carry their own unit, clock times, or dates with clock times: whichever most of them are. */
function stampTimes(
  table: LogTable,
  time: Column,
  date: Column | undefined,
  style: NumberStyle,
  otherUnits: OtherUnits | undefined,
  report: Report,
): Float64Array | undefined {
  const cells = table.cells.map((row) => row[time.index]);
  if (time.unit !== null && /^m/i.test(time.unit)) return Float64Array.from(cells, minutesAndSeconds);
  let stamps = cells.map(readStamp);
  if (date && date !== time && needsDate(table, time)) {
    stamps = table.cells.map((row) => readStamp(`${row[date.index]} ${row[time.index]}`));
  }
  const whole = stamps.filter((stamp) => stamp?.date && stamp.clock !== undefined).length;
  const clocks = stamps.filter((stamp) => stamp?.clock !== undefined && !stamp.date).length;
  if (whole === 0 && clocks === 0) {
    const own = { ...time, unit: null, quantity: 'time' } as const;
    return readNumbers(table, own, style, otherUnits).si;
  }
  return whole >= clocks ? datedTimes(stamps, time, table, report) : clockTimes(stamps, time, table, report);
}

/** `75:30` under a header such as time [mm:ss]. */
function minutesAndSeconds(cell: string): number {
  const match = /^(\d+):([0-5]\d(?:\.\d+)?)$/.exec(cell);
  return match ? 60 * Number(match[1]) + Number(match[2]) : NaN;
}

/** Seconds since 1970; rows with a zone and rows without don't mix. */
function datedTimes(
  stamps: readonly (Stamp | undefined)[],
  time: Column,
  table: LogTable,
  report: Report,
): Float64Array | undefined {
  const zoned = stamps.filter((stamp) => stamp?.date && stamp.zone !== undefined).length;
  const plain = stamps.filter((stamp) => stamp?.date && stamp.zone === undefined).length;
  const order = orderOfDates(stamps);
  if (!order) {
    const first = stamps.findIndex((stamp) => stamp?.date?.order === 'unknown');
    report.fault({
      code: 'not-a-quantity',
      line: table.lines[Math.max(0, first)],
      header: time.header,
      value: table.cells[Math.max(0, first)][time.index],
      message: 'may be day first or month first, and the log reads either way',
      allowed: 'dates as 2026-07-04',
    });
    return undefined;
  }
  return Float64Array.from(stamps, (stamp) => {
    if (!stamp?.date || stamp.clock === undefined) return NaN;
    if ((stamp.zone !== undefined) !== zoned > plain) return NaN;
    const days = daysOf(stamp.date, stamp.date.order === 'unknown' ? order : stamp.date.order);
    return days === undefined ? NaN : days * DAY + stamp.clock - (stamp.zone ?? 0);
  });
}

/**
 * How dates such as 7/4/2026 are meant: as those that leave no choice, else by the reading that is a cook and not half
 * a year.
 */
function orderOfDates(stamps: readonly (Stamp | undefined)[]): 'month-day' | 'day-month' | undefined {
  const orders = ['month-day', 'day-month'] as const;
  const open = stamps.flatMap((stamp) => (stamp?.date?.order === 'unknown' ? [stamp.date] : []));
  if (open.length === 0) return 'month-day';
  const all = stamps.flatMap((stamp) => (stamp?.date ? [stamp.date] : []));
  const fitting = orders.filter((order) => {
    let low = Infinity;
    let high = -Infinity;
    for (const date of all) {
      const days = daysOf(date, date.order === 'unknown' ? order : date.order);
      if (days === undefined) return false;
      low = Math.min(low, days);
      high = Math.max(high, days);
    }
    return high - low <= PLAUSIBLE_DAYS;
  });
  const sameDay = open.every(({ first, second }) => first === open[0].first && second === open[0].second);
  return fitting.length === 1 || (sameDay && fitting.length > 0) ? fitting[0] : undefined;
}

/**
 * Clock times without a date: a step back by nearly a turn of the clock is midnight, or noon on a clock of twelve
 * hours.
 */
function clockTimes(
  stamps: readonly (Stamp | undefined)[],
  time: Column,
  table: LogTable,
  report: Report,
): Float64Array {
  const clock = Float64Array.from(stamps, (stamp) => (stamp && !stamp.date ? (stamp.clock ?? NaN) : NaN));
  const halves = stamps.some((stamp) => stamp?.halves);
  const read = clock.filter((value) => Number.isFinite(value));
  if (read.some((value) => value > DAY)) return clock;
  const twelve = !halves && read.every((value) => value >= HOUR && value < 13 * HOUR);
  const turn = twelve ? DAY / 2 : DAY;
  let turns = 0;
  let last = NaN;
  const firsts: number[] = [];
  const seconds = clock.map((value, i) => {
    if (!Number.isFinite(value)) return NaN;
    // Taken back the same way, so that one stray time leaves those after it where they were.
    if (value - last < -SURE_TURN * turn) {
      turns++;
      firsts.push(table.lines[i]);
    } else if (value - last > SURE_TURN * turn) turns--;
    last = value;
    return value + turns * turn;
  });
  report.note({
    code: twelve ? 'twelve-hour-clock' : 'midnight',
    message: twelve
      ? `Clock times of twelve hours run on past 12:59 (first in line ${firsts[0]}).`
      : `Clock times pass midnight ${counted(firsts.length, 'time')} (first in line ${firsts[0]}) and run on.`,
    where: time.header,
    line: firsts[0] ?? null,
    count: firsts.length,
  });
  return seconds;
}
