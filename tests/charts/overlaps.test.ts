import { expect, it } from 'vitest';
import { assemble } from '../../src/study/compare/compare.js';
import { USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';
import { charted, overlapsInAll } from './allCharts.js';

it('no label covers a curve, a bar or another label', async () => {
  expect(overlapsInAll(await charted('plain-24.yaml', ['1/4 in', '1/8 in']))).toEqual([]);
});

it('nor where a pit has few openings', () => {
  const option = { label: 'as drawn', changes: [], design: sampleDesign };
  const comparison = assemble([option], [{ result: sampleResult, studies: null }], USUAL_SETTINGS);
  expect(sampleResult.steady!.openings.length).toBeLessThan(7);
  expect(overlapsInAll({ result: sampleResult, comparison })).toEqual([]);
});
