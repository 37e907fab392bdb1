import { describe, it } from 'vitest';
import { longExamples } from '../support/examples.js';
import { expectClear, expectDialWritten } from './clearDrawings.js';

describe.each(longExamples)('drawings of %s', (name) => {
  it('have no text that strikes the outline of a part', () => expectClear(name));

  it('always write what is read by the dial that is steered by', () => expectDialWritten(name));
});
