import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { planSpread, runSpreadCases, summariseSpread } from '../../../src/study/spread/uncertainty.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { FITTED } from '../../design/fittedFiles.js';

const plain = designOf(PLAIN);
const fitted = designOf(PLAIN + FITTED);

describe('how sure a design is that rests on a log', () => {
  it('is surer where the log told, and says how it was drawn', () => {
    const width = (design: Design) => {
      const base = estimate(design, { steadyOnly: true });
      const plan = planSpread(base, { cases: 160, seed: 1, random: seededRandom(1) });
      const spread = summariseSpread(base, plan, runSpreadCases({ ...plan, time_s: [] }, 0, 160));
      const apart = spread.numbers.find(({ key }) => key === 'hold.thermometer_K.fireEnd')!;
      return { width: apart.p90! - apart.p10!, method: spread.method };
    };
    const [before, after] = [width(plain), width(fitted)];
    // 0.72 of it; of 40 cases alone 0.62, for they tell a width to a tenth
    expect(after.width).toBeLessThan(0.8 * before.width);
    expect(after.method).toMatch(/Iman & Conover/);
    expect(before.method).not.toMatch(/Iman & Conover/);
  });
});
