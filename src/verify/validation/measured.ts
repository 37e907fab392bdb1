/** Tables of measured fires: a CSV with a line for each test or moment. */
import { parse } from 'csv-parse/sync';
import type { CaseFault } from '../readCases.js';

/** A line of a measured table; empty cells are readings that were lost. */
export class MeasuredRow {
  constructor(
    readonly id: string,
    private readonly cells: Readonly<Record<string, string>>,
  ) {}

  text(column: string): string {
    return this.cells[column];
  }

  /** NaN where the reading was lost. */
  number(column: string): number {
    const cell = this.cells[column];
    return cell === '' ? NaN : Number(cell);
  }
}

/** @param numbers columns that must hold numbers or nothing; @param texts columns that must exist */
export function readMeasured(
  text: string,
  file: string,
  { numbers, texts }: { numbers: readonly string[]; texts: readonly string[] },
): { rows: MeasuredRow[]; faults: CaseFault[] } {
  const faults: CaseFault[] = [];
  const records = parse(text, { bom: true, columns: true, skip_empty_lines: true, trim: true }) as Record<
    string,
    string
  >[];
  const missing = ['id', ...texts, ...numbers].filter((column) => records[0]?.[column] === undefined);
  if (missing.length > 0) {
    const message = records.length === 0 ? 'holds no rows' : `lacks the columns ${missing.join(', ')}`;
    return { rows: [], faults: [{ file, line: 1, id: '', field: '', message }] };
  }
  records.forEach((record, n) => {
    for (const field of numbers) {
      if (record[field] === '' || Number.isFinite(Number(record[field]))) continue;
      faults.push({ file, line: n + 2, id: record.id, field, message: `'${record[field]}' is no number` });
    }
  });
  return { rows: records.map((record) => new MeasuredRow(record.id, record)), faults };
}
