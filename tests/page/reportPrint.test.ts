import { beforeAll, describe, expect, it } from 'vitest';
import type { Comparison } from '../../src/study/compare/compare.js';
import { carriedIn } from './support/carried.js';
import { brokenOnPhone, expectWhole } from './support/printed.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the HTML report in a browser', () => {
  let carried: Comparison;
  beforeAll(() => {
    carried = carriedIn('plain-24', ['1/4 in', '1/8 in']);
  });

  it('a pit on a trailer, with handles and prices, in two plates: all of it on one page', () =>
    expectWhole(browser!, folder.path, carried));

  it('and a phone breaks no word and no number, nor parts one from its unit', async () => {
    expect(await brokenOnPhone(browser!, folder.path, carried)).toEqual([]);
  });
});
