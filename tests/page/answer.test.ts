import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectInSight, texts } from './support/answer.js';
import { settled } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');

describe.skipIf(!browser)('the answer', () => {
  const open = onePage(browser!, folder.path, { design: PLAIN, quiet: true });

  it('has a chart that is saved as lines and as a picture', async () => {
    const { page } = open;
    await page.locator('#chart svg').waitFor();
    const saved = async (kind: string) => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.locator(`#chart-${kind}`).click()]);
      expect(download.suggestedFilename()).toBe(`backyard-24-thermometers.${kind}`);
      return readFileSync(await download.path());
    };
    const svg = (await saved('svg')).toString();
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    // colours of its own, not the page's
    expect(svg).not.toContain('var(--');
    const png = await saved('png');
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(png.readUInt32BE(16)).toBe(Math.round(2 * Number(/ width="([\d.]+)"/.exec(svg)![1])));
  });

  it.each(['light', 'dark'] as const)('is read in colours that a person has set, on %s', async (colorScheme) => {
    const { page } = open;
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    expect(await page.evaluate(() => matchMedia('(forced-colors: active)').matches)).toBe(true);
    await page.locator('#chart svg').waitFor();
    const faint = await page.evaluate(() => {
      const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number);
      const light = (colour: string) => {
        const [r, g, b] = channels(colour).map((c) => (c <= 10.31 ? c / 3294.6 : ((c / 255 + 0.055) / 1.055) ** 2.4));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const paper = light(getComputedStyle(document.querySelector('#curves')!).backgroundColor);
      const against = (colour: string) => {
        const [low, high] = [light(colour), paper].sort((a, b) => a - b);
        return (high + 0.05) / (low + 0.05);
      };
      const told: string[] = [];
      for (const text of document.querySelectorAll('#chart svg text')) {
        const ratio = against(getComputedStyle(text).fill);
        if (ratio < 4.5) told.push(`${text.textContent}: ${ratio.toFixed(1)}`);
      }
      // curves of the chart, and outlines of the drawing
      const lines = [...document.querySelectorAll('#chart svg path, #drawing svg path')].filter(
        (path) => Number(path.getAttribute('stroke-width')) >= 2,
      );
      for (const line of lines) {
        const ratio = against(getComputedStyle(line).stroke);
        if (ratio < 3) told.push(`a line ${line.getAttribute('stroke')}: ${ratio.toFixed(1)}`);
      }
      return { told, lines: lines.length, texts: document.querySelectorAll('#chart svg text').length };
    });
    expect(faint.told).toEqual([]);
    expect(faint.lines).toBeGreaterThan(8);
    expect(faint.texts).toBeGreaterThan(15);
    // what is pressed is told apart by more than a colour of ours
    const looks = await page.locator('#chart-choice button').evaluateAll((all) =>
      all.slice(0, 2).map((each) => {
        const { backgroundColor, color } = getComputedStyle(each);
        return `${backgroundColor} ${color}`;
      }),
    );
    expect(looks[0]).not.toBe(looks[1]);
    await page.emulateMedia({ colorScheme: null, forcedColors: null });
  });

  it('stays in sight on a desk, with the option that is worked on, in the largest letters of the page', () =>
    expectInSight(open.page));

  it('a step is one tap: an option of its own, named by what it changes', async () => {
    const { page } = open;
    const working = page.locator('#working');
    await working.selectOption({ index: 0 });
    await page.locator('[data-try="all-thinner"]').click();
    expect(await working.locator('option:checked').textContent()).toBe('All plate 3/16 in');
  });

  it('does not wait for an option that was left before its numbers came', async () => {
    const { page } = open;
    await page.locator('#working').selectOption({ index: 0 });
    await settled(page);
  });

  it('is printed as it stands on the screen, also right after an edit', async () => {
    const { page } = open;
    await page.locator('#start-over').evaluate((button) => (button as HTMLButtonElement).click());
    await settled(page);
    await page.evaluate(() =>
      Object.assign(window, {
        printed: [],
        print: () =>
          (window as unknown as { printed: string[] }).printed.push(
            document.getElementById('buyer')!.textContent ?? '',
          ),
      }),
    );
    await page.locator('#buyer figure').first().waitFor({ state: 'attached', timeout: 60_000 });
    expect(await page.locator('#buyer').textContent()).not.toContain('5/8 in');
    const menu = await page.locator('[data-field="chamber.plate"]').evaluate((each) => {
      const field = each as HTMLInputElement;
      field.value = '5/8 in';
      field.dispatchEvent(new Event('input', { bubbles: true }));
      document.getElementById('print')!.click();
      return document.getElementById('buyer')!.textContent;
    });
    // what the browser's own menu would print has nothing of the design before
    expect(menu).toBe('');
    const printed = () => page.evaluate(() => (window as unknown as { printed: string[] }).printed);
    await expect.poll(printed, { timeout: 60_000 }).toHaveLength(1);
    const [steel] = await texts(page, 'tr[data-row="steel_kg"] .value');
    expect((await printed())[0]).toContain('5/8 in');
    expect((await printed())[0]).toContain(steel.split(' (')[0]);
  });

  it('has done nothing it should not', () => expect(open.wrongs).toEqual([]));
});
