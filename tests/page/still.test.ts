import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { openPage, settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { DESK, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

/** The mark below which a page counts as one that stands still, fivefold tightened: web.dev, Cumulative Layout Shift, 0.1. */
const MOST_SHIFT = 0.02;

describe.skipIf(!browser)('a page that stands still', () => {
  it.each([
    ['desk', DESK],
    ['phone', PHONE],
  ] as const)('while any slider moves, on a %s', async (name, viewport) => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, {
      design: example('offset-with-upright.yaml'),
      file: `still-${name}.html`,
      context: { viewport },
    });
    await settled(page);
    await page.locator('#fields details').evaluateAll((all) => {
      for (const each of all) (each as HTMLDetailsElement).open = true;
    });
    await page.evaluate(() => {
      const shifts = { sum: 0 };
      Object.assign(window, { shifts });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as unknown as { value: number }[]) shifts.sum += entry.value;
      }).observe({ type: 'layout-shift' });
    });
    const moved = await page.locator('[data-slider]').evaluateAll(async (all) => {
      const shifts = (window as unknown as { shifts: { sum: number } }).shifts;
      const frames = (time: number) => new Promise((done) => setTimeout(done, time));
      const told: { slider: string; shift: number }[] = [];
      for (const each of all) {
        const slider = each as HTMLInputElement;
        slider.scrollIntoView({ block: 'center' });
        await frames(150);
        const start = Number(slider.value);
        const last = Number(slider.max);
        shifts.sum = 0;
        // a little either way, then to both ends and back
        for (const place of [start + 1, start + 2, start - 1, last, 0, Math.round(last / 2), start]) {
          slider.value = String(place);
          slider.dispatchEvent(new Event('input', { bubbles: true }));
          await frames(120);
        }
        told.push({ slider: slider.dataset.slider!, shift: shifts.sum });
      }
      return told;
    });
    expect(moved.length).toBeGreaterThan(20);
    expect(moved.filter(({ shift }) => shift >= MOST_SHIFT)).toEqual([]);
    expect(wrongs).toEqual([]);
    await close();
  });
});
