/**
 * A logger's CSV to a cook's log in SI, or to every fault in it.
 *
 * `readLog` never throws and never guesses: what is doubtful is left out and told in the log's notes, what can't be
 * read as a log gives faults, each with file, line, header, value as written, what is allowed and the nearest right
 * name.
 */
import type { Design } from '../../design/design.js';
import { squashed } from '../../design/logHeaders.js';
import { placesOf } from '../../design/places.js';
import { loadOtherUnits, type OtherUnits } from '../../units/index.js';
import { mapOf, matchColumns, type Column } from './columns.js';
import { tellColdAir } from './coldAir.js';
import { tellCopies } from './copies.js';
import { withoutDeadProbes } from './deadProbes.js';
import { readEvents, type Source } from './events.js';
import type { CookLog, LogChannel } from './log.js';
import { readNumbers, styleOf } from './numbers.js';
import { orderRows } from './order.js';
import { withoutOutliers } from './outliers.js';
import { median } from 'simple-statistics';
import { readingsOf, resolutionOf, type Bounds, type Readings } from './readings.js';
import { Report, type LogFault } from './report.js';
import { readTable } from './table.js';
import { readTimes } from './times.js';

export { formatLogFaults, type LogFault } from './report.js';

/** What reading a log needs beside its text. */
export interface LogOptions {
  /** name that faults and the log carry */
  fileName: string;
  /** the design that the log was measured on: its stations, its gauge and its map of headers */
  design: Design;
  /** converter for legal units outside the trade's table */
  otherUnits?: OtherUnits;
}

/** A log, or the faults that keep it from being one. */
export type LogResult = { log: CookLog; faults?: undefined } | { log?: undefined; faults: LogFault[] };

/** What no thermometer of a fire can read [K]: below -60 °C or above 1300 °C. */
const PIT: Bounds = { low: 213.15, high: 1573.15, kind: 'temperature', tellBlank: true };

/** Less than this tells a fit nothing. */
const LEAST_READINGS = 20;
const LEAST_SPAN = 600;

/**
 * Reads a log from CSV text.
 *
 * @example readLog(text, { fileName: 'cook.csv', design })
 */
export function readLog(text: string, options: LogOptions): LogResult {
  const report = new Report(options.fileName);
  const log = read(text, options, report);
  return log && !report.broken ? { log } : { faults: report.faults };
}

/** `readLog`, with any legal unit: see `readDesignAnyUnit`. */
export async function readLogAnyUnit(text: string, options: LogOptions): Promise<LogResult> {
  const first = readLog(text, options);
  if (!first.faults?.some((fault) => fault.code === 'unknown-unit')) return first;
  return readLog(text, { ...options, otherUnits: await loadOtherUnits() });
}

function read(text: string, options: LogOptions, report: Report): CookLog | undefined {
  const { design, otherUnits, fileName } = options;
  const table = readTable(
    text,
    new Set([...mapOf(design).keys(), ...placesOf(design).map(({ name }) => squashed(name))]),
    report,
  );
  if (!table) return undefined;
  const columns = matchColumns(table, design, otherUnits, report);
  if (report.broken) return undefined;
  const style = styleOf(table, columns);
  const times = readTimes(table, columns, style, otherUnits, report);
  const timeline = times && orderRows(times, table, report);
  if (!timeline) return undefined;
  const source: Source = { table, columns, style, timeline, design, otherUnits, report };
  const events = readEvents(source);
  const outdoors = events.air ? median(events.air.value) : design.site.air;
  const channels = withoutDeadProbes(
    withoutOutliers(readChannels(source), events.door, outdoors, report),
    design,
    outdoors,
    report,
  );
  refuseLittle(channels, table.headerLine, report);
  tellCopies(channels, report);
  const air = columns.find(({ kind }) => kind === 'air');
  tellColdAir(channels, events.air, air, design, report);
  if (report.broken) return undefined;
  return {
    name: fileName,
    length_s: timeline.time_s[timeline.time_s.length - 1],
    interval_s: timeline.interval_s,
    rows: table.rows,
    channels: channels.map(channelOf),
    ...events,
    notes: report.notes,
  };
}

function readChannels({ table, columns, style, timeline, otherUnits, report }: Source): Readings[] {
  return columns
    .filter(isThermometer)
    .map((column) => readingsOf(column, readNumbers(table, column, style, otherUnits), timeline, PIT, table, report))
    .filter(({ time_s }) => time_s.length > 0);
}

function isThermometer({ kind }: Column): boolean {
  return kind === 'station' || kind === 'gauge';
}

function channelOf({ column, time_s, value }: Readings): LogChannel {
  const { header, station = 'middle', spot, measured = 'thermometer' } = column;
  return {
    header,
    station,
    ...(spot === undefined ? {} : { spot }),
    measured,
    time_s,
    value_K: value,
    resolution_K: resolutionOf(value),
  };
}

function refuseLittle(channels: readonly Readings[], line: number, report: Report): void {
  const readings = channels.reduce((count, { time_s }) => count + time_s.length, 0);
  const from = channels.reduce((least, { time_s }) => Math.min(least, time_s[0]), Infinity);
  const to = channels.reduce((most, { time_s }) => Math.max(most, time_s[time_s.length - 1]), 0);
  if (readings < LEAST_READINGS) {
    report.fault({
      code: 'out-of-range',
      line,
      message: `the log gives ${readings} temperature readings that can be used`,
      allowed: `at least ${LEAST_READINGS}`,
    });
  } else if (to - from < LEAST_SPAN) {
    report.fault({
      code: 'out-of-range',
      line,
      message: `the temperature readings span ${Math.round(to - from)} s`,
      allowed: `at least ${LEAST_SPAN / 60} min; is the unit of time right?`,
    });
  }
}
