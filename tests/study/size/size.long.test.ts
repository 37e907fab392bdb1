import { describe, expect, it } from 'vitest';
import { stackTries, surveyStack } from '../../../src/study/size/search.js';
import { designOf, OVER } from '../../design/designFiles.js';

describe('a choice', () => {
  it('sizes an upright on its firebox too', () => {
    const over = designOf(OVER.replace('8 kW', '16 kW'));
    const tries = stackTries(over).filter(({ stack }) => /^4 in/.test(stack.name));
    const surveys = tries.map((each) => surveyStack(over, each, { cleanAir: 3.5 }));
    expect(surveys.flatMap(({ rough }) => rough).length).toBeGreaterThan(0);
  });
});
