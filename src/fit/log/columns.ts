/** Which column of a table holds what: by its header, or by the design's map of a logger's headers. */
import type { Design, StationName } from '../../design/design.js';
import { columnRow, IGNORE, LOG_COLUMNS, type LogColumnKind } from '../../design/logColumns.js';
import {
  clockPattern,
  columnAt,
  columnOf,
  namesFor,
  nearestColumn,
  splitHeader,
  squashed,
  stationNames,
  stationProblem,
  unitKind,
  unitProblem,
  unitsOf,
  type LogColumn,
} from '../../design/logHeaders.js';
import { shortened } from '../../design/faults.js';
import { gaugePlace, placesOf } from '../../design/places.js';
import { allStations } from '../../design/sense.js';
import { nearestName, parseQuantity, unitsThatFit, type Kind, type OtherUnits } from '../../units/index.js';
import type { Measured } from './log.js';
import { counted, type Report } from './report.js';
import { readStamp } from './stamps.js';
import type { LogTable } from './table.js';

/** A column that is used, and what it holds. */
export interface Column {
  index: number;
  /** as written, shortened */
  header: string;
  /** 1-based place in the header's line */
  place: number;
  kind: LogColumnKind;
  station?: StationName;
  spot?: string;
  measured?: Measured;
  /** null: cells carry their own, or are plain */
  unit: string | null;
  /** of its numbers; undefined where it holds none */
  quantity?: Kind;
}

/** Cells looked at to tell whether they carry units. */
const SAMPLE = 200;

/** Words of the design's map, by the header they stand for with case and spaces taken out. */
export function mapOf(design: Design): ReadonlyMap<string, string> {
  return new Map(Object.entries(design.log?.columns ?? {}).map(([header, meaning]) => [squashed(header), meaning]));
}

/** What each column of a log holds, by its header or the design's map of headers; faults go to the report. */
export function matchColumns(
  table: LogTable,
  design: Design,
  otherUnits: OtherUnits | undefined,
  report: Report,
): Column[] {
  const stations = allStations(design);
  const places = placesOf(design);
  const map = mapOf(design);
  const used = new Set<string>();
  const columns = table.header.flatMap((cell, index): Column[] => {
    const header = cell.text;
    const at = { line: table.headerLine, column: cell.column, header, value: null };
    if (header === '') {
      tellNameless(table, index, report);
      return [];
    }
    const key = [squashed(header), squashed(splitHeader(header).name)].find((each) => map.has(each));
    const meaning = key === undefined ? undefined : map.get(key);
    if (key !== undefined) used.add(key);
    if (meaning !== undefined && squashed(meaning) === IGNORE) return [];
    const column = columnOf(meaning ?? header) ?? columnAt(meaning ?? header, places);
    if (!column) {
      tellUnknown(table, index, stations, meaning, report);
      return [];
    }
    if (meaning !== undefined) column.unit ??= splitHeader(header).unit;
    if (column.kind === 'gauge') {
      const { station, name } = gaugePlace(design);
      Object.assign(column, { station, measured: 'thermometer', ...(name === station ? {} : { spot: name }) });
    }
    // `time (UTC)`: what stands behind the name of a column of clock times says something about them, but is no unit.
    if (column.kind === 'time' && unitProblem(column, otherUnits) && holdsStamps(table, index)) column.unit = null;
    const problem = stationProblem(column, stations) ?? unitProblem(column, otherUnits);
    if (problem) {
      const { name } = splitHeader(meaning ?? header);
      const nearest = problem.code === 'unknown-unit' && problem.nearest ? `${name} [${problem.nearest}]` : undefined;
      report.fault({ ...at, code: problem.code, message: problem.message, allowed: problem.allowed, nearest });
      return [];
    }
    return withUnit(table, { ...column, index, header: shortened(header), place: cell.column }, otherUnits, report);
  });
  tellUnmatched(table, design, used, report);
  refuseTwins(table, columns, report);
  refuseWithout(table, columns, stations, report);
  return columns;
}

type Unchecked = LogColumn & { index: number; header: string; place: number };

/** The column with the kind of its quantity, if a unit is given where one is due. */
function withUnit(table: LogTable, column: Unchecked, otherUnits: OtherUnits | undefined, report: Report): Column[] {
  const { units, unitDue } = columnRow(column.kind);
  if (units.length === 0) return [{ ...column, unit: null }];
  if (column.unit !== null) {
    if (column.kind === 'time' && clockPattern(column.unit)) return [column];
    return [{ ...column, quantity: unitKind(column.kind, column.unit, otherUnits) }];
  }
  if (!unitDue) return [{ ...column, quantity: units[0] }];
  const cells = sampleOf(table, column.index);
  const own = units.find(
    (kind) => cells.filter((cell) => parseQuantity(kind, cell, { otherUnits }).ok).length > cells.length / 2,
  );
  if (own || cells.length === 0) return [{ ...column, quantity: own ?? units[0] }];
  report.fault({
    code: 'no-unit',
    line: table.headerLine,
    column: column.place,
    header: column.header,
    message: 'has no unit',
    allowed: `${unitsOf(column.kind)}, in brackets behind the name`,
    nearest: `${column.header} [${unitsThatFit(units[0])[0]}]`,
  });
  return [];
}

