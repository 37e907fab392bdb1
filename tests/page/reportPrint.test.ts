import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, describe, it } from 'vitest';
import { launchBrowser } from './support/browser.js';
import { expectWhole } from './support/printed.js';
import { asDrawn, compared, designOf } from '../report/support/reports.js';

const browser: Browser | null = await launchBrowser();
const folder = mkdtempSync(join(tmpdir(), 'pitwright-print-'));
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe.skipIf(!browser)('the HTML report in a browser', () => {
  it.each([['one design', () => compared(asDrawn(designOf('offset-with-upright')))]])(
    '%s: nothing goes wrong, and the buyer has all of it on one page',
    (_, make) => expectWhole(browser!, folder, make()),
  );
});
