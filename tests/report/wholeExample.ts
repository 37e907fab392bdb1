import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { estimateCharts } from '../../src/charts/estimateCharts.js';
import { readDesign } from '../../src/design/read.js';
import { curvesCsv } from '../../src/report/csv.js';
import { toJson } from '../../src/report/json.js';
import { estimateText } from '../../src/report/text/estimateText.js';
import { cooked } from '../../src/study/events/cooked.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../src/study/estimate/result.js';
import { openingLabel } from '../../src/words/labels.js';
import { warningWords } from '../../src/words/warningWords.js';

/** Everything is told in full, and no field of a design file before that. */
function expectBriefAndWhole(result: EstimateResult, short: string, full: string): void {
  for (const { path } of result.estimates) {
    expect(full).toMatch(new RegExp(`^ {2}${path.replace(/[.[\]]/g, '\\$&')} `, 'm'));
    if (path.includes('.')) expect(short).not.toContain(path);
  }
  const rowsOf = (text: string) => text.split('\n').map((line) => line.trim());
  const rows = rowsOf(full.slice(full.indexOf('OPENINGS')));
  const openings = rows.slice(0, rows.indexOf('WEIGHTS'));
  for (const opening of result.steady!.openings) {
    expect(openings.filter((row) => row.startsWith(`${openingLabel(opening)}  `))).toHaveLength(2);
  }
  for (const { name } of result.geometry.parts) expect(rows.some((row) => row.startsWith(`${name}  `))).toBe(true);
  const { warnings, design } = result;
  const kinds = new Set(warnings.map(({ code }) => code));
  expect(warningWords(warnings, design)).toHaveLength(kinds.size);
  const bullets = (text: string) => text.match(/^ {2}- /gm)?.length ?? 0;
  expect(bullets(short)).toBe(kinds.size);
  expect(bullets(full)).toBe(warnings.length);
}

/** An example is solved, closed, and told whole in every form. */
export function expectToldWhole(name: string): void {
  const read = readDesign(readFileSync(`examples/${name}`, 'utf8'), { fileName: name });
  if (read.faults) throw new Error(`${name} has faults`);
  const result = estimate(read.design, { further: cooked });
  result.warnings.unshift(...read.warnings);
  expect(result.steady?.converged).toBe(true);
  expect(result.assumed?.converged).toBe(true);
  expect(result.warmUp?.soaked_s).toBeGreaterThan(result.warmUp!.gauge_s!);
  expect(result.balance.energyError).toBeLessThan(1e-3);
  expect(result.balance.massError_kg_per_s).toBeLessThan(1e-9);

  expect(() => toJson(result)).not.toThrow();
  for (const system of ['shop', 'si'] as const) {
    const [short, full] = [false, true].map((all) => estimateText(result, system, { full: all }));
    for (const text of [short, full]) {
      expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
      for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    }
    expect(short.trimEnd().split('\n').length).toBeLessThanOrEqual(60);
    expectBriefAndWhole(result, short, full);
    expect(curvesCsv(result, system)).not.toMatch(/NaN|Infinity/);
  }
  expect(estimateCharts(result)).toHaveLength(5);
}
