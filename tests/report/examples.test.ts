import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { estimateCharts } from '../../src/charts/estimateCharts.js';
import { readDesign } from '../../src/design/read.js';
import { curvesCsv } from '../../src/report/csv.js';
import { toJson } from '../../src/report/json.js';
import { estimateText } from '../../src/report/text/estimateText.js';
import { estimate } from '../../src/study/estimate/estimate.js';

const examples = readdirSync('examples').filter((name) => name.endsWith('.yaml'));

describe('the examples', () => {
  it('are at least five', () => expect(examples.length).toBeGreaterThanOrEqual(5));

  it.each(examples)('%s: solved, closed, and told whole in every form', (name) => {
    const read = readDesign(readFileSync(`examples/${name}`, 'utf8'), { fileName: name });
    if (read.faults) throw new Error(`${name} has faults`);
    const result = estimate(read.design);
    expect(result.steady?.converged).toBe(true);
    expect(result.assumed?.converged).toBe(true);
    expect(result.warmUp?.soaked_s).toBeGreaterThan(result.warmUp!.gauge_s!);
    expect(result.balance.energyError).toBeLessThan(1e-3);
    expect(result.balance.massError_kg_per_s).toBeLessThan(1e-9);

    expect(() => toJson(result)).not.toThrow();
    for (const system of ['shop', 'si'] as const) {
      const text = estimateText(result, system);
      expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
      for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
      expect(curvesCsv(result, system)).not.toMatch(/NaN|Infinity/);
    }
    expect(estimateCharts(result)).toHaveLength(5);
  });
});
