import type { Chart } from 'chart.js';
import { describe, expect, it } from 'vitest';
import { barLabels } from '../../src/charts/barLabels.js';

describe('a text behind a bar', () => {
  it.each([
    ['to the right of zero: behind its end', { x: 180, y: 20, base: 100 }, 188],
    ['to the left of zero: behind where it begins, not on it', { x: 60, y: 20, base: 100 }, 108],
  ])('%s', (_, bar, at) => {
    const written: unknown[][] = [];
    const chart = {
      ctx: { save() {}, restore() {}, fillText: (...text: unknown[]) => written.push(text) },
      getDatasetMeta: () => ({ data: [{ getProps: () => bar }] }),
    };
    barLabels([['1.6 lb/h']]).afterDatasetsDraw!(chart as unknown as Chart, {}, {}, false);
    expect(written).toEqual([['1.6 lb/h', at, 20]]);
  });
});
