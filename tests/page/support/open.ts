import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { AsideRequest } from '../../../src/page/protocol.js';
import { pitwright } from '../../cli/support/run.js';

/** The page as it is open, with everything that it should not have done. */
export interface OpenPage {
  page: Page;
  /** console errors, uncaught errors, dialogs and requests that leave the file */
  wrongs: string[];
  close(): Promise<void>;
}

/** How a page is opened. */
interface Opening {
  /** the example or file that is in it; none: the page's own */
  design?: string;
  file?: string;
  context?: BrowserContextOptions;
  before?: () => void;
  /**
   * what is worked out beside the answer keeps a core busy for half a minute: these kinds of it are never begun; true:
   * none
   */
  quiet?: boolean | readonly Aside[];
}

type Aside = AsideRequest['kind'];

/** All that is worked out beside the answer. */
export const ASIDES: readonly Aside[] = ['step', 'cook', 'spread'];

/** Runs in the page: orders of these kinds come back undone, and are left out. */
export function beQuiet(left: readonly string[]): void {
  const Real = window.Worker;
  Object.assign(window, {
    Worker: class extends Real {
      override postMessage(message: { kind?: string; round?: number }) {
        const { kind, round } = message;
        if (!kind || !left.includes(kind)) super.postMessage(message);
        else setTimeout(() => this.dispatchEvent(new MessageEvent('message', { data: { round, kind: 'fault' } })));
      }
    },
  });
}

/** What the command has written of designs, by their place and text: the same each time, as tests/cli/page shows. */
const written = new Map<string, string>();

/** The page as the command writes it, with a design in it if given. */
async function pageOf(file: string, design?: string): Promise<string> {
  const key = design === undefined ? '' : `${design}\n${readFileSync(design, 'utf8')}`;
  const known = written.get(key);
  if (known !== undefined) return known;
  const made = await pitwright(['page', ...(design === undefined ? [] : [design]), '-o', file]);
  if (made.code !== 0) throw new Error(`no page: ${made.stderr}`);
  const html = readFileSync(file, 'utf8');
  written.set(key, html);
  return html;
}

/** Writes the page, with a design in it if given, and opens it from its file. */
export async function openPage(browser: Browser, folder: string, options: Opening = {}): Promise<OpenPage> {
  const file = join(folder, options.file ?? 'page.html');
  writeFileSync(file, await pageOf(file, options.design));
  const context = await browser.newContext({ viewport: { width: 1600, height: 1000 }, ...options.context });
  if (options.quiet) await context.addInitScript(beQuiet, options.quiet === true ? ASIDES : options.quiet);
  if (options.before) await context.addInitScript(options.before);
  const page = await context.newPage();
  const wrongs: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') wrongs.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => wrongs.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => {
    wrongs.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  const own = pathToFileURL(file).href;
  page.on('request', (request) => {
    const url = request.url();
    if (url !== own && !/^(blob|data):/.test(url)) wrongs.push(`request: ${url}`);
  });
  await page.goto(own);
  return { page, wrongs, close: () => context.close() };
}

/** Waits until the numbers on the page are those of the newest design. */
export async function settled(page: Page): Promise<void> {
  await page.locator('html[data-answered]').waitFor({ state: 'attached' });
  await page.locator('#verdict:not(.waiting)').waitFor({ state: 'attached' });
}

/** Every number of the table's first column, by row. */
export async function numbers(page: Page): Promise<Record<string, string>> {
  return page
    .locator('#number-table tr[data-row]')
    .evaluateAll((rows) =>
      Object.fromEntries(
        rows.map((row) => [row.getAttribute('data-row'), row.querySelector('.value')?.textContent ?? '']),
      ),
    );
}

/** The design that the page saves. */
export async function saved(page: Page): Promise<{ text: string; name: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save').click()]);
  return { text: readFileSync(await download.path(), 'utf8'), name: download.suggestedFilename() };
}

/** Sets a slider to a place, as a drag does. */
export async function slide(page: Page, field: string, place: number): Promise<void> {
  await page.locator(`[data-slider="${field}"]`).evaluate((slider, value) => {
    (slider as HTMLInputElement).value = String(value);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  }, place);
}

/** Types into a field and leaves it. */
export async function type(page: Page, field: string, text: string): Promise<void> {
  const input = page.locator(`[data-field="${field}"]`);
  await input.fill(text);
  await input.blur();
}
