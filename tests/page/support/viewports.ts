import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import { example, type scratch } from '../../cli/support/run.js';
import { openPage, settled, type } from './open.js';

export const PHONE = { width: 375, height: 667 };
export const DESK = { width: 1600, height: 1000 };
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  impact: string | null;
  nodes: { target: unknown[] }[];
}

type Folder = ReturnType<typeof scratch>;
type Viewport = typeof PHONE;

/** The page with all of it open, an option and a fault shown has none that the checker finds. */
export async function expectAccessible(
  browser: Browser,
  folder: Folder,
  colorScheme: 'light' | 'dark',
  viewport: Viewport,
  quiet = false,
): Promise<void> {
  const { page, close } = await openPage(browser, folder.path, {
    design: example('offset-with-upright.yaml'),
    quiet: quiet && ['step', 'spread'],
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
  // a field that is half under the answer, which stays in sight, is no small target
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.addScriptTag({ content: axe });
  const violations = await page.evaluate(async () => {
    const checker = (globalThis as unknown as { axe: { run(o: object): Promise<{ violations: Violation[] }> } }).axe;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    return (await checker.run({ runOnly: { type: 'tag', values: tags } })).violations;
  });
  const told = violations.map(({ id, impact, nodes }) => `${impact} ${id}: ${nodes.map((n) => n.target).join(' ')}`);
  expect(told).toEqual([]);
  await close();
}

/** The page with as many options as it takes is no wider than its window. */
export async function expectNarrow(browser: Browser, folder: Folder, viewport: Viewport): Promise<void> {
  const { page, close } = await openPage(browser, folder.path, {
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
}
