import { readFileSync, writeFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import { example, type scratch } from '../../cli/support/run.js';
import { openPage, settled } from './open.js';

const NAMES = [
  `<script>document.title='owned'</script><img src=x onerror="document.title='owned'">`,
  `"><svg onload=alert(1)> \\" ' \` \${7*7} {{7*7}} --> ]]>`,
  '\u202etxt.exe\u202c \u2066אבג\u2069 \u0000\u0007 😀🔥👩‍🚒',
  'W'.repeat(200),
];

/** Names that would like to be more than text, by their number. */
export const HOSTILE = NAMES.map((_, i) => i);

/** A page of a design so named shows the name as text, on a phone as well, and does nothing that it says. */
export async function expectTextAlone(browser: Browser, folder: ReturnType<typeof scratch>, i: number): Promise<void> {
  const name = NAMES[i];
  const plain = readFileSync(example('plain-24.yaml'), 'utf8');
  const quoted = JSON.stringify(name.replace(/[\u0000\u0007]/g, ''));
  const text = plain
    .replace(/^name: .*$/m, () => `name: ${quoted}`)
    .replace(/^shop: .*$/m, () => `shop: ${quoted}`)
    .replace(/^job: .*$/m, () => `job: ${quoted}`);
  writeFileSync(folder.at(`hostile-${i}.yaml`), text);
  const { page, wrongs, close } = await openPage(browser, folder.path, {
    design: folder.at(`hostile-${i}.yaml`),
    file: `hostile-${i}.html`,
    context: { viewport: { width: 375, height: 667 } },
    quiet: ['step', 'spread'],
  });
  await settled(page);
  await page.locator('#add').click();
  await page.locator('.option-name').first().fill(name);
  await page.locator('[data-chart="options"]').click();
  await page.locator('#chart svg[aria-label^="Options"]').waitFor();
  await page.locator('#buyer figure').first().waitFor({ state: 'attached', timeout: 20_000 });
  expect(await page.title()).toBe('pitwright');
  const inside = 'main script, #buyer script, header script, img, iframe, main [onload], svg svg, [onerror]';
  expect(await page.locator(inside).count()).toBe(0);
  const title = (await page.locator('#title').textContent())!;
  expect(title.length).toBeGreaterThan(5);
  expect(title).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
  if (i < 2) expect(name.startsWith(title.slice(0, 40))).toBe(true);
  const { wide, room } = await page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    room: document.documentElement.clientWidth,
  }));
  expect(wide).toBeLessThanOrEqual(room);
  const sheet = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(sheet.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
  expect(wrongs).toEqual([]);
  await close();
}
