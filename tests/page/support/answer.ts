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

/** The answer stays in sight, with the option that is worked on, in the largest letters of the page. */
export async function expectInSight(page: Page): Promise<void> {
  await page.locator('#add').click();
  for (const to of [0, 600, 1e6]) {
    await page.evaluate((y) => window.scrollTo(0, y), to);
    for (const id of ['#working', '#answer-soaked', '#answer-wood', '#answer-grate', '#answer-draws']) {
      const box = (await page.locator(id).boundingBox())!;
      expect(box.y, id).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height, id).toBeLessThan(0.55 * page.viewportSize()!.height);
    }
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
