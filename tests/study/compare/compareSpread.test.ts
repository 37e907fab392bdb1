import { beforeAll, describe, expect, it } from 'vitest';
import { compare } from '../../../src/study/compare/compare.js';
import { planComparison, runComparisonCases } from '../../../src/study/compare/compareSpread.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { CASES, spreadOf, heavy } from './comparedSpread.js';

describe('how sure a difference is', () => {
  let study: ReturnType<typeof spreadOf>;
  beforeAll(() => {
    study = spreadOf([PLAIN, heavy]);
  }, 120_000);
  const of = (key: string) => study.spread.options[1].measures.find((each) => each.key === key)!;

  it('heavier plate soaks later in every case, and swings more in none; the wood that holds differs in none', () => {
    expect(of('soaked_s')).toMatchObject({ more: CASES, less: 0, same: 0, missing: 0 });
    expect(of('soaked_s').difference.p10).toBeGreaterThan(60);
    expect(of('swing.steel_K').less).toBeGreaterThan(CASES / 2);
    expect(of('swing.steel_K')).toMatchObject({ more: 0, missing: 0 });
    expect(of('hold.wood_kg_per_s').same + of('hold.wood_kg_per_s').less).toBe(CASES);
    expect(of('steel_kg').difference.p10).toBeCloseTo(of('steel_kg').difference.p90!, 9);
  });

  it('differences spread far less than the numbers themselves, since all options share the fire', () => {
    const width = ({ p10, p90 }: { p10: number | null; p90: number | null }) => p90! - p10!;
    expect(width(of('hold.fire_W').difference)).toBeLessThan(0.2 * width(of('hold.fire_W').value));
  });

  it('counts every case once, and gives the baseline no difference to itself', () => {
    for (const { measures } of study.spread.options) {
      for (const { more, less, same, missing } of measures) expect(more + less + same + missing).toBe(CASES);
    }
    for (const { difference, more, less } of study.spread.options[0].measures) {
      expect([more, less]).toEqual([0, 0]);
      expect(difference.p90 ?? 0).toBe(0);
    }
  });
});

describe('options that do not have the same unknowns', () => {
  it('share those that they have', () => {
    const sealed = PLAIN.replace('doorGap: 2.0 in^2', 'doorGap: 0 in^2');
    const options = [PLAIN, sealed].map((text, i) => ({ label: String(i), changes: [], design: designOf(text) }));
    const comparison = compare(options, USUAL_SETTINGS);
    const plan = planComparison(comparison, { cases: 2, seed: 1, random: seededRandom(1) });
    expect(plan.paths).toContain('chamber.doorGap');
    expect(plan.samples[0]).toHaveLength(plan.paths.length);
    expect(runComparisonCases(plan, 0, 1)[0]['hold.fire_W'].every((fire) => fire! > 0)).toBe(true);
  });
});
