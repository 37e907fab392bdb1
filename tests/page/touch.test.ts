import type { CDPSession, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { settled, type } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';
import { PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('under a finger', () => {
  const open = onePage(browser!, folder.path, {
    design: example('plain-24.yaml'),
    context: { viewport: PHONE, hasTouch: true, isMobile: true },
  });
  let page: Page;
  let finger: CDPSession;
  beforeAll(async () => {
    ({ page } = open);
    finger = await page.context().newCDPSession(page);
  });

  const fields = () =>
    page
      .locator('[data-field]')
      .evaluateAll((all) => all.map((each) => [each.getAttribute('data-field'), (each as HTMLInputElement).value]));

  /** Where a slider and its handle are, in the middle of the screen. */
  const reach = async (name: string) => {
    const slider = page.locator(`[data-slider="${name}"]`);
    return slider.evaluate((each) => {
      const range = each as HTMLInputElement;
      range.scrollIntoView({ block: 'center' });
      const { left, top, width, height } = range.getBoundingClientRect();
      const handle = left + 8 + ((width - 16) * Number(range.value)) / Number(range.max);
      return { left, width, handle, y: top + height / 2, scrolled: window.scrollY };
    });
  };
  const touch = (kind: 'touchStart' | 'touchMove' | 'touchEnd', x?: number, y?: number) =>
    finger.send('Input.dispatchTouchEvent', { type: kind, touchPoints: x === undefined ? [] : [{ x, y: y! }] });

  it('groups of fields start closed, behind the answer', async () => {
    expect(await page.locator('#fields details[open]').count()).toBe(0);
    const order = await page.evaluate(() =>
      ['answer', 'try', 'pit', 'controls'].map((id) => document.getElementById(id)!.getBoundingClientRect().top),
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('a swipe up or down over any slider scrolls the page and changes nothing', async () => {
    await page.locator('#fields details').evaluateAll((all) => {
      for (const each of all) (each as HTMLDetailsElement).open = true;
    });
    const before = await fields();
    const names = await page
      .locator('[data-slider]')
      .evaluateAll((all) => all.map((each) => each.getAttribute('data-slider')!));
    expect(names.length).toBeGreaterThan(15);
    for (const name of names) {
      // on the handle, and beside it
      for (const beside of [false, true]) {
        const { left, width, handle, y, scrolled } = await reach(name);
        const x = beside ? left + width * (handle > left + width / 2 ? 0.2 : 0.8) : handle;
        const way = names.indexOf(name) % 2 === 0 ? -10 : 10;
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
  });

  it('a handle dragged sideways moves its slider; a swipe sideways beside it does not', async () => {
    const field = page.locator('[data-field="chamber.length"]');
    const { left, handle, y } = await reach('chamber.length');
    await touch('touchStart', left + 2, y);
    for (let x = left + 2; x < left + 60; x += 10) await touch('touchMove', x, y);
    await touch('touchEnd');
    expect(await field.inputValue()).toBe('60 in');
    await touch('touchStart', handle, y);
    for (let step = 1; step <= 6; step++) await touch('touchMove', handle + 10 * step, y + step);
    await touch('touchEnd');
    expect(parseFloat(await field.inputValue())).toBeGreaterThan(70);
    await settled(page);
    // the whole drag is one step back
    await page.locator('#undo').tap();
    await settled(page);
    expect(await field.inputValue()).toBe('60 in');
    expect(await page.locator('#undo').isDisabled()).toBe(true);
  });

  it('a tap beside the handle is one step that way', async () => {
    const { left, width, y } = await reach('chamber.length');
    await page.touchscreen.tap(left + width - 10, y);
    await expect.poll(() => page.locator('[data-field="chamber.length"]').inputValue()).toBe('61 in');
    await page.touchscreen.tap(left + 5, y);
    await expect.poll(() => page.locator('[data-field="chamber.length"]').inputValue()).toBe('60 in');
  });

  it('everything that is tapped is 44 px high', async () => {
    const small = await page
      .locator('button:visible, select:visible, summary:visible, .track:visible, input[type="text"]:visible')
      .evaluateAll((all) =>
        all
          .map((each) => ({ what: each.id || each.textContent, height: each.getBoundingClientRect().height }))
          .filter(({ height }) => height < 43.9),
      );
    expect(small).toEqual([]);
  });

  it("bare numbers are taken in the field's own unit, and shown with it", async () => {
    for (const [field, typed, shown] of [
      ['chamber.plate', '5/16', '5/16 in'],
      ['chamber.diameter', '30', '30 in'],
      ['fire.target', '275', '275 °F'],
      ['firebox.intakes[0].open', '80', '80 %'],
      ['site.wind', '7.5', '7.5 mph'],
      ['chamber.length', '1500 mm', '1500 mm'],
      ['chamber.length', '1600', '1600 mm'],
    ]) {
      await type(page, field, typed);
      await expect.poll(() => page.locator(`[data-field="${field}"]`).inputValue(), { message: field }).toBe(shown);
      expect(await page.locator('.fault:visible').count(), field).toBe(0);
    }
    await settled(page);
    expect(await page.locator('#title').textContent()).toBe('Backyard 24');
  });

  it('has done nothing it should not', () => expect(open.wrongs).toEqual([]));
});
