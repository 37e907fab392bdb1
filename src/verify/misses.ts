/** The list of rows known to miss, each with the reason found. */
import { parse } from 'csv-parse/sync';
import type { CaseFault } from './readCases.js';
import type { Misses } from './runCases.js';

/**
 * @param text contents of a CSV with the columns id and reason
 * @param file name for messages
 * @param ids of all cases: a reason for a case that does not exist is a fault
 */
export function readMisses(
  text: string,
  file: string,
  ids: ReadonlySet<string>,
): { misses: Misses; faults: CaseFault[] } {
  const faults: CaseFault[] = [];
  const misses = new Map<string, string>();
  const rows = parse(text, { columns: true, skip_empty_lines: true, trim: true }) as Record<string, string>[];
  rows.forEach(({ id = '', reason = '' }, n) => {
    const line = n + 2;
    const wrong = (field: string, message: string) => faults.push({ file, line, id, field, message });
    if (!ids.has(id)) wrong('id', `'${id}' is no case`);
    if (misses.has(id)) wrong('id', `'${id}' is listed twice`);
    if (reason === '') wrong('reason', 'is empty: a miss is kept only with the reason found');
    misses.set(id, reason);
  });
  return { misses, faults };
}
