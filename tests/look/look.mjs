/**
 * `npm run look`: pictures for a person to look at, into out/look: every chart of every example, the buyer's page and the sheets
 * behind it of three as HTML on a screen and a phone and as PDF on paper, and the interactive page. Prints what it made. Names of
 * examples behind it, or `page`, make those alone: `npm run look -- plain-24 page`.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundle } from '../../esbuild.config.mjs';
import { lookAtPage, startBrowser } from './page.mjs';
import { inStrips } from './strips.mjs';

const FOLDER = 'out/look';
const BUNDLE = 'out/look-bundle';
const OPTIONS = 'all.plate=1/4 in | 1/8 in | 3/8 in';
/** Enough for bands; a report that counts has more. */
const CASES = ['--spread', '20'];
/** A trailer, an upright and a plain pit. */
const SHEETS = ['tank-on-trailer', 'offset-with-upright', 'plain-24'];

const run = (args) => {
  const { status, stderr } = spawnSync(process.execPath, [`${BUNDLE}/cli.js`, ...args], { encoding: 'utf8' });
  // 4: a design that asks too much still has pictures
  if (status !== 0 && status !== 4) throw new Error(`pitwright ${args.join(' ')}: ${stderr}`);
};

function lookAtCharts(name) {
  const folder = join(FOLDER, name);
  const design = join('examples', `${name}.yaml`);
  run(['estimate', design, ...CASES, '--charts', join(folder, 'charts'), '-o', join(folder, 'estimate.txt')]);
  const options = ['--vary', OPTIONS, '--charts', join(folder, 'options'), '-o', join(folder, 'options.txt')];
  run(['compare', design, ...options]);
}

async function lookAtSheets(browser, name) {
  for (const [kind, more] of [
    ['one', []],
    ['options', ['--vary', OPTIONS]],
  ]) {
    const at = (ending) => join(FOLDER, name, `report-${kind}${ending}`);
    const design = join('examples', `${name}.yaml`);
    run(['report', design, ...more, ...CASES, '-o', at('.html')]);
    run(['report', design, ...more, ...CASES, '-o', at('.pdf')]);
    const page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
    await page.goto(pathToFileURL(resolve(at('.html'))).href);
    await page
      .locator('.sheet')
      .first()
      .screenshot({ path: at('-buyer.png') });
    await inStrips(await page.screenshot({ fullPage: true }), at('-screen'));
    await page.setViewportSize({ width: 375, height: 700 });
    await inStrips(await page.screenshot({ fullPage: true }), at('-phone'));
    await page.close();
    if (papers) spawnSync('pdftoppm', ['-r', '80', '-png', at('.pdf'), at('-paper')]);
  }
}

const examples = readdirSync('examples').flatMap((file) => (file.endsWith('.yaml') ? [basename(file, '.yaml')] : []));
const asked = process.argv.slice(2);
const isAsked = (name) => asked.length === 0 || asked.includes(name);

if (asked.length === 0) rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
mkdirSync('out/look-page', { recursive: true });
await bundle(BUNDLE);
const browser = await startBrowser();
const papers = spawnSync('pdftoppm', ['-v']).error === undefined;
if (!papers) console.log('pdftoppm (poppler-utils) is not here: PDFs are written, not pictured');
for (const name of examples.filter(isAsked)) {
  const folder = join(FOLDER, name);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  lookAtCharts(name);
  if (SHEETS.includes(name)) await lookAtSheets(browser, name);
  console.log(`${name}: ${readdirSync(folder, { recursive: true }).length} files`);
}
if (isAsked('page')) console.log(`page: ${(await lookAtPage(browser, join(FOLDER, 'page'))).length} pictures`);
await browser.close();
console.log(`look at them in ${FOLDER}`);
