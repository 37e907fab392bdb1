import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { compareCharts } from '../../src/charts/compareCharts.js';
import { parseVariation, type Variation } from '../../src/design/vary.js';
import { compareCsv } from '../../src/report/compareCsv.js';
import { toJson } from '../../src/report/json.js';
import { compareText } from '../../src/report/text/compareText.js';
import type { Comparison } from '../../src/study/compare/compare.js';
import { distinctLabels } from '../../src/study/compare/distinctLabels.js';
import { optionsOf } from '../../src/study/compare/options.js';
import { comparedAsUsual } from '../support/compared.js';

export async function comparisonOf(name: string, ...vary: string[]): Promise<Comparison> {
  const text = `${readFileSync(`examples/${name}`, 'utf8')}prices: { steel: $1.20/lb, wood: $0.30/lb }\n`;
  const made = await optionsOf(
    text,
    name,
    vary.map((each) => parseVariation(each) as Variation),
  );
  if ('faults' in made) throw new Error(made.faults.join('\n'));
  return comparedAsUsual(distinctLabels(made));
}

/** The comparison of an example's plates is whole in every form, within 100 columns. */
export async function expectWhole(name: string): Promise<void> {
  const vary = 'firebox.plate=3/16 in | 1/4 in | 1/2 in';
  const comparison = await comparisonOf(name, vary);
  expect(() => toJson(comparison)).not.toThrow();
  for (const system of ['shop', 'si'] as const) {
    const text = compareText(comparison, system);
    expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
    for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    expect(compareCsv(comparison, system)).not.toMatch(/NaN|Infinity|undefined/);
    expect(compareCsv(comparison, system)).toMatch(/^[\x20-\x7e\r\n]*$/);
  }
  expect(compareCharts(comparison)).toHaveLength(6);
  expect(JSON.stringify(compareCharts(comparison))).toBe(JSON.stringify(compareCharts(comparison)));
}
