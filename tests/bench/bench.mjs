/**
 * `npm run bench`: what an estimate costs, for each example. Prints; never judges: a busy machine is no fault of the code.
 *
 * - cold, warm: computing inside the process (steady, assumed and warm-up together), first run and median of 20
 * - steps, rhs: of the warm-up, and evaluations of the balances in it
 * - command: the whole command without charts, beyond bare Node's own start; median of 7
 * - peak: the command's largest resident memory
 * - fit: four estimates to a log of 6 h with a reading every 10 s, whole command on one core
 * - batch: many designs on one thread and on two, and what they take at once; only a machine with nothing else to do tells
 * - report: HTML and PDF of one design beyond its study, for the first example; the first HTML of a process apart
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { median } from 'simple-statistics';
import { bundle } from '../../esbuild.config.mjs';
import { bundleScript } from '../support/bundleScript.mjs';

/** A bundle of its own: other runs may be rewriting the usual one. */
const BUNDLE = 'out/bench';
const WARM_RUNS = 20;
const PLAIN = 'examples/plain-24.yaml';
const SPAWNS = 7;
const BATCH = 2000;
const TARGETS = { warmMs: 50, commandMs: 400, peakMb: 200 };

const node = (args, input) => {
  const start = performance.now();
  const run = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1e8, input });
  return { ms: performance.now() - start, ...run };
};
const medianSpawn = (args) => median(Array.from({ length: SPAWNS }, () => node(args).ms));

function peakMb(file) {
  const { stdout, stderr } = node(['tests/bench/peak.mjs', `${BUNDLE}/cli.js`, 'estimate', file]);
  if (!stdout.includes('TEMPERATURES')) throw new Error(`${file}: no estimate: ${stderr}`);
  return Number(/peak (\d+)/.exec(stderr)[1]) / 1024;
}

/** What a script beside this one prints, run by itself. */
function printed(script, args) {
  const { stdout, stderr, status } = node([`${BUNDLE}/${script}.mjs`, ...args]);
  if (status !== 0) throw new Error(`${script} ${args.join(' ')}: ${stderr}`);
  return stdout;
}

await bundle(BUNDLE);
for (const script of ['inProcess', 'reportParts', 'fitLog', 'batchDesigns']) {
  await bundleScript(`tests/bench/${script}.ts`, `${BUNDLE}/${script}.mjs`);
}
const bare = medianSpawn(['-e', '0']);
const examples = readdirSync('examples').filter((name) => /\.ya?ml$/.test(name));
const rows = examples.map((name) => {
  const file = `examples/${name}`;
  const inside = JSON.parse(printed('inProcess', [file, String(WARM_RUNS)]));
  const commandMs = medianSpawn([`${BUNDLE}/cli.js`, 'estimate', file]) - bare;
  return { name, ...inside, commandMs, peakMb: peakMb(file) };
});

const number = (value, digits = 1) => (value === null || value === undefined ? '-' : value.toFixed(digits));
const print = (cells) => console.log(cells.map((cell, i) => (i === 0 ? cell.padEnd(28) : cell.padStart(11))).join(''));
console.log(`node ${process.version}, bare start ${number(bare, 0)} ms\n`);
print(['', 'read ms', 'cold ms', 'warm ms', 'command ms', 'peak MB', 'steps', 'rhs']);
for (const row of rows) {
  print([
    row.name,
    number(row.readMs),
    number(row.coldMs),
    number(row.warmMs),
    number(row.commandMs, 0),
    number(row.peakMb, 0),
    String(row.steps ?? '-'),
    String(row.evaluations ?? '-'),
  ]);
}
console.log('\nworst example against its target:');
for (const [key, target] of Object.entries(TARGETS)) {
  const worst = Math.max(...rows.map((row) => row[key]));
  const verdict = worst < target ? 'meets it' : 'MISSES it';
  console.log(`  ${key.padEnd(10)} ${number(worst).padStart(7)}, target under ${target}: ${verdict}`);
}

