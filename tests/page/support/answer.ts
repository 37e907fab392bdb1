import type { Page } from 'playwright-core';
import { expect } from 'vitest';

export const texts = (page: Page, selector: string) => page.locator(selector).allTextContents();
export const flat = (text: string) => text.replace(/\s+/g, ' ');

/** The answer's cells say of grate and draft what the command says. */
export async function expectGrateAndDraft(page: Page, estimate: string): Promise<void> {
  const [grate, lid, even] = await texts(page, '#answer-grate dd');
  expect(lid).toBe('lid 250 °F');
  expect(estimate).toContain(`${grate} in the middle`);
  expect(estimate).toContain(`${even.replace(' end to end', '')} apart`);
  expect(await texts(page, '#answer-draws dd')).toEqual(['yes', expect.stringMatching(/^0\.\d+ in H2O, /), '']);
  expect(estimate).toContain((await texts(page, '#answer-draws .under'))[0].split(',')[0]);
}

const WHOLE = ['#working', '#answer-soaked', '#answer-wood', '#answer-grate', '#answer-draws'];
/** Of the line that stays in sight on a phone: how high it may be [px], and what it holds. */
const GLANCE = 120;
const SHORT = ['#glance-working', ...[1, 2, 3, 4].map((i) => `#glance div:nth-of-type(${i}) b`)];

/**
 * The answer stays in sight, on a phone a short line of it, with the option that is worked on, in the largest letters
 * of the page.
 */
export async function expectInSight(page: Page, phone = false): Promise<void> {
  await page.locator('#add').click();
  for (const to of [0, 600, 1e6]) {
    await page.evaluate((y) => window.scrollTo(0, y), to);
    for (const id of phone && to > 0 ? SHORT : WHOLE) {
      const box = (await page.locator(id).boundingBox())!;
      expect(box.y, id).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height, id).toBeLessThan(0.55 * page.viewportSize()!.height);
    }
    if (!phone || to === 0) continue;
    const line = (await page.locator('#glance').boundingBox())!;
    expect(line.y).toBe(0);
    expect(line.height).toBeLessThanOrEqual(GLANCE);
    expect((await page.locator('#answer').boundingBox())!.y).toBeLessThan(-GLANCE);
    // it is what is found there, not what lies over it, and it says what the whole says
    expect(await page.evaluate(() => document.elementFromPoint(60, 40)?.closest('#glance') !== null)).toBe(true);
    expect(await texts(page, '#glance b')).toEqual(await texts(page, '#readout .big'));
    expect(await texts(page, '#glance-working')).toEqual(await texts(page, '#working option:checked'));
  }
  const { largest, others } = await page.evaluate(() => {
    const size = (each: Element) => parseFloat(getComputedStyle(each).fontSize);
    const all = [...document.body.querySelectorAll('*')].filter(
      (each) => each.textContent !== '' && !each.closest('svg, #buyer'),
    );
    return {
      largest: Math.min(...[...document.querySelectorAll('#readout .big')].map(size)),
      others: Math.max(...all.filter((each) => !each.matches('.big')).map(size)),
    };
  });
  expect(largest).toBeGreaterThan(1.15 * others);
}
