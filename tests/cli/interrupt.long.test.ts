import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { example, pitwright, scratch } from './support/run.js';
import { AT_ONCE, STARTS, type Ended, pit, LONG } from './stoppedRuns.js';

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

async function expectEnded(args: string[]): Promise<void> {
  const { code, took } = await stopped(args, 'SIGINT', 500);
  expect(code).toBe(130);
  expect(took).toBeLessThan(patience);
  expect(readdirSync(folder.path)).toEqual(['kept']);
}

describe('Ctrl-C while it computes', () => {
  it.each(LONG.slice(0, -1))('ends %s at once, and nothing is left', (_, args) => expectEnded(args));

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
