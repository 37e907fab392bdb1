/** A logger's text to a header and rows, each row with its line; what is no row of the table is told. */
import { parse } from 'csv-parse/sync';
import { columnOf, nearestColumn, splitHeader, squashed } from '../../design/logHeaders.js';
import { counted, type Report } from './report.js';

interface HeaderCell {
  text: string;
  /** 1-based place in its line */
  column: number;
}

/** A logger's file cut into cells. */
export interface LogTable {
  delimiter: Delimiter;
  headerLine: number;
  header: HeaderCell[];
  /** rows with as many cells as the header, in the order of the file */
  lines: number[];
  cells: string[][];
  /** rows of the table, with those left out */
  rows: number;
}

const DELIMITERS = [',', ';', '\t'] as const;
type Delimiter = (typeof DELIMITERS)[number];

/** Lines of a logger's own before its header. */
const MOST_PREAMBLE = 40;
const MOST_COLUMNS = 200;
/** Share of control and replacement characters above which a file is no text. */
const MOST_ODD = 0.01;
/** Share of rows that may be broken before a table counts as misread. */
const MOST_BROKEN = 1 / 3;
/** Marks a last cell that the end of the file has cut; no number or clock ends like this. */
const CUT = '…';

/** Undefined: the faults are in the report. */
export function readTable(text: string, mapped: ReadonlySet<string>, report: Report): LogTable | undefined {
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.trim() === '') {
    report.fault({ code: 'unreadable', message: 'the file is empty', allowed: 'a table of times and temperatures' });
    return undefined;
  }
  const odd = clean.match(/[\u0000-\u0008\u000e-\u001f\uFFFD]/g)?.length ?? 0;
  if (odd > MOST_ODD * clean.length) {
    report.fault({ code: 'unreadable', message: 'the file is not text', allowed: 'a CSV table in UTF-8' });
    return undefined;
  }
  const lines = clean.split(/\r\n|\n|\r/);
  const found = findHeader(lines, mapped);
  if (!found) {
    report.fault({
      code: 'unreadable',
      message: `no header was found in the first ${MOST_PREAMBLE} lines`,
      allowed: 'a line that names the columns, as: time [s],middle [°F]',
    });
    return undefined;
  }
  if (found.cells.length > MOST_COLUMNS) {
    report.fault({
      code: 'out-of-range',
      line: found.index + 1,
      message: `the header has ${found.cells.length} columns`,
      allowed: `up to ${MOST_COLUMNS}`,
    });
    return undefined;
  }
  if (found.before > 0) {
    report.note({
      code: 'preamble',
      message: `${counted(found.before, 'line')} before the header ${found.before === 1 ? 'is' : 'are'} no part of the table.`,
      where: 'log',
      line: 1,
      count: found.before,
    });
  }
  return readRows(lines, found, report);
}

interface Found {
  index: number;
  delimiter: Delimiter;
  cells: string[];
  /** lines with something on them before it, comments aside */
  before: number;
}

/**
 * The line among the first forty that names most columns; where none names any, the first that heads a table of
 * numbers.
 */
