import { expect, it } from 'vitest';
import { charted, FEW_WIDTHS, overlapsInAll } from './allCharts.js';

it('no label covers a curve, a bar or another label', async () => {
  expect(overlapsInAll(await charted('plain-24.yaml', ['1/4 in', '1/8 in'], 2), FEW_WIDTHS)).toEqual([]);
});
