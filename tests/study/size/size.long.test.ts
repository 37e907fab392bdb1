import { describe, expect, it } from 'vitest';
import { stackTries, surveyStack } from '../../../src/study/size/search.js';
import { changed, designOf, OVER } from '../../design/designFiles.js';

describe('a choice', () => {
  it('sizes an upright on its firebox too', () => {
    const over = designOf(OVER.replace('8 kW', '16 kW'));
    const tries = stackTries(over).filter(({ stack }) => /^4 in/.test(stack.name));
    const surveys = tries.map((each) => surveyStack(over, each, { cleanAir: 3.5 }));
    expect(surveys.flatMap(({ rough }) => rough).length).toBeGreaterThan(0);
  });
});

describe('what cannot be', () => {
  it('a fire too small for its target is told as that, with every tube', () => {
    const weak = designOf(changed(['70,000 BTU/h', '9,000 BTU/h']));
    const surveys = stackTries(weak)
      .filter(({ stack }) => /^[56] in tube/.test(stack.name))
      .map((each) => surveyStack(weak, each, { cleanAir: 2.5 }));
    expect(surveys.every(({ ruledOut }) => ruledOut === 'heat')).toBe(true);
  });
});
