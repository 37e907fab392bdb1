import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');
const cook = example('yard-cook.csv');
const readCook = () => readFileSync(cook, 'utf8');
const SHORT = readCook().split('\n').slice(0, 60).join('\n');

describe('fit', () => {
  it('prints what it finds in a short log, with its interval, and saves it', async () => {
    const [log, save] = [folder.at('short.csv'), folder.at('yard.fitted.yaml')];
    writeFileSync(log, SHORT);
    const { code, stdout } = await pitwright(['fit', plain, log, '--free', 'wood.heat', '--save', save]);
    expect(code).toBe(0);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/On the part that was not fitted .* it is off by [\d.]+ °F/);
    expect(stdout).toMatch(/^ +(?:1 +)?wood\.heat.* to /m);
    expect(readFileSync(save, 'utf8')).toMatch(/^fitted:[^]*wood\.heat/m);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
  });

  it.each([
    [['--save', 'short.csv'], 2, /would overwrite the log itself/],
    [['short.csv'], 3, /this log counts already/],
  ])('refuses %s', async (args, exit, message) => {
    writeFileSync(folder.at('short.csv'), SHORT);
    const { code, stdout, stderr } = await pitwright(['fit', plain, 'short.csv', ...args], { cwd: folder.path });
    expect({ code, stdout }).toEqual({ code: exit, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\n {4}at /);
  });

  it('names every fault of a log, with line and column', async () => {
    const path = folder.at('bad.csv');
    writeFileSync(path, readCook().replace('middle [°F]', 'midle [°F]').replace('wood [lb]', 'wood [°F]'));
    const stderr = await expectRefusal(['fit', plain, path], 3, /bad\.csv:2:\d+: .*midle.*did you mean 'middle/);
    expect(stderr).toMatch(/bad\.csv:2:\d+: .*wood/);
    const missing = await pitwright(['fit', plain, folder.at('bat.csv')]);
    expect(missing.stderr).toMatch(/no such file\. Did you mean .*bad\.csv\?/);
  });

  /** The made-up cook's rows with its cells changed, its header as it was. */
  function changedLog(change: (cells: string[]) => string[], rows = 300): string {
    const path = folder.at('changed.csv');
    const [about, header, ...table] = readCook().split('\n').slice(0, rows);
    writeFileSync(path, [about, header, ...table.map((row) => change(row.split(',')).join(',')), ''].join('\n'));
    return path;
  }

  it('refuses more wood than the pit can burn, before it computes, and calls a running total by its name', async () => {
    let total = 0;
    const log = changedLog((c) => {
      total += Number(c[5]) || 0;
      return c.map((cell, k) => (k === 5 && c.length > 5 ? String(total) : cell));
    }, 240);
    await expectRefusal(
      ['fit', plain, log, '--save', folder.at('a.yaml')],
      3,
      /changed\.csv: .*wood.* lb.*more than this pit can burn.*running total/,
    );
    expect(existsSync(folder.at('a.yaml'))).toBe(false);
  });
});

describe('the example log', () => {
  it('says that it is made up, and is what its script makes', () => {
    expect(readCook()).toMatch(/^# MADE UP .* no pit was measured/);
    // against the library as it was last bundled, where there is one
    if (existsSync('dist/index.js') && process.env.CI) {
      expect(execFileSync(process.execPath, ['examples/made-up-log.mjs'], { encoding: 'utf8' })).toBe(readCook());
    }
  });
});
