import { describe, expect, it } from 'vitest';
import { assemble } from '../../src/study/compare/compare.js';
import { USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';
import { overlapsInAll } from './allCharts.js';

describe('no label covers a curve, a bar or another label', () => {
  it('where a pit has few openings', () => {
    const option = { label: 'as drawn', changes: [], design: sampleDesign };
    const comparison = assemble([option], [{ result: sampleResult, studies: null }], USUAL_SETTINGS);
    expect(sampleResult.steady!.openings.length).toBeLessThan(7);
    expect(overlapsInAll({ result: sampleResult, comparison })).toEqual([]);
  });
});
