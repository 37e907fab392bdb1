import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/report/sheets/blocks.js';
import { MOST_OPTIONS } from '../../src/report/sheets/shownOptions.js';
import { longExamples } from '../support/examples.js';
import { documentOf, plates, wordsOf } from './support/reports.js';
import { expectWholeSheets, flat } from './wholeSheets.js';

const three = plates(['1/4 in', '1/8 in', '3/8 in']);
const tables = (blocks: Block[]) => flat(blocks).flatMap((block) => (block.kind === 'table' ? [block.table] : []));

describe("the buyer's page", () => {
  it('shows as many options as it has room for, and says that there are more', () => {
    const eight = plates(['1/8 in', '10 ga', '3/16 in', '7 ga', '1/4 in', '5/16 in', '3/8 in', '1/2 in']);
    const [table] = tables(documentOf(eight).sheets[0].blocks);
    expect(table.head).toHaveLength(MOST_OPTIONS + 1);
    expect(table.caption).toContain('2 more on the sheets behind');
  });
});

describe("the shop's sheets", () => {
  it('carry a sizing table where there is one', () => {
    const table = { head: ['stack', 'fire'], rows: [['6 in', '70,000 BTU/h']] };
    expect(wordsOf(documentOf(three))).not.toContain('Sizes that would do');
    expect(documentOf(three, 'letter', { text: 'Sizes.', table }).sheets.map(({ title }) => title)).toContain(
      'Sizes that would do',
    );
  });
});

describe('a report of each example', () => {
  it.each(longExamples)('%s: no number is missing or broken', expectWholeSheets);
});
