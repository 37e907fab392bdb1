import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import { example, type scratch } from '../../cli/support/run.js';
import { expectCommandsNumbers } from './commandNumbers.js';
import { openPage, settled, type } from './open.js';

/** Where a page finds no worker it computes by itself what the command prints. */
export async function expectItself(
  browser: Browser,
  folder: ReturnType<typeof scratch>,
  before: () => void,
): Promise<void> {
  const { page, close } = await openPage(browser, folder.path, { design: example('plain-24.yaml'), before });
  await settled(page);
  await type(page, 'chamber.plate', '3/8 in');
  await settled(page);
  await expectCommandsNumbers(page);
  await page.locator('#chart svg').waitFor();
  await expect.poll(() => page.locator('#try-all p').first().textContent()).toContain('instead of what is drawn');
  await close();
}
