import { describe, it } from 'vitest';
import { longExamples } from '../support/examples.js';
import { expectNoPaths } from './fieldPaths.js';

describe('fields of a design file', () => {
  it.each(longExamples)(
    '%s: none before a buyer, nor on a sheet of the shop that is not about the file',
    expectNoPaths,
  );
});
