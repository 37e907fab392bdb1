import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { expect } from 'vitest';
import type { PaperName } from '../../../src/draw/theme.js';
import type { Comparison } from '../../../src/study/compare/compare.js';
import { canReadPdf, reachOfPages, readPdf } from '../../report/support/poppler.js';
import { documentFrom, htmlOf } from '../../report/support/reports.js';

const readable = canReadPdf();

/** Opens a report from its file, notes what goes wrong, measures the buyer's page and prints all. */
export async function printed(browser: Browser, folder: string, comparison: Comparison, paper: PaperName = 'letter') {
  const file = join(folder, 'report.html');
  writeFileSync(file, htmlOf(documentFrom(comparison, paper), paper));
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
  const wrongs: string[] = [];
  page.on('console', (message) => wrongs.push(message.text()));
  page.on('pageerror', (error) => wrongs.push(error.message));
  page.on('request', (request) => {
    if (!/^(file|data):/.test(request.url())) wrongs.push(request.url());
  });
  await page.goto(pathToFileURL(file).href);
  const measured = await page.evaluate(() => {
    const sheet = document.querySelector('.one')!;
    const bottom = sheet.getBoundingClientRect().bottom - parseFloat(getComputedStyle(sheet).paddingBottom);
    const over = [...sheet.children].map((child) => child.getBoundingClientRect().bottom - bottom);
    return {
      over: Math.max(...over),
      wide:
        Math.max(...[...sheet.querySelectorAll('*')].map((each) => each.getBoundingClientRect().right)) -
        sheet.getBoundingClientRect().right,
      pictures: [...sheet.querySelectorAll('svg')].map((svg) => svg.getBoundingClientRect().height),
      font: document.fonts.check('500 12px Barlow'),
    };
  });
  const pdf = Buffer.from(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  await page.close();
  return { wrongs, measured, pdf };
}

/**
 * Words and numbers that a phone breaks in two, and numbers that it parts from their units, in a report; and whether it
 * scrolls across as a whole.
 */
export async function brokenOnPhone(browser: Browser, folder: string, comparison: Comparison): Promise<string[]> {
  const file = join(folder, 'phone.html');
  writeFileSync(file, htmlOf(documentFrom(comparison)));
  const page = await browser.newPage({ viewport: { width: 375, height: 700 } });
  await page.goto(pathToFileURL(file).href);
  const broken = await page.evaluate(() => {
    const faults: string[] = [];
    const walker = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node.parentElement!.closest('svg')) continue;
      // a number with its unit, or a word; a name with dots may end a line at one
      for (const found of node.textContent!.matchAll(
        /[-+]?\d[\d,./]*[\s\u00a0](?:°[FC]|BTU|lb|in|min|ft|mm|kg|kW|%)|[^\s\u00a0-]+/g,
      )) {
        const range = document.createRange();
        range.setStart(node, found.index);
        range.setEnd(node, found.index + found[0].length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > 1) faults.push(`${node.parentElement!.tagName}: ${found[0]}`);
      }
    }
    if (document.documentElement.scrollWidth > window.innerWidth) faults.push('scrolls across');
    return faults;
  });
  await page.close();
  return broken;
}

/**
 * Nothing goes wrong with a report, and the buyer has all of it on one page, by the measure of the browser and of its
 * PDF.
 */
export async function expectWhole(browser: Browser, folder: string, comparison: Comparison): Promise<void> {
  const { wrongs, measured, pdf } = await printed(browser, folder, comparison);
  expect(wrongs).toEqual([]);
  expect(measured.over).toBeLessThanOrEqual(0.5);
  expect(measured.wide).toBeLessThanOrEqual(0);
  // the drawing, and beside it the chart
  expect(measured.pictures).toHaveLength(2);
  expect(Math.min(...measured.pictures)).toBeGreaterThan(125);
  expect(measured.font).toBe(true);
  if (!readable) return;
  const { pages, width, height } = readPdf(pdf);
  expect([width, height]).toEqual([612, 792]);
  expect(pages[0].replace(/\s+/g, ' ')).toContain('an estimate, not a guarantee');
  expect(pages[1]).toContain('Every input as read');
  pages.forEach((text, i) => expect(text).toContain(`page ${i + 1} of ${pages.length}`));
  for (const share of reachOfPages(pdf)) expect(share).toBeGreaterThan(0.25);
}
