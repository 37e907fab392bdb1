import { beforeAll, describe, expect, it } from 'vitest';
import { assemble, type Comparison } from '../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { brokenOnPhone, expectWhole } from './support/printed.js';
import { browserAndFolder } from './support/setUp.js';
import { designOf } from '../report/support/reports.js';

const { browser, folder } = await browserAndFolder();

const CARRIED = `
trailer: { mass: 780 lb, balance: 86 in, axle: 116 in, offset: 148 in, axleRating: 3500 lb, hitchRating: 350 lb }
handles: [{ name: chamber door, part: chamber, kind: coil, diameter: 3/8 in, length: 6 in, standoff: 2 in }]
prices: { steel: $1.20/lb, wood: $0.30/lb }
`;

describe.skipIf(!browser)('the HTML report in a browser', () => {
  let carried: Comparison;
  beforeAll(() => {
    const options = ['1/4 in', '1/8 in', '3/8 in'].map((plate) => ({
      label: plate,
      changes: [{ path: 'all.plate', value: plate }],
      design: designOf(
        'offset-with-upright',
        (text) => text.replace(/plate: .*/g, `plate: ${plate}`).replace(/options:[^]*$/, '') + CARRIED,
      ),
    }));
    const studies = options.map(({ design }) => studyOption(design, USUAL_SETTINGS));
    carried = assemble(options, studies, USUAL_SETTINGS);
  });

  it('an upright on a trailer, with handles and prices, in three plates: all of it on one page', () =>
    expectWhole(browser!, folder.path, carried));

  it('and a phone breaks no word and no number, nor parts one from its unit', async () => {
    expect(await brokenOnPhone(browser!, folder.path, carried)).toEqual([]);
  });
});
