/**
 * A cook's log as a fit sees it: SI, times counted from the log's first row. What was doubtful is already left out and
 * told in `notes`. Made by `readLog` from a logger's CSV, or by a script.
 */
import type { StationName } from '../../design/design.js';

/** What a column of a logger holds: a thermometer's reading, gas, or the outside steel of a station. */
export type Measured = 'thermometer' | 'gas' | 'steel';

/** One measured column, its readings in the order of time. */
export interface LogChannel {
  /** header as written, for reports */
  header: string;
  station: StationName;
  /** of a thermometer: the grate, rack or thermometer of the design that it is; else the station's dial */
  spot?: string;
  measured: Measured;
  /** [s] and [K], of one length; rising times */
  time_s: number[];
  value_K: number[];
  /** smallest step between readings that the logger knows [K]; 0: none seen */
  resolution_K: number;
}

/** What a channel is of, as `gauge` names it. */
export function spotOf({ spot, station }: Pick<LogChannel, 'spot' | 'station'>): string {
  return spot ?? station;
}

/** A quantity against time, straight between its points and held before the first and after the last. */
export interface LogCurve {
  time_s: number[];
  value: number[];
}

/** Wood laid on. */
export interface WoodAdded {
  time_s: number;
  mass_kg: number;
}

/** From when to when something was the case [s]. */
export interface Stretch {
  from_s: number;
  to_s: number;
}

/** Something about a log that its reader should know, most of it about rows that were left out. */
export interface LogNote {
  /**
   * kebab-case, stable: gap, repeated-time, unordered-time, outlier, dead-probe, restart, midnight, unreadable-cell,
   * unused-column, running-total, air-unit, colder-than-air, copied-probe ...
   */
  code: string;
  /** one sentence about the place: what, how much of it, what was done; which place and line stands beside it */
  message: string;
  /** header or 'log' */
  where: string;
  /** first line of the file that it is about; null: none */
  line: number | null;
  /** how many rows or readings it is about */
  count: number;
  /** the rows or readings that it counts are left out; absent: nothing is */
  leftOut?: 'rows' | 'readings';
}

/** A cook as its log tells it: SI, times from the first row. */
export interface CookLog {
  /** file name, for reports */
  name: string;
  /** time of the last row [s] */
  length_s: number;
  /** usual time between rows [s] */
  interval_s: number;
  /** rows of the table, without its header */
  rows: number;
  channels: LogChannel[];
  /** wood laid on, in the order of time; null: the log has no such column */
  wood: WoodAdded[] | null;
  /** heat of the fire [W]; null: no such column */
  fire: LogCurve | null;
  /** outdoor air [K] and wind [m/s]; null: no such column, the design's holds */
  air: LogCurve | null;
  wind: LogCurve | null;
  /** open share of all intakes and of all stack dampers, each value held until the next; null: the design's */
  intakes: LogCurve | null;
  damper: LogCurve | null;
  /** while the cooking door stood open */
  door: Stretch[];
  notes: LogNote[];
}
