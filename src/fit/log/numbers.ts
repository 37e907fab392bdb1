/**
 * Cells of a column to numbers in SI: the header's unit or their own, decimal points or commas, and words for no
 * reading.
 */
import { parseQuantity, type OtherUnits } from '../../units/index.js';
import type { Column } from './columns.js';
import type { LogTable } from './table.js';

type CellState = 'read' | 'blank' | 'no reading' | 'unreadable';

/** One column, a place a row of the table; NaN where nothing was read. */
export interface ColumnNumbers {
  si: Float64Array;
  state: CellState[];
}

/** How a file writes its decimals, from the numbers that can be read in one way alone. */
export interface NumberStyle {
  /** 1,250 is 1.25; otherwise 1250 */
  commaIsDecimal: boolean;
  /** numbers of both styles stand in the file: what can be read in two ways is not read */
  mixed: boolean;
}

/** What loggers write where a probe gives nothing. */
const NO_READING =
  /^(?:-+|–|—|\?+|#+|\*+|[-+]?nan|[-+]?inf(?:inity)?|n\/?a|#n\/a|none|null|nil|o\.?l\.?|err(?:or)?!?|fault|open|overload|over|under|lost|missing)$/i;

const BARE = /^[-+−]?[\d.,]*\d[\d.,]*(?:e[-+]?\d{1,3})?$/i;
const DECIMAL_COMMA = /^[-+−]?(?:\d*,(?:\d{1,2}|\d{4,})|\d{4,},\d{3}|\d{1,3}(?:\.\d{3})+,\d+|0,\d+)$/;
const DECIMAL_POINT = /^[-+−]?(?:\d*\.(?:\d{1,2}|\d{4,})|\d{4,}\.\d{3}|\d{1,3}(?:,\d{3})+\.\d+|0\.\d+)$/;
const EITHER_COMMA = /^[-+−]?\d{1,3}(?:,\d{3})+$/;
const EITHER_POINT = /^[-+−]?\d{1,3}\.\d{3}$/;

/** A longer cell holds no number. */
const LONGEST_CELL = 60;
/** Distinct texts remembered a column; a logger writes the same few thousand over and over. */
const MOST_REMEMBERED = 50_000;

/** How a log writes its numbers: with a comma or a point before the decimals. */
export function styleOf(table: LogTable, columns: readonly Column[]): NumberStyle {
  const indexes = columns.filter(({ quantity }) => quantity !== undefined).map(({ index }) => index);
  let commas = false;
  let points = false;
  let either = false;
  for (const row of table.cells) {
    for (const index of indexes) {
      const cell = row[index];
      if (cell.length > LONGEST_CELL) continue;
      if (!commas && cell.includes(',') && DECIMAL_COMMA.test(cell)) commas = true;
      else if (!points && cell.includes('.') && DECIMAL_POINT.test(cell)) points = true;
      else if (!either && cell.includes(',') && EITHER_COMMA.test(cell)) either = true;
    }
    if (commas && points) break;
  }
  // Where cells are parted by something else than commas, a comma inside one is a decimal mark unless points are.
  const bySeparator = either && !points && table.delimiter !== ',';
  return { commaIsDecimal: (commas && !points) || bySeparator, mixed: commas && points };
}

/** The number as `parseQuantity` takes it; undefined where it can't be told which number it is. */
function plainNumber(cell: string, { commaIsDecimal, mixed }: NumberStyle): string | undefined {
  if (!cell.includes(',')) {
    return EITHER_POINT.test(cell) && commaIsDecimal ? undefined : cell;
  }
  if (DECIMAL_COMMA.test(cell)) return cell.replace(/\./g, '').replace(',', '.');
  if (DECIMAL_POINT.test(cell)) return cell.replace(/,/g, '');
  if (!EITHER_COMMA.test(cell) || mixed) return undefined;
  if (!commaIsDecimal) return cell.replace(/,/g, '');
  return cell.indexOf(',') === cell.lastIndexOf(',') ? cell.replace(',', '.') : undefined;
}

/** SI value of one cell; undefined: it holds none that can be read. */
function readCell(cell: string, column: Column, style: NumberStyle, otherUnits?: OtherUnits): number | undefined {
  const { quantity, unit } = column;
  if (quantity === undefined || cell.length > LONGEST_CELL) return undefined;
  if (BARE.test(cell)) {
    const number = plainNumber(cell, style);
    if (number === undefined) return undefined;
    const read = parseQuantity(quantity, unit === null ? number : `${number} ${unit}`, { otherUnits });
    return read.ok ? read.si : undefined;
  }
  const own = parseQuantity(quantity, cell, { otherUnits });
  if (own.ok && !(quantity === 'share' && unit !== null && !cell.includes('%'))) return own.si;
  // Wood is weighed in fractions too: 3 1/2 under [lb].
  if (quantity !== 'mass' || unit === null) return undefined;
  const fraction = parseQuantity(quantity, `${cell} ${unit}`);
  return fraction.ok ? fraction.si : undefined;
}

/** The numbers of a column in SI, and which cells are blank or no number. */
export function readNumbers(
  table: LogTable,
  column: Column,
  style: NumberStyle,
  otherUnits?: OtherUnits,
): ColumnNumbers {
  const si = new Float64Array(table.cells.length).fill(NaN);
  const state: CellState[] = new Array<CellState>(table.cells.length).fill('blank');
  const remembered = new Map<string, number>();
  table.cells.forEach((row, i) => {
    const cell = row[column.index];
    if (cell === '') return;
    let value = remembered.get(cell);
    if (value === undefined) {
      value = readCell(cell, column, style, otherUnits) ?? NaN;
      if (remembered.size < MOST_REMEMBERED) remembered.set(cell, value);
    }
    si[i] = value;
    state[i] = Number.isFinite(value) ? 'read' : NO_READING.test(cell) ? 'no reading' : 'unreadable';
  });
  return { si, state };
}
