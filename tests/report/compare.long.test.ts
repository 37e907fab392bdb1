import { describe, it } from 'vitest';
import { exampleNames } from '../support/examples.js';
import { expectWhole } from './comparedExample.js';

describe('a comparison told', () => {
  it.each(exampleNames)('%s: whole in every form, within 100 columns', expectWhole);
});
