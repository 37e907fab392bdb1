import { describe, expect, it } from 'vitest';
import { everydayExamples } from '../support/examples.js';
import { expectNoPaths, PATH } from './fieldPaths.js';

describe('fields of a design file', () => {
  it('are found where they stand', () => {
    expect('set chamber.plate, stacks[0].base'.match(PATH)).toEqual(['chamber.plate', 'stacks[0].base']);
    expect('the chamber. The firebox, 1.5 in; e.g. wood'.match(PATH)).toBeNull();
  });

  it.each(everydayExamples)(
    '%s: none before a buyer, nor on a sheet of the shop that is not about the file',
    expectNoPaths,
  );
});
