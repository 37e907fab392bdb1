/** Pictures of the page for a person to look at: phone, tablet and desk, light and dark, 200 %, forced colours, every chart, a mistake, and the sheet on paper. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundlePage } from '../../src/page/bundle.mjs';
import { englishAlone } from '../../esbuild.config.mjs';
import { bundleScript } from '../support/bundleScript.mjs';
import { inStrips } from './strips.mjs';

const WORK = 'out/look-page';
const SIZES = {
  phone: { width: 375, height: 667 },
  tablet: { width: 820, height: 1100 },
  desk: { width: 1600, height: 1000 },
};
const CHARTS = ['thermometer', 'steel', 'gas', 'vents', 'loss', 'draft', 'options'];

/**
 * @param {import('playwright-core').Browser} browser
 * @param {string} folder where the pictures go
 * @returns {Promise<string[]>} their names
 */
export async function lookAtPage(browser, folder) {
  mkdirSync(folder, { recursive: true });
  mkdirSync(WORK, { recursive: true });
  const file = resolve(WORK, 'page.html');
  await bundlePage(file, [englishAlone]);
  const slot = '<script type="application/json" id="design">null</script>';
  const design = JSON.stringify(readFileSync('examples/offset-with-upright.yaml', 'utf8')).replace(/</g, '\\u003c');
  writeFileSync(
    file,
    readFileSync(file, 'utf8').replace(slot, () => slot.replace('null', () => design)),
  );
  const names = [];
  const open = async (options) => {
    const page = await (await browser.newContext(options)).newPage();
    await page.goto(pathToFileURL(file).href);
    await page.locator('#chart svg').waitFor();
    return page;
  };
  const shoot = async (page, name, fullPage = true) => {
    names.push(`${name}.png`);
    await page.screenshot({ path: join(folder, `${name}.png`), fullPage });
  };
  const strips = async (page, name) =>
    names.push(...(await inStrips(await page.screenshot({ fullPage: true, scale: 'css' }), join(folder, name))));
  for (const [size, viewport] of Object.entries(SIZES)) {
    const touch = size !== 'desk';
    const page = await open({
      viewport,
      deviceScaleFactor: size === 'phone' ? 2 : 1,
      hasTouch: touch,
      isMobile: touch,
    });
    await page.locator('#answer-soaked .under', { hasText: /8 in 10: \d/ }).waitFor({ timeout: 240_000 });
    const looks = ['light', 'dark'];
    for (const colorScheme of looks) {
      await page.emulateMedia({ colorScheme });
      await shoot(page, `page-${size}-${colorScheme}-first`, false);
      if (touch) await strips(page, `page-${size}-${colorScheme}`);
      else await shoot(page, `page-${size}-${colorScheme}`);
    }
    await page.locator('details').evaluateAll((groups) => groups.forEach((each) => (each.open = true)));
    await strips(page, `page-${size}-open`);
    await page.context().close();
  }
  // letters twice as large leave half the width; colours that the person has set
  for (const [name, options] of [
    ['200-percent', { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 }],
    ['forced-colours', { viewport: SIZES.desk, forcedColors: 'active', colorScheme: 'dark' }],
  ]) {
    const page = await open(options);
    await shoot(page, `page-${name}`, false);
    await page.context().close();
  }
  const page = await open({ viewport: SIZES.desk });
  for (const [path, value] of [
    ['chamber.plate', '3/8 in'],
    ['firebox.insulation.thickness', '2 in'],
  ]) {
    await page.locator('#add').click();
    await page.locator(`[data-field="${path}"]`).fill(value);
    await page.locator('#verdict:not(.waiting)').waitFor();
  }
  await shoot(page, 'page-options');
  for (const chart of CHARTS) {
    await page.locator(`[data-chart="${chart}"]`).click();
    const label = await page.locator(`[data-chart="${chart}"]`).textContent();
    await page.locator(`#chart svg[aria-label^="${label}"]`).waitFor();
    names.push(`page-chart-${chart}.png`);
    await page.locator('#curves').screenshot({ path: join(folder, `page-chart-${chart}.png`) });
  }
  await page.locator('[data-field="chamber.plate"]').fill('a quarter');
  await page.locator('[data-field="chamber.plate"]').blur();
  await shoot(page, 'page-mistake', false);
  await page.locator('#buyer figure').first().waitFor({ state: 'attached' });
  await page.emulateMedia({ media: 'print' });
  // the sheet's text field between half-inch margins
  await page.setViewportSize({ width: 720, height: 960 });
  await shoot(page, 'page-sheet', false);
  writeFileSync(join(folder, 'page-sheet.pdf'), await page.pdf({ preferCSSPageSize: true }));
  names.push('page-sheet.pdf');
  await page.context().close();
  return names;
}

/** The tests' own way to a browser, which is written in TypeScript. */
export async function startBrowser() {
  const outfile = resolve(WORK, 'browser.mjs');
  await bundleScript('tests/page/support/browser.ts', outfile);
  const { launchBrowser } = await import(pathToFileURL(outfile).href);
  const browser = await launchBrowser();
  if (!browser) throw new Error('no browser to look with');
  return browser;
}
