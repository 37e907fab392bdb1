import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { beforeAll, expect, inject } from 'vitest';
import { eachScratch, example, pitwright } from './support/run.js';

/**
 * What a run must have ended within once it is told to [ms]; on a busy machine, within so many starts of the command.
 */
const AT_ONCE = 10_000;
const STARTS = 8;

interface Ended {
  code: number | null;
  /** from the signal to the end [ms]; null: it was done before */
  took: number | null;
}

const pit = example('plain-24.yaml');
/** Each computes for far longer than it is given. */
export const LONG: [string, string[]][] = [
  ['estimate with a spread', ['estimate', pit, '--spread', '2000', '-o', 'a.txt', '--csv', 'a.csv']],
  ['compare', ['compare', pit, '--vary', 'all.plate=1/8 in|3/16 in|1/4 in|3/8 in|1/2 in|5/8 in', '-o', 'a.txt']],
  ['report', ['report', pit, '--spread', '2000', '-o', 'a.html']],
  ['size', ['size', pit, '--charts', 'charts', '-o', 'a.txt']],
  ['cook', ['cook', example('reverse-flow.yaml'), '-o', 'a.txt']],
  ['refine', ['refine', pit, '-o', 'a.txt']],
  ['evidence', ['evidence', '-o', 'a.txt']],
  ['fit', ['fit', pit, example('yard-cook.csv'), '--save', 'a.yaml', '-o', 'a.txt', '--charts', 'charts']],
];

export type KeptFolder = ReturnType<typeof eachKeptFolder>;

/** For every test a folder with another in it that was there before the run, and how long one may take to end there. */
export function eachKeptFolder() {
  const folder = eachScratch((fresh) => mkdirSync(fresh.at('kept')));
  let patience: number;
  beforeAll(async () => {
    const start = performance.now();
    await pitwright(['--version']);
    patience = Math.max(AT_ONCE, STARTS * (performance.now() - start));
  });
  return {
    get path() {
      return folder.path;
    },
    at: folder.at,
    /** on this machine as it is now [ms] */
    get patience() {
      return patience;
    },
  };
}

/** Stops a run some time after its first file was begun: it then computes, or draws. */
export function stopped(folder: KeptFolder, args: string[], signal: NodeJS.Signals, after: number): Promise<Ended> {
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

/** Ctrl-C ends the run in time, by its own number, with nothing left behind. */
export async function expectEnded(folder: KeptFolder, args: string[]): Promise<void> {
  const { code, took } = await stopped(folder, args, 'SIGINT', 500);
  expect(code).toBe(130);
  expect(took).toBeLessThan(folder.patience);
  expect(readdirSync(folder.path)).toEqual(['kept']);
}
