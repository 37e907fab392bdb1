/**
 * What the columns of a cook's log may be: their names, the units that fit and what each of them is for.
 *
 * One table for the reader of logs, for the map of a design file (`log.columns`) and for help texts. Case, spaces and
 * marks between words don't count; a unit stands behind the name in square or round brackets.
 */
import type { Kind } from '../units/index.js';
import type { StationName } from './design.js';

/** What a column of a log may hold. */
export type LogColumnKind =
  'time' | 'date' | 'station' | 'gauge' | 'wood' | 'fire' | 'air' | 'wind' | 'intakes' | 'damper' | 'door';

/** One kind of column: its names, units and what it is for. */
export interface LogColumnRow {
  kind: LogColumnKind;
  /** names that it goes by, the first one as we write it; those of stations are in `STATION_WORDS` */
  names: readonly string[];
  /** kinds that its unit may be of; none: it has no unit */
  units: readonly Kind[];
  /** a unit must be given, in the header or in each cell */
  unitDue: boolean;
  example: string;
  /** one sentence, for help texts */
  does: string;
}

const row = (
  kind: LogColumnKind,
  names: string[],
  units: Kind[],
  unitDue: boolean,
  example: string,
  does: string,
): LogColumnRow => ({ kind, names, units, unitDue, example, does });

/** Every kind of column that a log may have. */
export const LOG_COLUMNS: readonly LogColumnRow[] = [
  row(
    'time',
    ['time', 'elapsed', 'elapsed time', 'clock', 'clock time', 'local time', 'timestamp', 'datetime', 'date and time'],
    ['time'],
    false,
    'time [s]',
    'Time of the row: a number with its unit, clock times (10:15, 10:15:30, 1:05 PM) or ISO 8601. A log needs one.',
  ),
  row('date', ['date'], [], false, 'date', 'Date that goes with clock times in a column of their own.'),
  row(
    'station',
    [],
    ['temperature'],
    true,
    'middle [°F]',
    'Thermometer at a station; with gas or steel before or behind the name the gas there, or the outside of the steel.',
  ),
  row(
    'gauge',
    ['gauge', 'thermometer', 'door thermometer'],
    ['temperature'],
    true,
    'gauge [°F]',
    'The cook’s thermometer: the station that the design names as its gauge.',
  ),
  row(
    'wood',
    ['wood', 'wood added', 'added wood', 'wood laid on', 'fuel', 'fuel added'],
    ['mass'],
    true,
    'wood [lb]',
    'Wood laid on at that time; blank or 0: none.',
  ),
  row(
    'fire',
    ['fire', 'fire heat', 'heat of fire', 'burn rate'],
    ['power', 'massFlow'],
    true,
    'fire [BTU/h]',
    'Heat of the fire, or its wood per hour.',
  ),
  row(
    'air',
    ['air', 'outdoor', 'outdoors', 'outdoor air', 'outside', 'outside air', 'ambient', 'ambient air'],
    ['temperature'],
    true,
    'air [°F]',
    'Outdoor air; without it the design’s.',
  ),
  row('wind', ['wind', 'wind speed'], ['speed'], true, 'wind [mph]', 'Wind at the pit; without it the design’s.'),
  row(
    'intakes',
    ['intakes', 'intake', 'vent', 'vents', 'vent opening', 'intake vent', 'intake vents', 'air intake'],
    ['share'],
    false,
    'intakes [%]',
    'Open share of all intakes, held until the next one given; without it the design’s.',
  ),
  row(
    'damper',
    ['damper', 'dampers', 'stack damper', 'damper opening'],
    ['share'],
    false,
    'damper [%]',
    'Open share of all stack dampers, held until the next one given; without it the design’s.',
  ),
  row(
    'door',
    ['door', 'cooking door', 'door open', 'door state'],
    [],
    false,
    'door',
    'Whether the cooking door stands open (open, shut, 1, 0, yes, no), held until the next one given.',
  ),
];

/** Word of a map that leaves a column out. */
export const IGNORE = 'ignore';

/** What a builder may call a station, beside its name in a design file. */
export const STATION_WORDS: Readonly<Record<StationName, readonly string[]>> = {
  firebox: ['firebox'],
  plenumFireEnd: ['under plate, fire end', 'plenum fire end', 'fire end under plate'],
  plenumMiddle: ['under plate, middle', 'plenum middle', 'middle under plate'],
  plenumStackEnd: ['under plate, far end', 'under plate, stack end', 'plenum stack end', 'stack end under plate'],
  fireEnd: ['fire end', 'chamber fire end', 'firebox end'],
  middle: ['middle', 'chamber middle', 'centre', 'center'],
  stackEnd: ['stack end', 'chamber stack end'],
  uprightLower: ['upright lower', 'lower upright', 'lower'],
  uprightUpper: ['upright upper', 'upper upright', 'upper'],
};

export function columnRow(kind: LogColumnKind): LogColumnRow {
  const found = LOG_COLUMNS.find((each) => each.kind === kind);
  if (!found) throw new RangeError(`no column of a log is of kind '${kind}'`);
  return found;
}
