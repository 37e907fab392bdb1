/**
 * `npm run bench:page`: what the page costs, measured in a real browser. Prints; never judges: a busy machine is no fault of the code.
 *
 * - file: size of the page
 * - first result: from opening the file to the first full answer
 * - steady: computing from a slider's move to new steady numbers and drawing: read, controls, solve, draw
 * - curves: computing from a slider's move to new warm-up curves: the same with the warm-up, and the chart laid out and drawn
 * - numbers: from the slider's move to new numbers, waiting included (target: two frames)
 * - steps: from the slider's move until drawing, answer and what a step of plate changes are on screen, waiting included
 * - seen: from the slider's move to the new curves on screen, waiting included
 */
import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { median } from 'simple-statistics';
import { bundle } from '../../esbuild.config.mjs';
import { bundleScript } from '../support/bundleScript.mjs';

const FOLDER = 'out/bench-page';
const MOVES = 40;
const LOADS = 3;
const TARGETS = { fileKb: 700, firstMs: 1000, numbersMs: 33, stepsMs: 150 };

await bundle(FOLDER);
// the tests' own way to a browser, which is written in TypeScript
await bundleScript('tests/page/support/browser.ts', `${FOLDER}/browser.mjs`);
const { launchBrowser } = await import(pathToFileURL(resolve(FOLDER, 'browser.mjs')).href);
const browser = await launchBrowser();
if (!browser) process.exit(1);
const file = resolve(FOLDER, 'page.html');
const sorted = (values) => [...values].sort((a, b) => a - b);

const firsts = [];
let page;
for (let i = 0; i < LOADS; i++) {
  page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await page.goto(pathToFileURL(file).href);
  await page.locator('html[data-answered]').waitFor({ state: 'attached' });
  firsts.push(await page.evaluate(() => Number(document.documentElement.dataset.msFirst)));
}

const moves = await page.evaluate(async (count) => {
  const { dataset } = document.documentElement;
  const slider = document.querySelector('[data-slider="chamber.length"]');
  const told = [];
  for (let i = 0; i < count; i++) {
    const seen = new Promise((done) => {
      const watch = new MutationObserver(() => {
        watch.disconnect();
        done(performance.now());
      });
      watch.observe(document.getElementById('chart'), { childList: true });
    });
    // each part of the work leaves its time on the document when it is shown
    const shown = (name) =>
      new Promise((done) => {
        const watch = new MutationObserver(() => {
          watch.disconnect();
          done(performance.now());
        });
        watch.observe(document.documentElement, { attributeFilter: [`data-ms-${name}`] });
      });
    const [numbers, steps] = [shown('steady-shown'), shown('steps')];
    const start = performance.now();
    slider.value = String(30 + i);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    const end = await seen;
    const numbersAt = await numbers;
    const stepsAt = await steps;
    await new Promise((done) => setTimeout(done, 60));
    const ms = (name) => Number(dataset[`ms${name}`]);
    told.push({
      edit: ms('Edit'),
      draw: ms('Draw'),
      solveSteady: ms('Steady'),
      showSteady: ms('SteadyShown'),
      solveFull: ms('Full'),
      showFull: ms('FullShown'),
      layChart: ms('Chart'),
      showChart: ms('ChartShown'),
      seen: end - start,
      numbers: numbersAt - start,
      steps: stepsAt - start,
    });
  }
  return told;
}, MOVES);
await browser.close();

// the first moves warm the code up
const warm = moves.slice(MOVES / 4);
const rows = {
  'edit (read, set controls)': warm.map((m) => m.edit),
  'solve steady': warm.map((m) => m.solveSteady),
  'show steady': warm.map((m) => m.showSteady),
  'draw the pit': warm.map((m) => m.draw),
  'solve with warm-up': warm.map((m) => m.solveFull),
  'show numbers': warm.map((m) => m.showFull),
  'lay chart out': warm.map((m) => m.layChart),
  'show chart': warm.map((m) => m.showChart),
  'STEADY, computing': warm.map((m) => m.edit + m.solveSteady + m.showSteady + m.draw),
  'CURVES, computing': warm.map((m) => m.edit + m.solveFull + m.showFull + m.layChart + m.showChart),
  'curves seen, waiting included': warm.map((m) => m.seen),
  'numbers seen, waiting included': warm.map((m) => m.numbers),
  'steps seen, waiting included': warm.map((m) => m.steps),
};
console.log(`${''.padEnd(32)}${['best', 'median', 'worst'].map((each) => each.padStart(9)).join('')}  ms`);
for (const [name, values] of Object.entries(rows)) {
  const cells = [sorted(values)[0], median(values), sorted(values).at(-1)].map((value) => value.toFixed(1).padStart(9));
  console.log(name.padEnd(32) + cells.join(''));
}
const figures = {
  fileKb: statSync(file).size / 1000,
  firstMs: median(firsts),
  numbersMs: median(rows['numbers seen, waiting included']),
  stepsMs: median(rows['steps seen, waiting included']),
};
console.log('\nmedian over target (below 1 is within):');
for (const [key, target] of Object.entries(TARGETS)) {
  console.log(`  ${key}: ${figures[key].toFixed(0)} / ${target} = ${(figures[key] / target).toFixed(2)}`);
}
