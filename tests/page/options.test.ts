import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readDesign } from '../../src/design/read.js';
import { MOST_OPTIONS, Workbench } from '../../src/page/workbench.js';
import { example } from '../cli/support/run.js';
import { edit, labels, textOf } from './support/bench.js';
import { openPage, settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const FOUR_WAYS = example('four-ways.yaml');
const TEXT = textOf('four-ways');
const PLAIN = textOf('plain-24');
const NAMES = ['3/16 plate', '3/8 plate', 'wrapped firebox'];

describe('options of a design', () => {
  it('stand beside it, each as the command reads it, its comments kept', () => {
    const bench = new Workbench(TEXT);
    expect(labels(bench)).toEqual(['As drawn', ...NAMES]);
    expect(bench.current).toBe(bench.options[0]);
    const read = readDesign(TEXT, { fileName: 'four-ways.yaml' });
    if (read.faults) throw new Error(JSON.stringify(read.faults));
    read.options.forEach(({ design, text }, i) => {
      const option = bench.options[i + 1];
      expect(option.design).toEqual(design);
      expect(parse(option.text.text())).toEqual(JSON.parse(text));
      expect(option.text.text()).toContain('# what the shop pays');
      expect(readDesign(option.text.text(), { fileName: 'saved' })).toMatchObject({ design, options: [] });
    });
  });

  it('leave the design as drawn free to change, whatever that makes of them, and in its file', () => {
    const bench = new Workbench(TEXT);
    const { current } = bench;
    // as an option has it already
    expect(edit(bench, 'chamber.plate', '3/16 in')).toBe(true);
    expect(parse(current.text.text()).options).toHaveLength(3);
  });

  it('come along with a file that is opened, as far as there is room; one opened beside others comes alone', () => {
    const bench = new Workbench(PLAIN);
    expect(bench.load(TEXT, 'four-ways.yaml')).toBeNull();
    expect(labels(bench)).toEqual(['As drawn', ...NAMES]);
    expect(bench.loadBeside(PLAIN, 'plain-24.yaml')).toBeNull();
    expect(labels(bench)).toEqual(['As drawn', ...NAMES, 'Backyard 24']);
    expect(bench.current).toBe(bench.options[4]);
    expect(bench.load(PLAIN, 'plain-24.yaml')).toBeNull();
    expect(labels(bench)).toEqual(['As drawn']);
    expect(bench.undo()).toBe(true);
    expect(bench.options).toHaveLength(5);
    const many = Array.from({ length: 7 }, (_, i) => `  - { name: way ${i}, changes: { fire.target: ${240 + i} °F } }`);
    const full = new Workbench(`${PLAIN}options:\n${many.join('\n')}\n`);
    expect([full.options.length, full.leftOut]).toEqual([MOST_OPTIONS, 8 - MOST_OPTIONS]);
  });
});

const { browser, folder } = await browserAndFolder();

it.skipIf(!browser)('a page with a design in it shows its options solved, and prices where it has them', async () => {
  const { page, wrongs, close } = await openPage(browser!, folder.path, { design: FOUR_WAYS, quiet: true });
  await settled(page);
  const names = await page
    .locator('.option-name')
    .evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
  expect(names).toEqual(['As drawn', ...NAMES]);
  const paid = page.locator('[data-row="payback"] .value');
  await expect
    .poll(() => paid.allTextContents(), { timeout: 60_000 })
    .toEqual(['–', 'at once', 'never', expect.stringMatching(/^\d+ cooks$/)]);
  expect(await page.locator('#left-out').isVisible()).toBe(false);
  expect(wrongs).toEqual([]);
  await close();
});