function findHeader(lines: readonly string[], mapped: ReadonlySet<string>): Found | undefined {
  let best: (Found & { score: number }) | undefined;
  let table: Found | undefined;
  let before = 0;
  let looked = 0;
  for (let index = 0; index < lines.length && looked < MOST_PREAMBLE; index++) {
    const line = lines[index];
    if (line.trim() === '') continue;
    looked++;
    const comment = isComment(line);
    for (const delimiter of DELIMITERS) {
      const cells = cellsOf(comment ? line.replace(/^\s*#+/, '') : line, delimiter);
      if (!cells || cells.length > 10 * MOST_COLUMNS) continue;
      const score = cells.length === 1 ? scoreOf(cells, mapped) / 2 : scoreOf(cells, mapped);
      if (score > 0 && (!best || score > best.score)) best = { index, delimiter, cells, before, score };
      if (!table && !comment && cells.length > 1 && headsNumbers(lines, index, delimiter, cells.length)) {
        table = { index, delimiter, cells, before };
      }
    }
    if (!comment) before++;
  }
  // One name alone may be a line of the preamble (`Date: ...`); a line that numbers follow is then the likelier header.
  return best && (best.score > 1 || !table) ? best : (table ?? best);
}

/** Names that are ours count one each, slips of them half. */
function scoreOf(cells: readonly string[], mapped: ReadonlySet<string>): number {
  let score = 0;
  for (const cell of cells.slice(0, MOST_COLUMNS)) {
    const text = cell.slice(0, 200);
    if ([text, splitHeader(text).name].some((each) => mapped.has(squashed(each))) || columnOf(text)) score += 1;
    else if (/^[^\d]*[\p{L}]/u.test(text) && nearestColumn(text) !== undefined) score += 0.5;
  }
  return score;
}

function headsNumbers(lines: readonly string[], index: number, delimiter: Delimiter, columns: number): boolean {
  if (cellsOf(lines[index], delimiter)?.some((cell) => /^[-+]?\d+([.,:]\d+)*$/.test(cell))) return false;
  for (const line of lines.slice(index + 1, index + 6)) {
    if (line.trim() === '' || isComment(line)) continue;
    const cells = cellsOf(line, delimiter);
    return cells?.length === columns && cells.some((cell) => /^[-+]?\d/.test(cell));
  }
  return false;
}

function isComment(line: string): boolean {
  return /^\s*#/.test(line);
}

/** Nothing but what parts cells: the tail that a spreadsheet leaves. */
function isEmpty(line: string): boolean {
  return !/[^\s,;"]/.test(line);
}

/** Cells of lines without an open quote; records come in the order of the lines. */
function parseLines(text: string, delimiter: Delimiter): string[][] {
  return parse(text, {
    delimiter,
    record_delimiter: '\n',
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: false,
  }) as unknown as string[][];
}

/** Cells of one line; undefined where a quote is not closed. */
function cellsOf(line: string, delimiter: Delimiter): string[] | undefined {
  try {
    const records = parseLines(line, delimiter);
    return records.length === 1 ? records[0].map(trimmed) : undefined;
  } catch {
    return undefined;
  }
}

/** Spaces round a cell, and quotes that such spaces kept from being read as quotes. */
function trimmed(cell: string): string {
  const bare = cell.trim();
  return bare.length > 1 && bare.startsWith('"') && bare.endsWith('"') ? bare.slice(1, -1).trim() : bare;
}

function readRows(lines: readonly string[], found: Found, report: Report): LogTable {
  const { delimiter } = found;
  // Delimiters at the end of every line make columns without name or content.
  const width = found.cells.length;
  const headerText = lines[found.index].trim();
  const taken: number[] = [];
  const texts: string[] = [];
  const apart = new Map<number, string[] | undefined>();
  let repeatedHeaders = 0;
  let firstRepeated: number | null = null;
  for (let index = found.index + 1; index < lines.length; index++) {
    const line = lines[index];
    if (line === '' || isComment(line) || isEmpty(line)) continue;
    if (line.trim() === headerText) {
      repeatedHeaders++;
      firstRepeated ??= index + 1;
      continue;
    }
    // A quote left open would swallow the lines after it: such a line is read by itself.
    if (line.includes('"')) apart.set(taken.length, cellsOf(line, delimiter));
    taken.push(index + 1);
    texts.push(line.includes('"') ? '' : line);
  }
  const records = texts.length === 0 ? [] : parseLines(texts.join('\n') + '\n', delimiter);
  const table: LogTable = {
    delimiter,
    headerLine: found.index + 1,
    header: headerCells(lines[found.index], found.cells),
    lines: [],
    cells: [],
    rows: taken.length + repeatedHeaders,
  };
  const broken = { short: 0, long: 0, quote: 0, first: 0 };
  taken.forEach((line, i) => {
    const cells = apart.has(i) ? apart.get(i) : records[i].map(trimmed);
    const fault = !cells ? 'quote' : rowFault(cells, width);
    if (!cells || fault) {
      broken[fault ?? 'quote']++;
      broken.first ||= line;
      return;
    }
    table.lines.push(line);
    table.cells.push(cells.length > width ? cells.slice(0, width) : cells);
  });
  report.note({
    code: 'repeated-header',
    message: `The header stands ${counted(repeatedHeaders, 'more time')} among the rows (first in line ${firstRepeated}).`,
    where: 'log',
    line: firstRepeated,
    count: repeatedHeaders,
    leftOut: 'rows',
  });
  tellBroken(broken, taken.length, width, report);
  if (lines.at(-1) !== '') markCut(table, lines.length, report);
  return table;
}

function rowFault(cells: readonly string[], width: number): 'short' | 'long' | undefined {
  if (cells.length < width) return 'short';
  return cells.slice(width).some((cell) => cell !== '') ? 'long' : undefined;
}

function tellBroken(
  broken: { short: number; long: number; quote: number; first: number },
  rows: number,
  width: number,
  report: Report,
): void {
  const count = broken.short + broken.long + broken.quote;
  const kinds = [
    broken.short > 0 && `${broken.short} with too few cells`,
    broken.long > 0 && `${broken.long} with too many`,
    broken.quote > 0 && `${broken.quote} with a quote that is not closed`,
  ].filter(Boolean);
  if (count > MOST_BROKEN * rows) {
    report.fault({
      code: 'syntax',
      line: broken.first,
      message: `${count} of ${counted(rows, 'row')} don't fit the header's ${counted(width, 'column')}: ${kinds.join(', ')}`,
      allowed: 'one cell a column; a decimal comma needs semicolons between cells, or quotes',
    });
  }
  report.note({
    code: 'broken-row',
    message: `${counted(count, 'row')} of other than ${counted(width, 'cell')} left out: ${kinds.join(', ')} (first in line ${broken.first}).`,
    where: 'log',
    line: broken.first,
    count,
    leftOut: 'rows',
  });
}

/** Where each header cell begins in its line. */
function headerCells(line: string, cells: readonly string[]): HeaderCell[] {
  let from = 0;
  return cells.map((text) => {
    const at = text === '' ? -1 : line.indexOf(text, from);
    if (at >= 0) from = at + text.length;
    return { text, column: at < 0 ? Math.min(from, line.length) + 1 : at + 1 };
  });
}

/**
 * A file that ends without a line break may have been cut in its last cell: 231 then reads 23. A last cell that is
 * shorter than those above it, or has other decimals, is marked so that it reads as no number.
 */
function markCut(table: LogTable, lastLine: number, report: Report): void {
  const last = table.cells.at(-1);
  if (!last || table.lines.at(-1) !== lastLine) return;
  const column = last.length - 1;
  const above = table.cells
    .slice(-21, -1)
    .map((cells) => cells[column])
    .filter((cell) => cell !== '');
  const cell = last[column];
  if (cell === '' || above.length === 0) return;
  const decimals = (text: string): number => /[.,](\d*)$/.exec(text)?.[1].length ?? 0;
  const shorter = above.every((each) => each.length > cell.length);
  if (!shorter && above.some((each) => decimals(each) === decimals(cell))) return;
  last[column] = `${cell}${CUT}`;
  report.note({
    code: 'cut-short',
    message: `The file ends inside line ${lastLine}: its last cell, '${cell}', may be cut short and is not used.`,
    where: 'log',
    line: lastLine,
    count: 1,
  });
}
