import type { Browser, CDPSession, Page } from 'playwright-core';
import { beforeAll, expect } from 'vitest';
import { example, type scratch } from '../../cli/support/run.js';
import { onePage } from './setUp.js';
import { PHONE } from './viewports.js';

export type Touched = ReturnType<typeof useTouched>;

/** A page on a phone for the tests of a suite, and a finger on it. */
export function useTouched(browser: Browser, folder: ReturnType<typeof scratch>) {
  const open = onePage(browser, folder.path, {
    design: example('plain-24.yaml'),
    context: { viewport: PHONE, hasTouch: true, isMobile: true },
    quiet: true,
  });
  let finger: CDPSession;
  beforeAll(async () => {
    finger = await open.page.context().newCDPSession(open.page);
  });
  return {
    get page(): Page {
      return open.page;
    },
    get wrongs() {
      return open.wrongs;
    },
    /**
     * Where a slider and its handle are, in the middle of the screen, once the page has come to rest: a swipe lets it
     * glide on.
     */
    reach: (name: string) =>
      open.page.locator(`[data-slider="${name}"]`).evaluate(async (each) => {
        const range = each as HTMLInputElement;
        const frame = () => new Promise(requestAnimationFrame);
        for (let still = 0; still < 6;) {
          const before = window.scrollY;
          range.scrollIntoView({ block: 'center' });
          await frame();
          still = window.scrollY === before ? still + 1 : 0;
        }
        const { left, top, width, height } = range.getBoundingClientRect();
        const handle = left + 8 + ((width - 16) * Number(range.value)) / Number(range.max);
        return { left, width, handle, y: top + height / 2, scrolled: window.scrollY };
      }),
    touch: (kind: 'touchStart' | 'touchMove' | 'touchEnd', x?: number, y?: number) =>
      finger.send('Input.dispatchTouchEvent', { type: kind, touchPoints: x === undefined ? [] : [{ x, y: y! }] }),
  };
}

/** Opens every group of fields, so that all sliders can be reached. */
export const openGroups = (page: Page) =>
  page.locator('#fields details').evaluateAll((all) => {
    for (const each of all) (each as HTMLDetailsElement).open = true;
  });

/** A swipe up or down over any slider scrolls the page and changes nothing. */
export async function expectScrolled({ page, reach, touch }: Touched): Promise<void> {
  const fields = () =>
    page
      .locator('[data-field]')
      .evaluateAll((all) => all.map((each) => [each.getAttribute('data-field'), (each as HTMLInputElement).value]));
  await openGroups(page);
  const before = await fields();
  const names = await page
    .locator('[data-slider]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-slider')!));
  expect(names.length).toBeGreaterThan(15);
  for (const [i, name] of names.entries()) {
    // on the handle, and beside it
    for (const beside of [false, true]) {
      const { left, width, handle, y, scrolled } = await reach(name);
      const x = beside ? left + width * (handle > left + width / 2 ? 0.2 : 0.8) : handle;
      const way = i % 2 === 0 ? -10 : 10;
      await touch('touchStart', x, y);
      for (let step = 1; step <= 8; step++) await touch('touchMove', x + step, y + way * step);
      await touch('touchEnd');
      await expect
        .poll(() => page.evaluate((from) => Math.abs(window.scrollY - from), scrolled), {
          message: name,
          interval: 20,
          timeout: 10_000,
        })
        .toBeGreaterThan(5);
    }
  }
  expect(await fields()).toEqual(before);
  expect(await page.locator('#undo').isDisabled()).toBe(true);
}
