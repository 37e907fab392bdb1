import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { example, pitwright, scratch } from './support/run.js';

/** What a run must have ended within once it is told to [ms]; on a busy machine, within so many starts of the command. */
const AT_ONCE = 1000;
const STARTS = 8;

let folder: ReturnType<typeof scratch>;
let patience = AT_ONCE;
beforeAll(async () => {
  const start = performance.now();
  await pitwright(['--version']);
  patience = Math.max(AT_ONCE, STARTS * (performance.now() - start));
});
beforeEach(() => {
  folder = scratch();
  mkdirSync(folder.at('kept'));
});
afterEach(() => folder.remove());

interface Ended {
  code: number | null;
  /** from the signal to the end [ms]; null: it was done before */
  took: number | null;
}

/** Stops a run some time after its first file was begun: it then computes, or draws. */
function stopped(args: string[], signal: NodeJS.Signals, after: number): Promise<Ended> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [inject('command'), ...args], { cwd: folder.path, stdio: 'ignore' });
    let sent: number | null = null;
    const look = setInterval(() => {
      if (readdirSync(folder.path).length < 2) return;
      clearInterval(look);
      setTimeout(() => {
        sent = performance.now();
        child.kill(signal);
      }, after);
    }, 10);
    child.on('close', (code) => {
      clearInterval(look);
      done({ code, took: sent === null ? null : performance.now() - sent });
    });
  });
}

const pit = example('plain-24.yaml');
/** Each computes for far longer than it is given. */
const LONG: [string, string[]][] = [
  ['estimate with a spread', ['estimate', pit, '--spread', '2000', '-o', 'a.txt', '--csv', 'a.csv']],
  ['compare', ['compare', pit, '--vary', 'all.plate=1/8 in|3/16 in|1/4 in|3/8 in|1/2 in|5/8 in', '-o', 'a.txt']],
  ['report', ['report', pit, '--spread', '2000', '-o', 'a.html']],
  ['size', ['size', pit, '--charts', 'charts', '-o', 'a.txt']],
  ['cook', ['cook', example('reverse-flow.yaml'), '-o', 'a.txt']],
  ['refine', ['refine', pit, '-o', 'a.txt']],
  ['evidence', ['evidence', '-o', 'a.txt']],
  ['fit', ['fit', pit, example('yard-cook.csv'), '--save', 'a.yaml', '-o', 'a.txt', '--charts', 'charts']],
];

describe('Ctrl-C while it computes', () => {
  it.each(LONG)('ends %s at once, with nothing left behind', async (_, args) => {
    const { code, took } = await stopped(args, 'SIGINT', 500);
    expect(code).toBe(130);
    expect(took).toBeLessThan(patience);
    expect(readdirSync(folder.path)).toEqual(['kept']);
  });

  it('and so does a kill, which has a number of its own', async () => {
    const { code, took } = await stopped(LONG.at(-1)![1], 'SIGTERM', 1500);
    expect(code).toBe(143);
    expect(took).toBeLessThan(patience);
    expect(readdirSync(folder.path)).toEqual(['kept']);
  });

  it('takes away no folder that was there before, however empty', async () => {
    const charts = 'kept/charts/of today';
    const { code } = await stopped(
      ['fit', pit, example('yard-cook.csv'), '-o', 'a.txt', '--charts', charts],
      'SIGINT',
      500,
    );
    expect(code).toBe(130);
    expect(existsSync(folder.at('kept'))).toBe(true);
    expect(readdirSync(folder.at('kept'))).toEqual([]);
  });
});

it('an estimate, too short to be caught in the middle, ends at once whenever it is stopped', async () => {
  for (const after of [0, 100, 300]) {
    const { code, took } = await stopped(['estimate', pit, '-o', 'a.txt'], 'SIGINT', after);
    expect(took === null ? [0] : [0, 130]).toContain(code);
    if (took !== null) expect(took).toBeLessThan(patience);
    expect(readdirSync(folder.path).filter((name) => name.startsWith('.'))).toEqual([]);
  }
});
