import { existsSync, readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { expect } from 'vitest';

/** The curves of a cook's day as CSV, and its picture; returns how many moments there are. */
export function expectFiles({ at }: { at: (name: string) => string }): number {
  const [head, ...rows]: string[][] = parse(readFileSync(at('day.csv')));
  expect(head).toEqual(['time [min]', 'fire [BTU/h]', 'thermometer [degF]', 'gas [degF]', 'steel [degF]']);
  expect(rows.length).toBeGreaterThan(10);
  expect(existsSync(at('charts/cook.png'))).toBe(true);
  return rows.length;
}
