import { compare, type Comparison } from '../../../src/study/compare/compare.js';
import {
  planComparison,
  runComparisonCases,
  summariseComparison,
  type ComparisonPlan,
  type ComparisonSpread,
} from '../../../src/study/compare/compareSpread.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { designOf, PLAIN } from '../../design/designFiles.js';

export const CASES = 12;

export function spreadOf(
  texts: string[],
  cases = CASES,
): { comparison: Comparison; plan: ComparisonPlan; spread: ComparisonSpread } {
  const options = texts.map((text, i) => ({ label: `option ${i + 1}`, changes: [], design: designOf(text) }));
  const comparison = compare(options, USUAL_SETTINGS);
  const plan = planComparison(comparison, { cases, seed: 3, random: seededRandom(3) });
  return { comparison, plan, spread: summariseComparison(comparison, plan, runComparisonCases(plan, 0, cases)) };
}

export const heavy = PLAIN.replaceAll('plate: 1/4 in', 'plate: 1/2 in');
