import { describe, it } from 'vitest';
import { longExamples } from '../support/examples.js';
import { expectToldWhole } from './wholeExample.js';

describe('the examples', () => {
  it.each(longExamples)('%s: solved, closed, and told whole in every form', expectToldWhole);
});
