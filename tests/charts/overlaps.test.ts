import { expect, it } from 'vitest';
import { charted, overlapsInAll } from './allCharts.js';

it('no label covers a curve, a bar or another label', async () => {
  expect(overlapsInAll(await charted('plain-24.yaml'))).toEqual([]);
});
