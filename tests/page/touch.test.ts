import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openGroups, useTouched } from './support/finger.js';
import { settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('under a finger', () => {
  const touched = useTouched(browser!, folder);
  const { reach, touch } = touched;

  it('groups of fields start closed, behind the answer', async () => {
    const { page } = touched;
    expect(await page.locator('#fields details[open]').count()).toBe(0);
    const order = await page.evaluate(() =>
      ['answer', 'try', 'pit', 'controls'].map((id) => document.getElementById(id)!.getBoundingClientRect().top),
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('a finger that swipes over a handle of the drawing scrolls; once tapped, the handle drags', async () => {
    const { page, touch } = touched;
    const grip = page.locator('[data-grip="stacks[0].height"]');
    await grip.scrollIntoViewIfNeeded();
    const swipe = async () => {
      const box = (await grip.boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await touch('touchStart', x, y);
      for (const dy of [-4, -8, -12, -16, -20]) await touch('touchMove', x, y + dy);
      await touch('touchEnd');
    };
    const told = () => grip.getAttribute('aria-valuetext');
    await swipe();
    expect(await told()).toBe('36 in');
    expect(await page.locator('#undo').isDisabled()).toBe(true);
    await grip.focus();
    await swipe();
    await expect.poll(async () => Number.parseInt((await told())!)).toBeGreaterThan(40);
    await page.locator('#undo').tap();
    await expect.poll(told).toBe('36 in');
  });

  it('a handle dragged sideways moves its slider; a swipe sideways beside it does not', async () => {
    const { page } = touched;
    await openGroups(page);
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
    const { page } = touched;
    const { left, width, y } = await reach('chamber.length');
    await page.touchscreen.tap(left + width - 10, y);
    await expect.poll(() => page.locator('[data-field="chamber.length"]').inputValue()).toBe('61 in');
    await page.touchscreen.tap(left + 5, y);
    await expect.poll(() => page.locator('[data-field="chamber.length"]').inputValue()).toBe('60 in');
  });

  it('everything that is tapped is 44 px high', async () => {
    const { page } = touched;
    const small = await page
      .locator('button:visible, select:visible, summary:visible, .track:visible, input[type="text"]:visible')
      .evaluateAll((all) =>
        all
          .map((each) => ({ what: each.id || each.textContent, height: each.getBoundingClientRect().height }))
          .filter(({ height }) => height < 43.9),
      );
    expect(small).toEqual([]);
  });

  it('names of curves stand once, on their switches, and under the plot in a file alone', async () => {
    const { page } = touched;
    const names = await page.locator('#chart-curves span').allTextContents();
    expect(names).toContain('firebox');
    const drawn = await page.locator('#chart svg text').allTextContents();
    expect(drawn.filter((text) => names.includes(text))).toEqual([]);
    expect(drawn).toContain('Time [min]');
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#chart-svg').tap()]);
    const svg = readFileSync(await download.path(), 'utf8');
    for (const name of names) expect(svg).toContain(`>${name}</text>`);
  });

  it('has done nothing it should not', () => expect(touched.wrongs).toEqual([]));
});
