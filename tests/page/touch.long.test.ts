import { describe, expect, it } from 'vitest';
import { expectScrolled, useTouched } from './support/finger.js';
import { settled, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('under a finger', () => {
  const touched = useTouched(browser!, folder);

  it('a swipe up or down over any slider scrolls the page and changes nothing', () => expectScrolled(touched));

  it("bare numbers are taken in the field's own unit, and shown with it", async () => {
    const { page } = touched;
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
});
