import { describe, expect, it } from 'vitest';
import { assemble, compare } from '../../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { comparedAsUsual } from '../../support/compared.js';
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

describe('plate', () => {
  it('is told by three things at most, of what it buys and of what it costs one at least', async () => {
    const all = 'all.plate=1/16 in | 1/8 in | 1/4 in | 1/2 in';
    const { findings, verdict } = compare(await options([all]), USUAL_SETTINGS);
    for (const { label, buys, costs } of findings) {
      const sentence = verdict.split('\n').find((line) => line.startsWith(`${label} instead of`))!;
      const told = sentence.match(/ against /g)!.length;
      expect(told).toBeLessThanOrEqual(3);
      expect(buys.length + costs.length).toBeGreaterThan(told);
      expect([/ buys .* against /.test(sentence), / costs .* against /.test(sentence)]).toEqual([true, true]);
      expect(sentence).toMatch(/difference to .*wood to hold/);
      // of one matter once
      expect(sentence).not.toMatch(/soak.*wood to soak|wood to soak.* soak \(/);
    }
  });
});

describe('the verdict', () => {
  it('has one sentence for each option but the baseline', async () => {
    const comparison = comparedAsUsual(await options(['chamber.plate=1/8 in | 3/16 in', 'site.wind=0 mph | 10 mph']));
    expect(comparison.options).toHaveLength(4);
    expect(comparison.verdict.split('\n')).toHaveLength(3);
    for (const sentence of comparison.verdict.split('\n'))
      expect(sentence).toMatch(/^[^.].* instead of 1\/8 in, 0 mph .*\.$/);
  });
});
