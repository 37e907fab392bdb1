import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { openPage, settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { struckTexts } from './support/struck.js';
import { DESK, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

const TABLET = { width: 820, height: 1100 };

describe.skipIf(!browser)('the drawing on the page', () => {
  it.each(['offset-with-upright', 'tank-on-trailer', 'reverse-flow'])(
    'of %s: no text crosses the outline of a part, on a desk, a tablet and a phone',
    async (name) => {
      const { page, wrongs, close } = await openPage(browser!, folder.path, {
        design: example(`${name}.yaml`),
        file: `drawing-${name}.html`,
        quiet: true,
      });
      await settled(page);
      const texts = page.locator('#drawing svg text');
      for (const viewport of [DESK, TABLET, PHONE]) {
        const before = await page.locator('#drawing svg').getAttribute('width');
        await page.setViewportSize(viewport);
        if (viewport !== DESK)
          await expect.poll(() => page.locator('#drawing svg').getAttribute('width')).not.toBe(before);
        expect(await texts.count(), `${viewport.width}`).toBeGreaterThan(15);
        expect(await struckTexts(page), `${viewport.width} px`).toEqual([]);
      }
      expect(wrongs).toEqual([]);
      await close();
    },
  );
});
