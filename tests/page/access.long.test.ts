import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectTextAlone, HOSTILE } from './support/hostile.js';
import { numbers, openPage, settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { DESK, expectAccessible, expectNarrow, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('for everybody', () => {
  it.each([
    ['phone', 'light', PHONE],
    ['phone', 'dark', PHONE],
    ['desk', 'dark', DESK],
  ] as const)('no fault of accessibility on a %s, %s', (_, colorScheme, viewport) =>
    expectAccessible(browser!, folder, colorScheme, viewport),
  );

  it.each([
    ['phone', PHONE],
    ['tablet', { width: 820, height: 1100 }],
    ['desk', DESK],
  ] as const)('never scrolls sideways on a %s', (_, viewport) => expectNarrow(browser!, folder, viewport));

  it('works by keyboard alone, in the order of the page, with the focus to be seen', async () => {
    const { page, close } = await openPage(browser!, folder.path, { design: example('plain-24.yaml'), quiet: true });
    await settled(page);
    const before = await numbers(page);
    const focused = () => page.evaluate(() => document.activeElement?.id || document.activeElement?.tagName || '');
    const order: string[] = [];
    while (order.at(-1) !== 'c-firebox-length' && order.length < 40) {
      await page.keyboard.press('Tab');
      order.push(await focused());
    }
    // the answer before what changes it; what can't be taken back yet is passed over
    expect(order.slice(0, 5)).toEqual(['A', 'save', 'print', 'SUMMARY', 'working']);
    expect(order.slice(-4)).toEqual([
      'c-firebox-shape',
      'c-firebox-diameter',
      'c-firebox-diameter-slider',
      'c-firebox-length',
    ]);
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
    expect(outline).toBe('solid');
    await page.keyboard.press('Tab');
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(await page.locator('[data-field="firebox.length"]').inputValue()).toBe('28 in');
    const slider = page.locator('[data-slider="firebox.length"]');
    expect(await slider.getAttribute('aria-valuetext')).toBe('28 in');
    expect((await numbers(page))['hold.wood_kg_per_s']).not.toBe(before['hold.wood_kg_per_s']);
    await close();
  });

  it('tells a listener the verdict, once and only when the hand rests', async () => {
    const { page, close } = await openPage(browser!, folder.path, { design: example('plain-24.yaml') });
    await settled(page);
    const status = page.getByRole('status');
    await expect.poll(() => status.textContent(), { timeout: 10_000 }).toContain('Holding 250 °F');
    const told = await page.evaluate(async () => {
      let changes = 0;
      new MutationObserver(() => changes++).observe(document.getElementById('status')!, { childList: true });
      const slider = document.querySelector<HTMLInputElement>('[data-slider="chamber.length"]')!;
      for (let place = 40; place < 60; place++) {
        slider.value = String(place);
        slider.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((done) => setTimeout(done, 20));
      }
      const during = changes;
      // however slow the machine: until it is told, and then for long enough that a second time would be seen
      while (changes === during) await new Promise((done) => setTimeout(done, 50));
      await new Promise((done) => setTimeout(done, 2000));
      return { during, after: changes };
    });
    expect(told).toEqual({ during: 0, after: 1 });
    await close();
  });

  it('holds still for those who ask for it', async () => {
    const { page, close } = await openPage(browser!, folder.path, { context: { reducedMotion: 'reduce' } });
    await settled(page);
    const moving = await page.evaluate(() => {
      document.getElementById('verdict')!.classList.add('waiting');
      return (
        document.getAnimations().length +
        (getComputedStyle(document.getElementById('verdict')!).transitionDuration === '0s' ? 0 : 1)
      );
    });
    expect(moving).toBe(0);
    await close();
  });

  it('says so plainly where a browser is too old', async () => {
    const { page, close } = await openPage(browser!, folder.path, {
      before: () => Reflect.deleteProperty(globalThis, 'DecompressionStream'),
    });
    await expect.poll(() => page.locator('#waiting').textContent()).toContain('too old for this page');
    await close();
  });
});

describe.skipIf(!browser)('hostile designs', () => {
  it.each(HOSTILE)('show name %i as text and nothing else', (i) => expectTextAlone(browser!, folder, i));

  it('stays upright at the limits of every size', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, { design: example('plain-24.yaml') });
    await settled(page);
    const sliders = await page.locator('input[type="range"]').all();
    expect(sliders.length).toBeGreaterThan(12);
    for (const slider of sliders) {
      const field = (await slider.getAttribute('data-slider'))!;
      const start = await page.locator(`[data-field="${field}"]`).inputValue();
      await slider.evaluate((each) => {
        const range = each as HTMLInputElement;
        for (const place of [range.min, range.max]) {
          range.value = place;
          range.dispatchEvent(new Event('input', { bubbles: true }));
        }
      });
      await settled(page);
      expect(await page.locator('main').textContent()).not.toMatch(/NaN|Infinity|undefined|\[object/);
      await page.locator(`[data-field="${field}"]`).evaluate((each, text) => {
        (each as HTMLInputElement).value = text;
        each.dispatchEvent(new Event('change', { bubbles: true }));
      }, start);
    }
    await settled(page);
    expect(wrongs).toEqual([]);
    await close();
  });
});
