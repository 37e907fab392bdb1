import { describe, expect, it } from 'vitest';
import { everydayExamples, exampleNames } from '../support/examples.js';
import { expectToldWhole } from './wholeExample.js';

describe('the examples', () => {
  it('are at least five', () => expect(exampleNames.length).toBeGreaterThanOrEqual(5));

  it.each(everydayExamples)('%s: solved, closed, and told whole in every form', expectToldWhole);
});
