/** Readings of one column along the log's time; every cell that gives none is told. */
import { format, type Kind } from '../../units/index.js';
import type { Column } from './columns.js';
import type { ColumnNumbers } from './numbers.js';
import type { Timeline } from './order.js';
import { counted, type Report } from './report.js';
import type { LogTable } from './table.js';

/** What a column of temperatures holds, row by row, cells that can't be read left out. */
export interface Readings {
  column: Column;
  time_s: number[];
  /** SI */
  value: number[];
  /** line of the file that each came from */
  line: number[];
}

/** What a reading may be [SI], and the kind it is told in. */
export interface Bounds {
  low: number;
  high: number;
  kind: Kind;
  /** are empty cells worth a word? */
  tellBlank: boolean;
}

interface Told {
  count: number;
  line: number | null;
  cell: string;
}

const nothing = (): Told => ({ count: 0, line: null, cell: '' });

/** Rows of one time give the mean of their readings. */
export function readingsOf(
  column: Column,
  numbers: ColumnNumbers,
  timeline: Timeline,
  bounds: Bounds,
  table: LogTable,
  report: Report,
): Readings {
  const readings: Readings = { column, time_s: [], value: [], line: [] };
  const told = { blank: nothing(), 'no reading': nothing(), unreadable: nothing(), outside: nothing() };
  timeline.rows.forEach((rows, i) => {
    let sum = 0;
    let count = 0;
    for (const row of rows) {
      const value = numbers.si[row];
      const state = numbers.state[row];
      if (state === 'read' && value >= bounds.low && value <= bounds.high) {
        sum += value;
        count++;
        continue;
      }
      const which = told[state === 'read' ? 'outside' : state];
      if (which.count++ === 0) {
        which.line = table.lines[row];
        which.cell = table.cells[row][column.index].slice(0, 30);
      }
    }
    if (count === 0) return;
    readings.time_s.push(timeline.time_s[i]);
    readings.value.push(count === 1 ? sum : sum / count);
    readings.line.push(table.lines[rows[0]]);
  });
  const range = `${format(bounds.kind, bounds.low)} to ${format(bounds.kind, bounds.high)}`;
  const tell = (code: string, { count, line, cell }: Told, what: string): void =>
    report.note({
      code,
      message: `${what}${cell === '' ? '' : ` (first: '${cell}')`}.`,
      where: column.header,
      line,
      count,
      leftOut: 'readings',
    });
  if (bounds.tellBlank) tell('blank-cell', told.blank, counted(told.blank.count, 'empty cell'));
  const { count: none } = told['no reading'];
  tell('no-reading', told['no reading'], `${counted(none, 'cell')} in which the logger says that it has no reading`);
  tell('unreadable-cell', told.unreadable, `${counted(told.unreadable.count, 'cell')} that can't be read left out`);
  tell(
    'out-of-range',
    told.outside,
    `${counted(told.outside.count, 'reading')} outside ${range} left out, which nothing here can have`,
  );
  return readings;
}

/** Takes readings out, by their places. */
export function without(readings: Readings, out: ReadonlySet<number>): Readings {
  if (out.size === 0) return readings;
  const keep = <T>(list: readonly T[]): T[] => list.filter((_, i) => !out.has(i));
  return {
    column: readings.column,
    time_s: keep(readings.time_s),
    value: keep(readings.value),
    line: keep(readings.line),
  };
}

/** Smallest step between the distinct readings; 0: they are all the same. */
export function resolutionOf(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  let least = Infinity;
  for (let i = 1; i < sorted.length; i++) {
    const step = sorted[i] - sorted[i - 1];
    // Less than this is the rounding of the conversion to K.
    if (step > 1e-6 && step < least) least = step;
  }
  return Number.isFinite(least) ? least : 0;
}