const report = JSON.parse(printed('reportParts', [`examples/${examples[0]}`, '5']));
console.log(`\nreport of ${examples[0]} beyond its study:`);
for (const [key, what, target] of [
  ['firstMs', 'HTML, first', 1000],
  ['htmlMs', 'HTML', 1000],
  ['pdfMs', 'PDF', 3000],
]) {
  console.log(
    `  ${what.padEnd(12)} ${number(report[key], 0).padStart(5)} ms, target under ${target}: ${report[key] < target ? 'meets it' : 'MISSES it'}`,
  );
}

console.log(`\nlonger studies of ${PLAIN}, whole command:`);
for (const [what, args, target] of [
  ['spread of 200 cases', ['estimate', PLAIN, '--spread', '200'], 10_000],
  ['three plates, all events', ['compare', PLAIN, '--vary', 'all.plate=1/8 in | 3/16 in | 1/4 in'], 1500],
  ['size', ['size', PLAIN], null],
]) {
  const { ms, status: ended, stderr: said } = node([`${BUNDLE}/cli.js`, ...args]);
  if (ended !== 0) throw new Error(`${what}: ${said}`);
  const verdict = target === null ? '' : `, target under ${target}: ${ms < target ? 'meets it' : 'MISSES it'}`;
  console.log(`  ${what.padEnd(25)} ${number(ms, 0).padStart(6)} ms${verdict}`);
}

const log = printed('fitLog', [PLAIN]);
const free = 'innerConvection,fire.radiant,chamber.doorGap,wood.heat';
const fit = node([`${BUNDLE}/cli.js`, 'fit', PLAIN, '-', '--free', free, '--json'], log);
if (fit.status !== 0) throw new Error(`fit: ${fit.stderr}`);
const { runs, quality } = JSON.parse(fit.stdout);
console.log(
  `\nfit of four estimates to 6 h, a reading of three probes every 10 s: ${number(fit.ms / 1000)} s for ${runs} runs, ` +
    `target under 5: ${fit.ms < 5000 ? 'meets it' : 'MISSES it'}; held back ${number(1.8 * quality.heldBack_K)} °F, noise 3`,
);

console.log(`\nbatch of ${BATCH} designs, steady and warm-up, whole command:`);
const designs = printed('batchDesigns', [String(BATCH)]);
const share = (count) => designs.split('\n', count).join('\n');
const batch = (input, workers) => {
  const args = ['tests/bench/peak.mjs', `${BUNDLE}/cli.js`, 'batch', '--workers', String(workers)];
  const { ms, status: ended, stderr: said } = node(args, input);
  if (ended !== 0) throw new Error(`batch: ${said}`);
  return { ms, peakMb: Number(/peak (\d+)/.exec(said)[1]) / 1024 };
};
const short = batch(share(BATCH / 10), 2);
const [one, two] = [batch(designs, 1), batch(designs, 2)];
for (const [what, value, unit, target, meets] of [
  ['one thread', one.ms / 1000, 's', null],
  ['two threads', two.ms / 1000, 's', 'under 60', two.ms < 60_000],
  ['faster by', one.ms / two.ms, 'times', 'over 1.7', one.ms / two.ms > 1.7],
  [`peak of ${BATCH / 10}, two threads`, short.peakMb, 'MB', null],
  [`peak of ${BATCH}`, two.peakMb, 'MB', 'within 10 % of that', two.peakMb < 1.1 * short.peakMb],
]) {
  const verdict = target === null ? '' : `, target ${target}: ${meets ? 'meets it' : 'MISSES it'}`;
  console.log(`  ${what.padEnd(25)} ${number(value).padStart(6)} ${unit}${verdict}`);
}
const busy = loadavg()[0] > 2.5 ? ' Others were computing here too: the times say little.' : '';
console.log(`  on ${availableParallelism()} processors.${busy}`);
