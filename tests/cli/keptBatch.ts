import { closeSync, existsSync, openSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, expect } from 'vitest';
import { parse } from 'yaml';
import { eachScratch, endOf, example, onPath, pitwright, shell, start, until } from './support/run.js';

const drawn = parse(readFileSync(example('plain-24.yaml'), 'utf8'));
export const designs = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const stacks = [{ ...drawn.stacks[0], height: `${28 + i} in` }];
    return `${JSON.stringify({ ...drawn, name: `pit ${i + 1}`, stacks })}\n`;
  }).join('');
const FEW = 12;
export const stdin = designs(FEW);
export const linesIn = (text: string) => text.split('\n').length - 1;

/** The line for going on that the page on batches gives, word for word; only the warm-up is left out, for time. */
const goOnLine = /^pitwright batch --from .*>> results\.ndjson$/m.exec(
  readFileSync('reference/BATCH-AND-FIT.md', 'utf8'),
)![0];

export type KeptBatch = ReturnType<typeof useKeptBatch>;

/** For every test a folder with a few designs in it, how the command is run there, and what a run to the end gives. */
export function useKeptBatch() {
  let whole: string;
  let env: Record<string, string>;
  beforeAll(async () => {
    whole = (await pitwright(['batch', '--steady'], { stdin })).stdout;
    expect(linesIn(whole)).toBe(FEW);
  });
  const folder = eachScratch((fresh) => {
    env = onPath(fresh.path, '--steady');
    writeFileSync(fresh.at('designs.ndjson'), stdin);
  });
  const inShell = (line: string) => shell(line, { cwd: folder.path, env });
  return {
    folder,
    whole: () => whole,
    results: () => readFileSync(folder.at('results.ndjson'), 'utf8'),
    shell: inShell,
    goOn: () => inShell(goOnLine),
  };
}

/** A batch into a named file that is stopped leaves whole lines alone. */
export async function expectWholeLines(batch: KeptBatch, signal: 'SIGINT' | 'SIGTERM' | 'SIGHUP'): Promise<void> {
  const given = openSync(batch.folder.at('designs.ndjson'), 'r');
  const child = start(['batch', '--steady', '-o', 'results.ndjson'], [given, 'ignore', 'ignore'], batch.folder.path);
  const ended = endOf(child);
  await until(child, () => existsSync(batch.folder.at('results.ndjson')) && batch.results().length > 0);
  child.kill(signal);
  expect(await ended).toBe({ SIGINT: 130, SIGTERM: 143, SIGHUP: 129 }[signal]);
  closeSync(given);
  expect(batch.results().endsWith('\n') && batch.whole().startsWith(batch.results())).toBe(true);
  expect(readdirSync(batch.folder.path).sort()).toEqual(['designs.ndjson', 'pitwright', 'results.ndjson']);
}

/** Where a file may grow no further, whole lines stay, and that line goes on from there. */
export function expectGoesOn(batch: KeptBatch, kB: number, output: string): void {
  const { code, stderr } = batch.shell(`ulimit -f ${kB}; exec pitwright batch ${output} < designs.ndjson`);
  expect(code).toBe(2);
  expect(stderr).toMatch(/: no file may grow that large here\.\n$/);
  const kept = batch.results();
  expect(kept === '' || kept.endsWith('\n')).toBe(true);
  expect(batch.whole().startsWith(kept)).toBe(true);
  expect(batch.whole().length - kept.length).toBeLessThan(batch.whole().length - 1024 * kB + 20_000);
  const count = linesIn(kept);
  if (count > 0) {
    expect(stderr).toContain(`broke off after ${count === 1 ? 'one whole line' : `${count} whole lines`}, which stay`);
    expect(stderr).toContain(`--from ${count + 1} goes on`);
  }
  expect(batch.goOn().code).toBe(0);
  expect(batch.results()).toBe(batch.whole());
}
