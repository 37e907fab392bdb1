import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Comparison } from '../../src/study/compare/compare.js';
import { launchBrowser } from './support/browser.js';
import { carriedIn } from './support/carried.js';
import { brokenOnPhone, expectWhole, printed } from './support/printed.js';
import { canReadPdf, readPdf } from '../report/support/poppler.js';
import { asDrawn, compared, designOf, documentFrom, htmlOf, plates, renamed } from '../report/support/reports.js';

const browser: Browser | null = await launchBrowser();
const readable = canReadPdf();
const folder = mkdtempSync(join(tmpdir(), 'pitwright-print-'));
let six: Comparison;
let upright: Comparison;
beforeAll(() => {
  upright = carriedIn('offset-with-upright', ['1/4 in', '1/8 in', '3/8 in']);
  six = compared(plates(['1/4 in', '1/8 in', '3/16 in', '5/16 in', '3/8 in', '1/2 in']));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The same, half of it never reaching the target, each option with more warnings than a page has room for. */
function troubled({ options, ...comparison }: Comparison): Comparison {
  const message =
    'the stack draws too little for this fire, so that smoke leaves by the door and the steel above it runs hot: give it more stack';
  const codes = ['back-draft', 'door-gap-smoke', 'paint-above-limit', 'new-one', 'new-two', 'little-air'];
  return {
    ...comparison,
    options: options.map(({ result, ...option }, i) => ({
      ...option,
      shortfall:
        i % 2 === 0 ? { code: (['not-held', 'not-reached', 'not-soaked'] as const)[i / 2], reaches_K: 380 } : null,
      result: {
        ...result,
        warnings: codes.map((code) => ({
          code,
          where: 'chamber door',
          fire: 'assumed fire' as const,
          message,
          value: null,
          limits: null,
        })),
      },
    })),
  };
}

describe.skipIf(!browser)('the HTML report in a browser', () => {
  it.each([
    ['six options', () => six],
    ['six options with one long word for a name', () => renamed(six, 'x'.repeat(400))],
    ['six options with long names', () => renamed(six, 'Backyard smoker of the old shop '.repeat(9))],
    ['six options in trouble', () => troubled(six)],
    ['four options in trouble', () => troubled(compared(plates(['1/4 in', '1/8 in', '3/16 in', '5/16 in'])))],
    [
      'a pit on a trailer, with handles and prices, in three plates',
      () => carriedIn('plain-24', ['1/4 in', '1/8 in', '3/8 in']),
    ],
    ['an upright on a trailer, with handles and prices, in three plates', () => upright],
    ['one design', () => compared(asDrawn(designOf('offset-with-upright')))],
    ['one design in trouble', () => troubled(compared(asDrawn(designOf('offset-with-upright'))))],
    ['right-to-left names', () => renamed(six, 'مدخنة الفناء الخلفي')],
  ])('%s: nothing goes wrong, and the buyer has all of it on one page', (_, make) =>
    expectWhole(browser!, folder, make()),
  );

  it('a phone breaks no word and no number of an upright on a trailer, nor parts one from its unit', async () => {
    expect(await brokenOnPhone(browser!, folder, upright)).toEqual([]);
  });

  it('prints A4 where that is asked for', async () => {
    const { measured, pdf } = await printed(browser!, folder, six, 'a4');
    expect(measured.over).toBeLessThanOrEqual(0.5);
    if (!readable) return;
    const { pages, width } = readPdf(pdf);
    expect(Math.abs(width - 595.3)).toBeLessThan(1);
    expect(pages[1]).toContain('Every input as read');
  });

  it('has no fault that a checker of accessibility finds', async () => {
    const file = join(folder, 'checked.html');
    writeFileSync(file, htmlOf(documentFrom(six)));
    // the report's own policy allows no script, the checker's neither
    const context = await browser!.newContext({ bypassCSP: true });
    const page = await context.newPage();
    await page.goto(pathToFileURL(file).href);
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    const faults = await page.evaluate(async () => {
      type Axe = { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      const { violations } = await (globalThis as unknown as { axe: Axe }).axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 120)}`);
    });
    await context.close();
    expect(faults).toEqual([]);
  });

  it('fits a phone without scrolling across, but for wide tables in their own frame', async () => {
    const file = join(folder, 'phone.html');
    writeFileSync(file, htmlOf(documentFrom(six)));
    const page = await browser!.newPage({ viewport: { width: 375, height: 700 } });
    await page.goto(pathToFileURL(file).href);
    const [content, view] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(content).toBeLessThanOrEqual(view);
    await page.close();
  });
});
