import { describe, expect, it } from 'vitest';
import { CHART_LABELS } from '../../src/page/chartLabels.js';
import { chartPicture } from '../../src/page/chartPicture.js';
import type { ChartId } from '../../src/page/protocol.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { cooked } from '../../src/study/events/cooked.js';
import { exampleDesign } from '../support/examples.js';
import { example } from '../cli/support/run.js';
import { openPage, saved, settled, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { SHOP } from './support/shopUnits.js';

const { browser, folder } = await browserAndFolder();

describe('units by choice', () => {
  it('charts have an axis of the units chosen, or one of each, and a reading is the same in all', () => {
    const design = exampleDesign('plain-24.yaml');
    const result = estimate(design, { further: (solution) => cooked(solution, true) });
    const options = [{ label: 'As drawn', result }];
    for (const chart of Object.keys(CHART_LABELS) as ChartId[]) {
      const [both, shop, si] = (['both', 'shop', 'si'] as const).map((units) => {
        const { scene, plot, caption } = chartPicture({
          kind: 'chart',
          chart,
          width: 700,
          units,
          result,
          options,
          hidden: [],
        });
        const texts = scene!.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
        return { words: [...texts, caption], plot };
      });
      const axes = ({ words }: typeof both) => words.filter((text) => / \[(?!min|h|%)[^\]]+\]$/.test(text));
      expect(axes(both), chart).toHaveLength(2);
      expect([axes(shop)[0], axes(si)[0]]).toEqual(axes(both));
      expect(
        si.words.filter((text) => SHOP.test(text)),
        chart,
      ).toEqual([]);
      expect(
        shop.words.filter((text) => / °C|\bkW\b|\bPa\b/.test(text)),
        chart,
      ).toEqual([]);
      // where a curve ends it is read as what it is, whichever axis it stands on
      const ends = ({ plot }: typeof both) => plot?.curves.map(({ at }) => at.findLast((each) => each)![1]);
      ends(si)?.forEach((value, i) => {
        const other = ends(both)![i];
        expect(Math.abs(value - other), chart).toBeLessThan(0.003 * Math.abs(other) + 1e-6);
      });
    }
  });

  it.skipIf(!browser)('is one choice for strip, sentences, drawing and steps, and is kept', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, {
      design: example('plain-24.yaml'),
      quiet: ['spread'],
    });
    await settled(page);
    await page.locator('#more summary').click();
    await page.locator('#units').selectOption('si');
    await expect.poll(() => page.locator('#answer-wood .big').textContent()).toMatch(/kg\/h$/);
    for (const place of ['#readout', '#sentences', '#title-block', '#drawing-title', '#number-table']) {
      expect(await page.locator(place).innerText(), place).not.toMatch(SHOP);
    }
    // a field says what the file says in the system that is read, and a bare number is taken in it
    const length = page.locator('[data-field="chamber.length"]');
    expect(await length.inputValue()).toBe('1,524 mm');
    expect(await page.locator('[data-field="firebox.plate"]').inputValue()).toBe('6.35 mm');
    await type(page, 'chamber.length', '1600');
    expect(await length.inputValue()).toBe('1600 mm');
    await page.locator('#undo').click();
    expect(await length.inputValue()).toBe('1,524 mm');
    expect((await saved(page)).text).toContain('length: 60 in');
    await settled(page);
    const drawn = await page.locator('#drawing svg text').allTextContents();
    const chart = page.locator('#curves');
    await expect.poll(() => chart.textContent()).toContain('[°C]');
    expect(await chart.textContent()).not.toMatch(SHOP);
    // the legend names both
    expect(drawn.filter((text) => SHOP.test(text))).toEqual(['°F gas']);
    await expect
      .poll(() => page.locator('#try-all-thinner-words').textContent(), { timeout: 60_000 })
      .toMatch(/\skg\s/);
    // the sheet as it is printed: sizes and names that are the trade's own stay
    const sheet = page.locator('#buyer');
    await expect.poll(() => sheet.textContent(), { timeout: 60_000 }).toContain('121 °C');
    for (const place of ['.lead', 'p.small, .small p']) {
      expect((await sheet.locator(place).allTextContents()).join(' '), place).not.toMatch(SHOP);
    }
    await page.reload();
    await settled(page);
    expect(await page.locator('#units').inputValue()).toBe('si');
    expect(await page.locator('#answer-wood .big').textContent()).toMatch(/kg\/h$/);
    expect(wrongs).toEqual([]);
    await close();
  });
});
