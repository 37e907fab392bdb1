import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachKeptFolder, expectEnded, LONG, stopped } from './stoppedRuns.js';
import { example } from './support/run.js';

const pit = example('plain-24.yaml');

const folder = eachKeptFolder();

describe('Ctrl-C while it computes', () => {
  it.each(LONG.slice(0, -1))('ends %s at once, and nothing is left', (_, args) => expectEnded(folder, args));

  it('and so does a kill, which has a number of its own', async () => {
    const { code, took } = await stopped(folder, LONG.at(-1)![1], 'SIGTERM', 1500);
    expect(code).toBe(143);
    expect(took).toBeLessThan(folder.patience);
    expect(readdirSync(folder.path)).toEqual(['kept']);
  });

  it('takes away no folder that was there before, however empty', async () => {
    const charts = 'kept/charts/of today';
    const { code } = await stopped(
      folder,
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
    const { code, took } = await stopped(folder, ['estimate', pit, '-o', 'a.txt'], 'SIGINT', after);
    expect(took === null ? [0] : [0, 130]).toContain(code);
    if (took !== null) expect(took).toBeLessThan(folder.patience);
    expect(readdirSync(folder.path).filter((name) => name.startsWith('.'))).toEqual([]);
  }
});
