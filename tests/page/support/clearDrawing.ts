import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import { example } from '../../cli/support/run.js';
import { openPage, settled } from './open.js';
import { struckTexts } from './struck.js';
import { DESK, PHONE } from './viewports.js';

const TABLET = { width: 820, height: 1100 };

/** On a desk, a tablet and a phone no text of an example's drawing crosses the outline of a part. */
export async function expectClear(browser: Browser, folder: string, name: string): Promise<void> {
  const { page, wrongs, close } = await openPage(browser, folder, {
    design: example(`${name}.yaml`),
    file: `drawing-${name}.html`,
    quiet: true,
  });
  await settled(page);
  const texts = page.locator('#drawing svg text');
  for (const viewport of [DESK, TABLET, PHONE]) {
    const before = await page.locator('#drawing svg').getAttribute('width');
    await page.setViewportSize(viewport);
    if (viewport !== DESK) await expect.poll(() => page.locator('#drawing svg').getAttribute('width')).not.toBe(before);
    expect(await texts.count(), `${viewport.width}`).toBeGreaterThan(15);
    expect(await struckTexts(page), `${viewport.width} px`).toEqual([]);
  }
  expect(wrongs).toEqual([]);
  await close();
}
