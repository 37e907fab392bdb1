import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { example, scratch } from '../cli/support/run.js';
import { launchBrowser } from './support/browser.js';
import { expectTextAlone, HOSTILE } from './support/hostile.js';
import { openPage, settled, type } from './support/open.js';
import { PHONE, DESK, axe, type Violation } from './support/viewports.js';

const browser = await launchBrowser();
const folder = scratch();
afterAll(async () => {
  await browser?.close();
  folder.remove();
});

describe.skipIf(!browser)('for everybody', () => {
  it.each([['desk', 'light', DESK]] as const)(
    'no fault of accessibility on a %s, %s',
    async (_, colorScheme, viewport) => {
      const { page, close } = await openPage(browser!, folder.path, {
        design: example('offset-with-upright.yaml'),
        file: `axe-${viewport.width}-${colorScheme}.html`,
        // the checker's script has to get past the page's policy
        context: { viewport, colorScheme, bypassCSP: true },
      });
      await settled(page);
      await page.locator('details').evaluateAll((groups) => {
        for (const group of groups) (group as HTMLDetailsElement).open = true;
      });
      await page.locator('#add').click();
      await type(page, 'chamber.plate', '3');
      await page.locator('#chart svg').waitFor();
      await expect.poll(() => page.locator('.fault:visible').count()).toBe(1);
      await page.addScriptTag({ content: axe });
      const violations = await page.evaluate(async () => {
        const checker = (globalThis as unknown as { axe: { run(o: object): Promise<{ violations: Violation[] }> } })
          .axe;
        const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
        return (await checker.run({ runOnly: { type: 'tag', values: tags } })).violations;
      });
      const told = violations.map(
        ({ id, impact, nodes }) => `${impact} ${id}: ${nodes.map((n) => n.target).join(' ')}`,
      );
      expect(told).toEqual([]);
      await close();
    },
  );

  it.each([['phone', PHONE]] as const)('never scrolls sideways on a %s', async (_, viewport) => {
    const { page, close } = await openPage(browser!, folder.path, {
      design: example('reverse-flow.yaml'),
      file: `wide-${viewport.width}.html`,
      context: { viewport },
    });
    await settled(page);
    for (let i = 0; i < 4; i++) await page.locator('#add').click();
    await page.locator('#chart svg').waitFor();
    const { wide, room } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      room: document.documentElement.clientWidth,
    }));
    expect(wide).toBeLessThanOrEqual(room);
    await close();
  });
});

describe.skipIf(!browser)('hostile designs', () => {
  it.each(HOSTILE.slice(0, 1))('show name %i as text and nothing else', (i) => expectTextAlone(browser!, folder, i));
});
