import { describe, expect, it } from 'vitest';
import { carrySentences } from '../../src/report/carryData.js';
import { compareText } from '../../src/report/text/compareText.js';
import { assemble } from '../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { coldSmoke, type ColdSmoke } from '../../src/study/events/coldSmoke.js';
import { cooked } from '../../src/study/events/cooked.js';
import { coldSmokeWords } from '../../src/words/coldSmokeWords.js';
import { format } from '../../src/units/index.js';
import { sampleResult } from '../support/sampleResult.js';
import { compared, designOf, documentFrom } from './support/reports.js';

const upright = (air: string) =>
  designOf('offset-with-upright', (text) => text.replace(/air: \d+ °F/, `air: ${air}`).replace(/options:[^]*$/, ''));
const [cold, mild] = ['20 °F', '75 °F'].map(upright);
const options = [
  { label: 'winter', changes: [], design: cold },
  { label: 'spring', changes: [], design: mild },
];
const studies = options.map(({ design }) => ({
  result: { ...estimate(design), coldSmoke: coldSmoke(design) },
  studies: null,
}));
const comparison = assemble(options, studies, USUAL_SETTINGS);

describe('cold smoke of a pit with an upright', () => {
  it('is told the buyer of each option, and the shop behind', () => {
    const [buyer, ...shop] = documentFrom(comparison).sheets;
    const [told] = buyer.blocks.flatMap((block) =>
      block.kind === 'text' && block.text.includes('Cold smoke:') ? [block.text] : [],
    );
    expect(told).toMatch(/with winter: yes, .* °F under 90 °F on a day of 20 °F/);
    expect(told).toMatch(/with spring: no, .* °F over 90 °F on a day of 75 °F/);
    const sheet = shop.find(({ title }) => title.startsWith('Parts'))!;
    expect(sheet.blocks.at(-1)).toMatchObject({
      kind: 'text',
      text: expect.stringMatching(/^Cold smoke: yes, .* under 90 °F/),
    });
  });

  it('stands in a comparison', () => {
    const text = compareText(comparison, 'shop').replace(/\s+/g, ' ');
    expect(text).toMatch(/HANDS, TRAILER, COLD SMOKE - Cold smoke: winter: yes, .*; with spring: no, /);
  });

  it('says what the command finds', () => {
    const found = coldSmoke(mild);
    const [{ result }] = comparison.options.slice(1);
    const over = format('temperatureDifference', -found.inHand_K!, 'shop', { digits: 2 });
    expect(carrySentences(result, 'shop').at(-1)).toContain(`Cold smoke: no, ${over} over 90 °F`);
    expect(carrySentences(result, 'shop').at(-1)).toContain(
      `on days of up to ${format('temperature', found.hottestDay_K.likely)}`,
    );
  });

  it('is asked of every pit with an upright, by an estimate and by a comparison', () => {
    const { coldSmoke: found } = estimate(mild, { further: cooked });
    expect(found?.inHand_K).toBeCloseTo(studies[1].result.coldSmoke.inHand_K!, 9);
    // a target that no fire reaches leaves all that follows out of a comparison
    const hot = { ...mild, fire: { ...mild.fire, target: 900 } };
    expect(studyOption(hot)).toMatchObject({ result: { coldSmoke: coldSmoke(hot) }, studies: null });
  });

  it('is nothing where there is no upright', () => {
    expect(coldSmokeWords(sampleResult, 'shop')).toBeNull();
    const plain = compared([{ label: 'as drawn', changes: [], design: designOf('plain-24') }]);
    expect(compareText(plain, 'shop')).not.toMatch(/COLD SMOKE|HANDS/);
  });
});

describe('its answer in words', () => {
  const { result } = comparison.options[0];
  const told = (change: Partial<ColdSmoke>) =>
    coldSmokeWords({ ...result, coldSmoke: { ...result.coldSmoke!, possible: false, ...change } }, 'shop');

  it.each([
    ['air-too-warm', /^no, on a day of 20 °F the air alone is at 90 °F or above it/],
    ['no-draft', /^no, on a day of 20 °F no fire draws the right way and gets its air$/],
    ['nothing-in-hand', /^hardly, only .* under 90 °F/],
    ['fire-too-warm', /^no, .* over 90 °F .* on the smallest steady fire, 0\.5 lb\/h of wood/],
  ])('%s', (why, words) => expect(told({ why })).toMatch(words));
});
