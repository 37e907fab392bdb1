import { describe, expect, it } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { type ShortfallCode } from '../../../src/study/estimate/shortfall.js';
import { randomDesign } from '../../design/randomDesign.js';
import { exampleNames } from '../../support/examples.js';
import { checkExample, compared, quick, variedOf, checkFirstSaid, checkPrinted } from './checkedComparison.js';

describe('a comparison', () => {
  it.each(exampleNames)('of %s with fires from too small to ample, events and all', checkExample);

  it('of random designs', { timeout: 240_000 }, () => {
    const codes = new Set<ShortfallCode | null>();
    for (let seed = 61_000; seed < 61_015; seed++) {
      const read = readDesign(JSON.stringify(randomDesign(seed)), { fileName: `${seed}` });
      if (read.faults) throw new Error(`seed ${seed}`);
      const comparison = compared(variedOf(read.design), quick);
      checkFirstSaid(comparison, `seed ${seed}`);
      checkPrinted(comparison, `seed ${seed}`);
      for (const { shortfall } of comparison.options) codes.add(shortfall?.code ?? null);
    }
    // else nothing was tried
    expect([...codes]).toEqual(expect.arrayContaining([null, 'not-held', 'not-reached']));
  });
});
