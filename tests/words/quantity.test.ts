import { describe, expect, it } from 'vitest';
import { held } from '../../src/study/quantities.js';
import { sayIn, sayQuantity } from '../../src/words/quantity.js';

describe('a draft', () => {
  it.each([
    [0.78, '0.0031 in H2O (0.78 Pa)'],
    [-0.093, '-0.00037 in H2O (-0.093 Pa)'],
    [0.0143, '0.00006 in H2O (0.01 Pa)'],
    [-0.0019, '0 in H2O (0 Pa)'],
  ])('of %s Pa is told no finer than it could be measured: %s', (pascal, text) =>
    expect(sayQuantity(sayIn('shop'), held('stackBase_Pa'), pascal)).toBe(text),
  );
});
