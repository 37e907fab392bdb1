/** Whatever an option is set to, at nothing or at its utmost, no text prints a number that is none. */
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { compare } from '../../src/study/compare/compare.js';
import { USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { PLAIN } from '../design/designFiles.js';
import { DAMPER, expectNumbers, EXTREMES } from './extremes.js';

describe('all that is printed', () => {
  it.each(EXTREMES.slice(0, 1))('%s', expectNumbers);

  it('says of smoke out of the gaps, where nothing leaves by the stack, what it is more than', () => {
    const text = PLAIN.replace(DAMPER[0], DAMPER[1]);
    const read = readDesign(text, { fileName: 'pit.yaml' });
    const [{ result }] = compare([{ label: 'shut', changes: [], design: read.design! }], USUAL_SETTINGS).options;
    const smoke = result.warnings.filter(({ code }) => code === 'door-gap-smoke');
    expect(smoke.length).toBeGreaterThan(0);
    for (const { value, limits } of smoke) {
      expect(value).toBeGreaterThan(0);
      expect(limits!.high).toBe(0);
    }
  });
});
