import { describe, expect, it } from 'vitest';
import { fitCharts } from '../../src/charts/fitChart.js';
import { sizeCharts } from '../../src/charts/sizeCharts.js';
import { fit } from '../../src/fit/fit.js';
import { evidencePictures } from '../../src/report/evidence/evidencePictures.js';
import { gatherEvidence, type Evidence } from '../../src/verify/evidence.js';
import { PLAIN } from '../design/designFiles.js';
import { input, logOf, plain, TWO, without } from '../fit/fitLogs.js';
import { sizesFor } from '../study/size/asked.js';
import { exampleNames } from '../support/examples.js';
import { reference } from '../verify/referenceFiles.js';
import { charted, overlapsInAll, overlapsInFiles } from './allCharts.js';

describe('no label covers a curve, a bar or another label', () => {
  it.each(exampleNames)('in any chart of %s, at any size', async (name) => {
    expect(overlapsInAll(await charted(name))).toEqual([]);
  });

  it('beside one other plate', async () => {
    expect(overlapsInAll(await charted('plain-24.yaml', ['1/4 in', '1/8 in']))).toEqual([]);
  });

  it('where sizes are chosen', async () => {
    expect(overlapsInFiles(sizeCharts((await sizesFor(PLAIN)).result))).toEqual([]);
  });

  it('where a log is fitted', () => {
    const fitted = fit(plain(), [input(logOf(TWO))], without(Object.keys(TWO)))!;
    expect(overlapsInFiles(fitCharts(fitted))).toEqual([]);
  });

  it('where measured rooms are held against the computation', () => {
    const { evidence } = gatherEvidence(reference()) as { evidence: Evidence };
    expect(overlapsInFiles(evidencePictures(evidence.validation))).toEqual([]);
  });
});
