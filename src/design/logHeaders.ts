/** Headers of a cook's log, and what a design file's map says of them, to what the columns hold. */
import {
  editDistance,
  KIND_NAMES,
  parseQuantity,
  UNITS,
  nearestName,
  unitsThatFit,
  type Kind,
  type OtherUnits,
} from '../units/index.js';
import type { StationName } from './design.js';
import { middleOf, type Place } from './places.js';
import { columnRow, LOG_COLUMNS, STATION_WORDS, type LogColumnKind } from './logColumns.js';
import { STATIONS } from './stations.js';

/** A column by what it holds. */
export interface LogColumn {
  kind: LogColumnKind;
  /** of a thermometer, gas or steel at a station */
  station?: StationName;
  /** of a thermometer: the grate, rack or thermometer of the design that it is */
  spot?: string;
  measured?: 'thermometer' | 'gas' | 'steel';
  /** as written between the brackets; null: none */
  unit: string | null;
}

/** What in a header is wrong, in the words of a fault. */
interface LogColumnProblem {
  code: 'unknown-name' | 'unknown-unit';
  message: string;
  allowed: string;
  nearest?: string;
}

/** Letters and digits alone, in small letters: `Stack End`, `stack_end` and `stackEnd` are one. */
export function squashed(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
}

/** Words that say nothing more than the unit does. */
const FILLER = /^(?:temperature|temp|thermometer|probe)|(?:temperature|temp|thermometer|probe)$/;
const MEASURED = /^(gas|steel)|(gas|steel)$/;

type Meaning = Omit<LogColumn, 'unit'>;

const BY_NAME: ReadonlyMap<string, Meaning> = new Map([
  ...STATIONS.flatMap((station) =>
    [station, ...STATION_WORDS[station]].map((name): [string, Meaning] => [
      squashed(name),
      { kind: 'station', station, measured: 'thermometer' },
    ]),
  ),
  ...LOG_COLUMNS.flatMap(({ kind, names }) => names.map((name): [string, Meaning] => [squashed(name), { kind }])),
]);

/** Longer ones are no names of columns, and slow to search. */
const LONGEST_HEADER = 200;

/** A header's name and the unit in its brackets. */
export function splitHeader(header: string): { name: string; unit: string | null } {
  if (header.length > LONGEST_HEADER) return { name: header, unit: null };
  const match = /^(.*?)\s*(?:\[([^[\]]*)\]|\(([^()]*)\))\s*$/s.exec(header.trim());
  if (!match) return { name: header.trim(), unit: null };
  return { name: match[1], unit: (match[2] ?? match[3]).trim() || null };
}

function meaningOf(name: string): Meaning | undefined {
  let word = squashed(name);
  for (;;) {
    const found = BY_NAME.get(word);
    if (found) return found;
    const shorter = word.replace(FILLER, '');
    if (shorter === word) break;
    word = shorter;
  }
  const match = MEASURED.exec(word);
  if (!match) return undefined;
  const rest = meaningOf(word.slice(0, match.index) + word.slice(match.index + match[0].length));
  // Outdoor air is gas too, but only a station has a choice of what is measured there.
  return rest?.measured === 'thermometer' ? { ...rest, measured: match[0] as 'gas' | 'steel' } : undefined;
}

/** What a header says it is; undefined: nothing of ours. Units are checked by `unitProblem`. */
export function columnOf(header: string): LogColumn | undefined {
  const { name, unit } = splitHeader(header);
  const found = meaningOf(name);
  return found && { ...found, unit };
}

/** A header that is the name of a grate, a rack or a thermometer of the design; of a grate its middle. */
export function columnAt(header: string, places: readonly Place[]): LogColumn | undefined {
  const { name, unit } = splitHeader(header);
  const found = places.find((place) => squashed(place.name) === squashed(name));
  const place = found && middleOf(places, found.name)!;
  return place && { kind: 'station', station: place.station, spot: place.name, measured: 'thermometer', unit };
}

/** Every name as we write it, with its meaning. */
const WRITTEN: readonly { written: string; word: string; meaning: Meaning }[] = [
  ...LOG_COLUMNS.flatMap(({ names }) => names),
  ...STATIONS.flatMap((station) => [...STATION_WORDS[station], station]),
].flatMap((written) => {
  const meaning = BY_NAME.get(squashed(written));
  return meaning ? [{ written, word: squashed(written), meaning }] : [];
});

/**
 * Nearest right header to one that is nothing of ours, its unit kept; undefined where none is near.
 *
 * Narrower than for a field of a design file: a log holds columns of its owner's that are none of ours, and `Food` is
 * no slip of `door`. One letter in four may be wrong, and a unit must fit.
 */
