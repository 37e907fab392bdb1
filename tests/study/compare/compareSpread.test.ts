import { describe, expect, it } from 'vitest';
import { compare } from '../../../src/study/compare/compare.js';
import { planComparison, runComparisonCases } from '../../../src/study/compare/compareSpread.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { heavierPlateDiffers } from './surelyHeavier.js';

heavierPlateDiffers(4);

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
