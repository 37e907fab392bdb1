import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import { example, type scratch } from '../../cli/support/run.js';
import { openPage, settled } from './open.js';

/**
 * The mark below which a page counts as one that stands still, fivefold tightened: web.dev, Cumulative Layout Shift,
 * 0.1.
 */
const MOST_SHIFT = 0.02;

/** Moves sliders, one of so many, a little and to both ends: nothing on the page jumps aside meanwhile. */
export async function expectStill(
  browser: Browser,
  folder: ReturnType<typeof scratch>,
  viewport: { width: number; height: number },
  oneOf: number,
): Promise<void> {
  const { page, wrongs, close } = await openPage(browser, folder.path, {
    design: example('offset-with-upright.yaml'),
    file: `still-${viewport.width}.html`,
    context: { viewport },
    quiet: oneOf > 1 && ['step', 'spread'],
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
  const moved = await page.locator('[data-slider]').evaluateAll(async (all, step) => {
    const shifts = (window as unknown as { shifts: { sum: number } }).shifts;
    const frames = (time: number) => new Promise((done) => setTimeout(done, time));
    const told: { slider: string; shift: number }[] = [];
    for (const each of all.filter((_, i) => i % step === 0)) {
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
  }, oneOf);
  expect(moved.length).toBeGreaterThan(20 / oneOf);
  expect(moved.filter(({ shift }) => shift >= MOST_SHIFT)).toEqual([]);
  expect(wrongs).toEqual([]);
  await close();
}
