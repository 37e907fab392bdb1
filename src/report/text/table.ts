import { lengthOf } from '../../words/plainText.js';

/** A table under a head of its own. */
export const INDENT = { indent: '  ' };

type Align = 'left' | 'right';

/** A table as data: what readers of text, HTML, paper and a screen reader get alike. */
export interface TableData {
  caption?: string;
  head: string[];
  rows: string[][];
  /** per column (default: first left, the others right) */
  align?: Align[];
}

/**
 * Lays out rows under headings in columns as wide as their widest cell, two spaces between; trailing space is cut.
 *
 * @param head headings, one a column
 * @param rows cells as printed
 * @param options.align per column (default: first left, the others right)
 * @param options.indent put before each line
 */
export function table(head: string[], rows: string[][], options: { align?: Align[]; indent?: string } = {}): string {
  const { align = [], indent = '' } = options;
  const all = head.some((cell) => cell !== '') ? [head, ...rows] : rows;
  const widths = head.map((_, column) => Math.max(...all.map((row) => lengthOf(row[column] ?? ''))));
  return all
    .map((row) => {
      const cells = widths.map((width, column) => {
        const cell = row[column] ?? '';
        const fill = ' '.repeat(width - lengthOf(cell));
        return (align[column] ?? (column === 0 ? 'left' : 'right')) === 'left' ? cell + fill : fill + cell;
      });
      return (indent + cells.join('  ')).trimEnd();
    })
    .join('\n');
}

/** A table's data as text, set in by two. */
export function textTable({ head, rows, align }: TableData): string {
  return table(head, rows, { indent: '  ', ...(align ? { align } : {}) });
}
