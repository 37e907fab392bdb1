/** One cell of time: a clock time, a date, or both, as loggers and people write them. */

/** Parts of a written date, day and month perhaps still to be told apart. */
interface WrittenDate {
  year: number;
  /** first and second number beside the year */
  first: number;
  second: number;
  order: 'month-day' | 'day-month' | 'unknown';
}

/** A date, a clock time, or both, as written. */
export interface Stamp {
  date?: WrittenDate;
  /** since midnight [s]; undefined: a date alone */
  clock?: number;
  /** written with AM or PM */
  halves: boolean;
  /** offset from UTC [s]; undefined: none written */
  zone?: number;
}

/** A longer cell holds no time. */
const LONGEST_STAMP = 60;

const CLOCK =
  /^(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([ap]\.?\s?m\.?)?\s*(Z|UTC|[-+]\d{2}(?::?\d{2})?)?$/i;
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T,\s]+(.+))?$/i;
const YEAR_LAST = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4}|\d{2})(?:[,\s]+(.+))?$/;
const BASIC = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})?(Z|[-+]\d{4})?$/i;

/** @returns undefined where a text is no time; never a guess */
export function readStamp(text: string): Stamp | undefined {
  if (text.length > LONGEST_STAMP) return undefined;
  const basic = BASIC.exec(text);
  if (basic) {
    const [, year, month, day, hour, minute, second, zone] = basic;
    return readStamp(`${year}-${month}-${day} ${hour}:${minute}:${second ?? '00'}${zone ?? ''}`);
  }
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) {
    const [, year, , first, second, rest] = yearFirst;
    return dated({ year: +year, first: +first, second: +second, order: 'month-day' }, rest);
  }
  const yearLast = YEAR_LAST.exec(text);
  if (yearLast) {
    const [, first, mark, second, year, rest] = yearLast;
    // A point between the numbers is written day first wherever it is written.
    const order = mark === '.' ? 'day-month' : +first > 12 ? 'day-month' : +second > 12 ? 'month-day' : 'unknown';
    return dated({ year: year.length === 2 ? 2000 + +year : +year, first: +first, second: +second, order }, rest);
  }
  return readClock(text);
}

function dated(date: WrittenDate, rest: string | undefined): Stamp | undefined {
  const orders = date.order === 'unknown' ? (['month-day', 'day-month'] as const) : [date.order];
  if (!orders.some((order) => daysOf(date, order) !== undefined)) return undefined;
  if (rest === undefined) return { date, halves: false };
  const clock = readClock(rest.trim());
  return clock?.clock !== undefined && clock.clock <= 86400 ? { ...clock, date } : undefined;
}

function readClock(text: string): Stamp | undefined {
  const match = CLOCK.exec(text);
  if (!match) return undefined;
  const [, hours, minutes, seconds, fraction, half, zone] = match;
  let hour = +hours;
  if (+minutes > 59 || +(seconds ?? 0) > 60) return undefined;
  if (half) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (/^p/i.test(half) ? 12 : 0);
  }
  const clock = hour * 3600 + +minutes * 60 + +(seconds ?? 0) + (fraction ? Number(`0.${fraction}`) : 0);
  const offset = zone === undefined ? undefined : zoneOffset(zone);
  return { clock, halves: half !== undefined, ...(offset === undefined ? {} : { zone: offset }) };
}

function zoneOffset(zone: string): number {
  const match = /^([-+])(\d{2}):?(\d{2})?$/.exec(zone);
  if (!match) return 0;
  return (match[1] === '-' ? -1 : 1) * (+match[2] * 3600 + +(match[3] ?? 0) * 60);
}

/** Days since 1970 of a date read in an order; undefined: the calendar has no such day. */
export function daysOf(date: WrittenDate, order: 'month-day' | 'day-month'): number | undefined {
  const { year, first, second } = date;
  const [month, day] = order === 'month-day' ? [first, second] : [second, first];
  const days = Date.UTC(year, month - 1, day) / 86_400_000;
  const back = new Date(days * 86_400_000);
  return back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? days : undefined;
}
