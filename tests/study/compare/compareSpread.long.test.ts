import { beforeAll, describe, expect, it } from 'vitest';
import { runComparisonCases } from '../../../src/study/compare/compareSpread.js';
import { PLAIN } from '../../design/designFiles.js';
import { CASES, spreadOf, heavy } from './comparedSpread.js';
import { heavierPlateDiffers } from './surelyHeavier.js';

heavierPlateDiffers(CASES);

describe('how sure a difference is', () => {
  let study: ReturnType<typeof spreadOf>;
  beforeAll(() => {
    study = spreadOf([PLAIN, heavy]);
  }, 120_000);

  it('gives the same cases however they are shared out', () => {
    expect(runComparisonCases(study.plan, 2, 4)).toEqual([
      ...runComparisonCases(study.plan, 2, 3),
      ...runComparisonCases(study.plan, 3, 4),
    ]);
  });
});

describe('equal options', () => {
  it('differ by exactly nothing in every case', () => {
    const { spread } = spreadOf([PLAIN, PLAIN.replace('plate: 1/4 in', 'plate: 0.25 in')]);
    for (const { difference, same, missing } of spread.options[1].measures) {
      expect(same + missing).toBe(CASES);
      expect([difference.p10 ?? 0, difference.p90 ?? 0]).toEqual([0, 0]);
    }
  }, 120_000);
});
