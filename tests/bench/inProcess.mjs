/**
 * Times one design inside a fresh process: the first run, with nothing compiled yet, then the median of more.
 * Prints one line of JSON. Arguments: library, design file, number of warm runs.
 */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const [library, file, runs] = process.argv.slice(2);
const { readDesign, estimate } = await import(pathToFileURL(library).href);
const text = readFileSync(file, 'utf8');

const time = (work) => {
  const start = performance.now();
  const value = work();
  return { ms: performance.now() - start, value };
};
const solve = () => {
  const read = time(() => readDesign(text, { fileName: file }));
  if (read.value.faults) throw new Error(`${file} has faults`);
  const cost = {};
  const solved = time(() => estimate(read.value.design, {}, cost));
  const steady = time(() => estimate(read.value.design, { steadyOnly: true }));
  return { read: read.ms, solve: solved.ms, warmUp: solved.ms - steady.ms, ...cost };
};

const first = solve();
const warm = Array.from({ length: Number(runs) }, solve);
const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const warmMs = median(warm.map((run) => run.solve));
console.log(
  JSON.stringify({
    coldMs: first.solve,
    warmMs,
    warmUpMs: median(warm.map((run) => run.warmUp)),
    readMs: median(warm.map((run) => run.read)),
    steps: first.steps,
    evaluations: first.evaluations,
  }),
);
