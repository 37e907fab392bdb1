import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { planSpread, runSpreadCases, summariseSpread } from '../../../src/study/spread/uncertainty.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { expectSpreadInOrder } from './spreadInOrder.js';

const plain = designOf(PLAIN);

describe('a spread study', () => {
  const base = estimate(plain);
  expectSpreadInOrder(base, planSpread(base, { cases: 24, seed: 5, random: seededRandom(5) }));

  it('keeps count of cases that never get there', () => {
    const weak: Design = structuredClone(plain);
    weak.fire.heat = 0.34 * plain.fire.heat;
    const own = estimate(weak, { steadyOnly: false });
    const small = planSpread(own, { cases: 20, seed: 1, random: seededRandom(1) });
    const told = summariseSpread(own, small, runSpreadCases(small, 0, 20));
    const gauge = told.numbers.find(({ key }) => key === 'gauge_s')!;
    expect(gauge.missing).toBeGreaterThan(0);
    expect(gauge.missing).toBeLessThan(20);
    expect(gauge.p90).toBeNull();
  });
});
