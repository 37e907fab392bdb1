import { describe, expect, it } from 'vitest';
import { assemble, compare } from '../../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { options } from './comparedDesigns.js';

describe('equal options', () => {
  it('come out of the same studies, wherever those were made', async () => {
    const made = await options(['all.plate=3/16 in | 1/4 in']);
    const here = compare(made, USUAL_SETTINGS);
    // as if sent to another thread and back
    const elsewhere = made.map(({ design }) => JSON.parse(JSON.stringify(studyOption(structuredClone(design)))));
    expect(JSON.stringify(assemble(made, elsewhere, USUAL_SETTINGS))).toBe(JSON.stringify(here));
  });
});