export function nearestColumn(header: string): string | undefined {
  if (header.length > LONGEST_HEADER) return undefined;
  const unbracketed = unitWithoutBrackets(header);
  if (unbracketed) return unbracketed;
  const { name, unit } = splitHeader(header);
  const word = squashed(name);
  const measured = MEASURED.exec(word);
  const stem = measured ? word.replace(measured[0], '') : word;
  let best: { written: string; distance: number } | undefined;
  for (const { written, word: right, meaning } of WRITTEN) {
    if (unit !== null && !unitFits(meaning.kind, unit)) continue;
    if (measured && meaning.kind !== 'station') continue;
    const allowed = Math.max(1, Math.floor(right.length / 4));
    if (stem.length < 3 || Math.abs(stem.length - right.length) > allowed) continue;
    const distance = editDistance(stem, right);
    if (distance <= allowed && (!best || distance < best.distance)) best = { written, distance };
  }
  if (!best) return undefined;
  return `${best.written}${measured ? ` ${measured[0]}` : ''}${unit === null ? '' : ` [${unit}]`}`;
}

/** `middle °F`, `middle_F`: the unit is there, its brackets are not. */
function unitWithoutBrackets(header: string): string | undefined {
  const match = /^(.+?)[\s_.,:;/-]+([^\s_]+)$/u.exec(header.trim());
  const meaning = match && meaningOf(match[1]);
  if (!meaning || !unitFits(meaning.kind, match[2])) return undefined;
  return `${match[1].trim()} [${match[2]}]`;
}

/** Does a written unit fit a column? `h:mm` and the like fit a time. */
function unitFits(kind: LogColumnKind, unit: string, otherUnits?: OtherUnits): boolean {
  if (kind === 'time' && clockPattern(unit)) return true;
  return unitKind(kind, unit, otherUnits) !== undefined;
}

/** Kind of quantity that a column with this unit holds; undefined: the unit does not fit. */
export function unitKind(kind: LogColumnKind, unit: string, otherUnits?: OtherUnits): Kind | undefined {
  return columnRow(kind).units.find((each) => parseQuantity(each, `1 ${unit}`, { otherUnits }).ok);
}

/** Is a unit a pattern of a clock: `h:mm:ss`, `hh:mm`, `mm:ss`? */
export function clockPattern(unit: string): boolean {
  return /^[hms]{1,2}(?::[ms]{1,2}){1,2}(?:\.s+)?$/i.test(unit);
}

/** Units that fit a column, for messages. */
export function unitsOf(kind: LogColumnKind): string {
  const { units } = columnRow(kind);
  return units
    .map((each) => `${KIND_NAMES[each]} in ${unitsThatFit(each).join(', ').replace(', or', ' or')}`)
    .join('; ');
}

/** What is wrong with the unit of a column; undefined: nothing. A unit that is missing is the caller's matter. */
export function unitProblem(column: LogColumn, otherUnits?: OtherUnits): LogColumnProblem | undefined {
  const { kind, unit } = column;
  const { units } = columnRow(kind);
  if (unit === null || units.length === 0 || unitFits(kind, unit, otherUnits)) return undefined;
  const rows = units.flatMap((each) => UNITS[each]);
  const near = nearestName(
    unit,
    rows.flatMap(({ name, also }) => [name, ...also]),
  );
  return {
    code: 'unknown-unit',
    message: `has a unit that does not fit here ('${unit}')`,
    allowed: unitsOf(kind),
    nearest: near && rows.find(({ name, also }) => name === near || also.includes(near))?.name,
  };
}

/** Names that a message offers: one of each column, and the stations that a pit has. */
export function namesFor(stations: readonly StationName[]): string {
  const columns = LOG_COLUMNS.flatMap(({ kind, names }) => (kind === 'station' ? [] : names.slice(0, 1)));
  return [stationNames(stations), ...columns].join(', ');
}

/** The same of stations alone. */
export function stationNames(stations: readonly StationName[]): string {
  return stations.map((station) => STATION_WORDS[station][0]).join(', ');
}

/** What is wrong with a text that should say what a column holds; undefined: nothing. */
export function columnProblem(
  text: string,
  stations: readonly StationName[],
  otherUnits?: OtherUnits,
  places: readonly Place[] = [],
): LogColumnProblem | undefined {
  const column = columnOf(text) ?? columnAt(text, places);
  if (!column) {
    const nearest = nearestColumn(text);
    return {
      code: 'unknown-name',
      message: 'is no column of a log',
      allowed: `${namesFor(stations)}, with gas or steel behind a station for those`,
      ...(nearest === undefined ? {} : { nearest }),
    };
  }
  return stationProblem(column, stations) ?? unitProblem(column, otherUnits);
}

/** A station that this pit has not; undefined: it has it. */
export function stationProblem(column: LogColumn, stations: readonly StationName[]): LogColumnProblem | undefined {
  if (!column.station || stations.includes(column.station)) return undefined;
  return {
    code: 'unknown-name',
    message: `is a station that this pit has not (${STATION_WORDS[column.station][0]})`,
    allowed: stationNames(stations),
  };
}
