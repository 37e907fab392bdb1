/**
 * Times one design inside a fresh process: the first run, with nothing compiled yet, then the median of more.
 * Prints one line of JSON. Arguments: design file, number of warm runs.
 */
import { readFileSync } from 'node:fs';
import { median } from 'simple-statistics';
import { estimate, readDesign, type EstimateCost } from '../../src/index.js';

const [file, runs] = process.argv.slice(2);
const text = readFileSync(file, 'utf8');

function time<T>(work: () => T) {
  const start = performance.now();
  const value = work();
  return { ms: performance.now() - start, value };
}

function solve() {
  const read = time(() => readDesign(text, { fileName: file }));
  const { design } = read.value;
  if (!design) throw new Error(`${file} has faults`);
  const cost: EstimateCost = { evaluations: 0, steps: 0 };
  return { read: read.ms, solve: time(() => estimate(design, {}, cost)).ms, ...cost };
}

const first = solve();
const warm = Array.from({ length: Number(runs) }, solve);
console.log(
  JSON.stringify({
    coldMs: first.solve,
    warmMs: median(warm.map((run) => run.solve)),
    readMs: median(warm.map((run) => run.read)),
    steps: first.steps,
    evaluations: first.evaluations,
  }),
);