function holdsStamps(table: LogTable, index: number): boolean {
  const cells = sampleOf(table, index);
  return cells.filter((cell) => readStamp(cell)).length * 2 > cells.length;
}

function sampleOf(table: LogTable, index: number): string[] {
  const cells: string[] = [];
  for (const row of table.cells) {
    if (row[index] !== '') cells.push(row[index]);
    if (cells.length >= SAMPLE) break;
  }
  return cells;
}

function filledCells(table: LogTable, index: number): number {
  return table.cells.reduce((count, row) => count + (row[index] === '' ? 0 : 1), 0);
}

function tellNameless(table: LogTable, index: number, report: Report): void {
  const count = filledCells(table, index);
  report.note({
    code: 'unused-column',
    message: `Column ${index + 1} has no header: its ${counted(count, 'cell')} are not used.`,
    where: 'log',
    line: table.headerLine,
    count,
  });
}

/** A header near one of ours is a slip and stops; any other is its owner's, and is named as unused. */
function tellUnknown(
  table: LogTable,
  index: number,
  stations: readonly StationName[],
  meaning: string | undefined,
  report: Report,
): void {
  const { text: header, column } = table.header[index];
  const nearest = nearestColumn(meaning ?? header);
  if (nearest !== undefined || meaning !== undefined) {
    report.fault({
      code: 'unknown-name',
      line: table.headerLine,
      column,
      header,
      message: meaning === undefined ? 'is no column of a log' : `stands for '${meaning}', which is no column of a log`,
      allowed: `${namesFor(stations)}; the design's log.columns says what other headers hold, or ${IGNORE}`,
      nearest,
    });
    return;
  }
  report.note({
    code: 'unused-column',
    message:
      `'${shortened(header)}' is none of ${namesFor(stations)}, and is not used; ` +
      `the design's log.columns can say what it holds, or ${IGNORE}.`,
    where: shortened(header),
    line: table.headerLine,
    count: filledCells(table, index) || 1,
  });
}

/** Headers of the design's map that this log has not. */
function tellUnmatched(table: LogTable, design: Design, used: ReadonlySet<string>, report: Report): void {
  const headers = table.header.map(({ text }) => text).filter((text) => text !== '');
  const missing = Object.keys(design.log?.columns ?? {}).filter((header) => !used.has(squashed(header)));
  for (const header of missing) {
    const near = nearestName(header, headers);
    report.note({
      code: 'unmatched-map',
      message: `The design's log.columns names '${shortened(header)}', which is no header of this log${near ? `; did you mean '${near}'?` : '.'}`,
      where: shortened(header),
      line: table.headerLine,
      count: 1,
    });
  }
}

/** Columns that can't both be right: one header twice, or two of what a log has one of. */
function refuseTwins(table: LogTable, columns: readonly Column[], report: Report): void {
  const seen = new Map<string, Column>();
  for (const column of columns) {
    const { kind, header } = column;
    const several = kind === 'station' || kind === 'gauge';
    const key = several ? squashed(header) : kind;
    const first = seen.get(key);
    if (first) {
      report.fault({
        code: 'duplicate-key',
        line: table.headerLine,
        column: column.place,
        header,
        message: several
          ? `stands twice in the header (columns ${first.index + 1} and ${column.index + 1})`
          : `holds ${nameOf(kind)}, and so does '${first.header}'`,
        allowed: several
          ? 'each header once'
          : `one such column; the design's log.columns can say ${IGNORE} for the other`,
      });
    } else seen.set(key, column);
  }
}

function nameOf(kind: LogColumnKind): string {
  return `the ${kind === 'air' ? 'outdoor air' : kind}`;
}

function refuseWithout(
  table: LogTable,
  columns: readonly Column[],
  stations: readonly StationName[],
  report: Report,
): void {
  // A fault of a header may be about the very column that is missing.
  if (report.broken) return;
  const has = (...kinds: LogColumnKind[]): boolean => columns.some(({ kind }) => kinds.includes(kind));
  const headers = table.header.map(({ text }) => text).filter((text) => text !== '');
  const value = headers.join(table.delimiter === '\t' ? ' ' : table.delimiter);
  const example = (kind: LogColumnKind): string => LOG_COLUMNS.find((each) => each.kind === kind)?.example ?? kind;
  if (!has('time', 'date')) {
    report.fault({
      code: 'missing',
      line: table.headerLine,
      value,
      message: 'names no time',
      allowed: `${example('time')}, time [min], time [h], or time with clock times or ISO 8601`,
    });
  }
  if (!has('station', 'gauge')) {
    report.fault({
      code: 'missing',
      line: table.headerLine,
      value,
      message: 'names no temperature of the pit',
      allowed: `${stationNames(stations)}, or gauge, each with its unit: ${example('station')}`,
    });
  }
}
