import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../src/design/geometryOf.js';
import { carrySentences } from '../../src/report/carryData.js';
import type { HandResult, HandsResult, Touched } from '../../src/study/carry/touch.js';
import { tonguePercent } from '../../src/study/carry/trailerLoads.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { exampleDesign } from '../support/examples.js';
import { sampleResult } from '../support/sampleResult.js';

const touched = (burns: [boolean, boolean]): Touched => ({
  temperature_K: 330,
  verdicts: [1, 10].map((hold_s, i) => ({ hold_s, threshold_K: 320, burns: burns[i] })),
  longest_s: null,
});
const handle = (name: string, hold: [boolean, boolean], full: [boolean, boolean]): HandResult => {
  const state = (burns: [boolean, boolean]) => ({ base_K: 330, hand: touched(burns), tip_K: 310, heat_W: 1 });
  return { name, station: 'middle', hold: state(hold), full: state(full) };
};
const hands = (...handles: HandResult[]): HandsResult => ({ handles, surfaces: [], standard: '' });

describe('what handles and trailer come to in sentences', () => {
  it('says of each handle under which fire and hold it burns, those alike together', () => {
    const result = {
      ...sampleResult,
      hands: hands(
        handle('coil', [false, false], [false, false]),
        handle('knob', [false, false], [false, false]),
        handle('bow', [false, false], [false, true]),
        handle('bar', [false, true], [true, true]),
        handle('latch', [true, true], [true, true]),
        handle('hook', [true, true], [true, true]),
      ),
    };
    const [sentence] = carrySentences(result, 'shop');
    expect(sentence.split(': ')[1].split('; ')).toEqual([
      'coil and knob can be held under either fire',
      'bow burns when held for 10 s under the full fire',
      'bar burns when held for 10 s while holding, burns at a touch under the full fire',
      'latch and hook burn at a touch under either fire.',
    ]);
  });

  it('gives the loads of a trailer with their ratings, in one system of units', () => {
    const design = exampleDesign('wind-cold.yaml');
    const weight = weightOf(design, geometryOf(design));
    const result = { ...sampleResult, design, weight };
    const [shop, si] = (['shop', 'si'] as const).map((system) => carrySentences(result, system).join(' '));
    expect(shop).toMatch(/ lb on the axles, rated for 5,200 lb, and .* lb on the tongue, rated for 500 lb, [\d.]+ % /);
    expect(shop).not.toMatch(/\bkg\b/);
    expect(si).not.toMatch(/\blb\b/);
    expect(
      carrySentences(
        {
          ...result,
          design: { ...design, trailer: undefined } as never,
          weight: { ...weight, trailer: null, towing: null },
        },
        'shop',
      ),
    ).toEqual([expect.stringMatching(/^The pit weighs [\d,]+ lb and balances \d+ in from the firebox's outer end\.$/)]);
  });

  it('tells a tongue that bears nothing without a sign', () => {
    expect([-0.0004, 0, 0.0004, -0.0006, 0.087].map((tongueShare) => tonguePercent({ tongueShare }))).toEqual([
      '0.0 %',
      '0.0 %',
      '0.0 %',
      '-0.1 %',
      '8.7 %',
    ]);
  });

  it('is nothing where a design has neither', () => expect(carrySentences(sampleResult, 'shop')).toEqual([]));
});
