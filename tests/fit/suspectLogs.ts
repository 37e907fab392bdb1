import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { formatLogFaults, readLog } from '../../src/fit/log/readLog.js';
import { fitText } from '../../src/report/text/fitText.js';
import { fit } from '../../src/fit/fit.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { exampleDesign } from '../support/examples.js';

/** Short logs in which one thing is wrong: it must be named, and nothing beside it. */
export const design = exampleDesign('plain-24.yaml');
const rows = readFileSync(new URL('../../examples/yard-cook.csv', import.meta.url), 'utf8').split('\n');
export const header = rows[1].split(',');
const table = rows.slice(2, 302).filter((row, i) => row !== '' && (i % 2 === 0 || row.split(',')[5] !== ''));
export const FREE = ['innerConvection', 'fire.radiant', 'wood.heat', 'estimates.stemFill'];
/** What the script of the made-up log says that it was made with, of what is fitted here. */
export const MADE_WITH = { innerConvection: 1.4, 'fire.radiant': 0.36 };
export const [FIRE_END, MIDDLE, STACK_END, STEEL, WOOD, AIR] = [1, 2, 3, 4, 5, 8];

export type Change = (cells: string[], row: number) => string[];

/** The log with some of its probes, changed cell by cell and under other headers. */
export function logOf(probes: number[], change: Change = (cells) => cells, heads: Record<number, string> = {}) {
  const columns = [0, ...probes, WOOD, 6, 7, AIR, 9];
  const pick = (cells: string[]) => columns.map((k) => cells[k]).join(',');
  const head = header.map((each, k) => heads[k] ?? each);
  const text = [pick(head), ...table.map((row, i) => pick(change(row.split(','), i))), ''].join('\n');
  const read = readLog(text, { fileName: 'cook.csv', design });
  if (read.faults) throw new Error(formatLogFaults(read.faults));
  return read.log;
}

/** Numbers of some columns as something makes them. */
export const made =
  (columns: number[], make: (value: number, row: number) => number): Change =>
  (cells, row) =>
    cells.map((cell, k) => (columns.includes(k) && /^-?\d/.test(cell) ? make(Number(cell), row).toFixed(1) : cell));
export const exchanged =
  (a: number, b: number): Change =>
  (cells) =>
    cells.map((cell, k) => (k === a ? cells[b] : k === b ? cells[a] : cell));

export function fitted(log: ReturnType<typeof logOf>, paths = FREE): FitResult {
  return fit(design, [{ log, hash: 'a' }], { paths, heldBack: 0.3, accuracy: 2 / 1.8 })!;
}

export const codes = ({ warnings }: FitResult) => warnings.map(({ code, where }) => `${code}: ${where}`);
/** What the text says before its first number. */
export const headline = (result: FitResult) => fitText(result, 'shop').split('\n\n')[1].replace(/\s+/g, ' ');

export const TO_CELSIUS = (value: number) => (value - 32) / 1.8;
export const THREE = [FIRE_END, MIDDLE, STACK_END];

/** The bad one alone is told and left out, and the others tell of the pit as well as ever. */
export function expectBlamed(probes: number[], bad: number, make: (value: number) => number): FitResult {
  const result = fitted(logOf(probes, made([bad], make)));
  expect(codes(result)).toEqual([`probe-reads-off: ${header[bad]}`]);
  expect(headline(result)).toContain(header[bad]);
  const channels = result.cooks[0].channels;
  expect(channels.filter(({ leftOut }) => leftOut).map((each) => each.header)).toEqual([header[bad]]);
  for (const { leftOut, fittedReadings, fitted: errors } of channels) {
    expect(fittedReadings > 0).toBe(!leftOut);
    if (!leftOut) expect(1.8 * errors.after!).toBeLessThan(3);
  }
  expect(1.8 * result.quality.heldBack_K!).toBeLessThan(3.5);
  return result;
}
