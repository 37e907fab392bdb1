/**
 * `npm run look`: pictures for a person to look at, into out/look: every chart of every example, the buyer's page and the sheets
 * behind it as HTML on a screen and as PDF on paper, and the interactive page. Prints what it made, and how long reports took.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundle } from '../../esbuild.config.mjs';
import { lookAtPage, startBrowser } from './page.mjs';

const FOLDER = 'out/look';
const BUNDLE = 'out/look-bundle';
const OPTIONS = 'all.plate=1/4 in | 1/8 in | 3/8 in';

const run = (args) => {
  const { status, stderr } = spawnSync(process.execPath, [`${BUNDLE}/cli.js`, ...args], { encoding: 'utf8' });
  // 4: a design that asks too much still has pictures
  if (status !== 0 && status !== 4) throw new Error(`pitwright ${args.join(' ')}: ${stderr}`);
};

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
await bundle(BUNDLE);
mkdirSync('out/look-page', { recursive: true });
const browser = await startBrowser();
const papers = spawnSync('pdftoppm', ['-v']).error === undefined;
if (!papers) console.log('pdftoppm (poppler-utils) is not here: PDFs are written, not pictured');

for (const file of readdirSync('examples').filter((name) => name.endsWith('.yaml'))) {
  const name = basename(file, '.yaml');
  const design = join('examples', file);
  run([
    'estimate',
    design,
    '--spread',
    '40',
    '--charts',
    join(FOLDER, name, 'charts'),
    '-o',
    join(FOLDER, `${name}.txt`),
  ]);
  run([
    'compare',
    design,
    '--vary',
    OPTIONS,
    '--charts',
    join(FOLDER, name, 'options'),
    '-o',
    join(FOLDER, name, 'options.txt'),
  ]);
  for (const [kind, more] of [
    ['one', []],
    ['options', ['--vary', OPTIONS]],
  ]) {
    const at = (ending) => join(FOLDER, name, `report-${kind}.${ending}`);
    run(['report', design, ...more, '-o', at('html')]);
    run(['report', design, ...more, '-o', at('pdf')]);
    const page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
    await page.goto(pathToFileURL(resolve(at('html'))).href);
    await page.screenshot({ path: join(FOLDER, name, `report-${kind}-screen.png`), fullPage: true });
    await page
      .locator('.sheet')
      .first()
      .screenshot({ path: join(FOLDER, name, `buyer-${kind}.png`) });
    await page.setViewportSize({ width: 375, height: 700 });
    await page.screenshot({ path: join(FOLDER, name, `report-${kind}-phone.png`), fullPage: true });
    await page.close();
    if (papers) spawnSync('pdftoppm', ['-r', '80', '-png', at('pdf'), join(FOLDER, name, `paper-${kind}`)]);
  }
  console.log(`${name}: ${readdirSync(join(FOLDER, name), { recursive: true }).length} files`);
}
await browser.close();
console.log(`page: ${(await lookAtPage(join(FOLDER, 'page'))).length} pictures`);
console.log(`look at them in ${FOLDER}`);
