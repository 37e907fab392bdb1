import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import type { PaperName } from '../../src/draw/theme.js';
import type { Comparison } from '../../src/study/compare/compare.js';
import { launchBrowser } from './support/browser.js';
import { expectWhole } from './support/printed.js';
import { canReadPdf, reachOfPages, readPdf } from '../report/support/poppler.js';
import { asDrawn, compared, designOf, documentFrom, htmlOf } from '../report/support/reports.js';

const browser: Browser | null = await launchBrowser();
const readable = canReadPdf();
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
