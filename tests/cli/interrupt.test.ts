import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { pitwright, scratch } from './support/run.js';
import { AT_ONCE, STARTS, type Ended, LONG } from './stoppedRuns.js';

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
  it.each(LONG.slice(-1))('ends %s at once, with nothing left behind', (_, args) => expectEnded(args));
});
