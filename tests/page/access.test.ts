import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectTextAlone, HOSTILE } from './support/hostile.js';
import { browserAndFolder, onePage } from './support/setUp.js';
import { DESK, expectAccessible } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('for everybody', () => {
  it.each([['desk', 'light', DESK]] as const)('no fault of accessibility on a %s, %s', (_, colorScheme, viewport) =>
    expectAccessible(browser!, folder, colorScheme, viewport, true),
  );

  const forced = onePage(browser!, folder.path, {
    design: example('plain-24.yaml'),
    file: 'forced.html',
    quiet: true,
    context: { viewport: DESK, forcedColors: 'active' },
  });

  it.each(['light', 'dark'] as const)('is read in colours that a person has set, on %s', async (colorScheme) => {
    const { page, wrongs } = forced;
    await page.emulateMedia({ colorScheme });
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
    expect(wrongs).toEqual([]);
  });
});

describe.skipIf(!browser)('hostile designs', () => {
  it.each(HOSTILE.slice(0, 1))('show name %i as text and nothing else', (i) => expectTextAlone(browser!, folder, i));
});
