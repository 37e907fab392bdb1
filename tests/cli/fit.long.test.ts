import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');
const cook = example('yard-cook.csv');
const readCook = () => readFileSync(cook, 'utf8');
/** What the script of the made-up log says that it was made with. */
const TRUTH = { innerConvection: 1.4, 'fire.radiant': 0.36, 'chamber.doorGap': 1.5, 'wood.heat': 0.92 };

/** The first of the log's rows alone, so that a fit is quick. */
function shortLog(rows: number): string {
  const path = folder.at('short.csv');
  writeFileSync(path, readCook().split('\n').slice(0, rows).join('\n'));
  return path;
}

describe('fit', () => {
  it('prints estimates with intervals, correlations, errors before and after, and what was left out of the log', async () => {
    const save = folder.at('yard.fitted.yaml');
    const args = ['fit', plain, cook, '--free', 'innerConvection, wood.heat', '--save', save];
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    expect(readFileSync(save, 'utf8')).toMatch(/^fitted:/m);
    const words = stdout.replace(/\s+/g, ' ');
    expect(words).toMatch(/On the part that was not fitted \(4 h 12 min to 6 h\) it is off by [\d.]+ °F/);
    expect(words).toMatch(/1 innerConvection 1 1\.\d+ 1\.\d+ to [12]\.?\d* \d+ %/);
    expect(words).toMatch(/2 wood\.heat [-\d.]+ 1/);
    expect(words).toMatch(/the log would rather move .*estimates\.stemFill \(more\)/);
    expect(words).toMatch(/Held as the design has them: fire\.radiant/);
    expect(words).toMatch(/gap of more than 5 usual steps/);
    expect(words).toMatch(/middle \[°F\] [\d.]+ °F/);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
    for (const line of stdout.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  it('finds what the made-up log was made with, and says how good it is where it was not fitted', async () => {
    const { code, stdout } = await pitwright(['fit', plain, cook, '--json', '--charts', folder.at('charts')]);
    expect(code).toBe(0);
    const result = JSON.parse(stdout);
    for (const [path, truth] of Object.entries(TRUTH)) {
      const { scale, value, low, high } = result.fitted.values.find((each: { path: string }) => each.path === path);
      expect(scale).toBe(['chamber.doorGap', 'wood.heat'].includes(path) ? 'times' : 'is');
      expect(low, path).toBeLessThan(truth);
      expect(high, path).toBeGreaterThan(truth);
      expect(Math.abs(value / truth - 1), path).toBeLessThan(path === 'chamber.doorGap' ? 0.2 : 0.05);
    }
    // made with 1.5 °F of noise and a lag of 20 s
    expect(result.quality.heldBack_K * 1.8).toBeLessThan(1.3 * 1.5);
    expect(result.quality.heldBackBefore_K * 1.8).toBeGreaterThan(20);
    // the middle probe was made to read 2.5 °F high, the stack end's 1 °F low
    const [fireEnd, middle, stackEnd] = result.cooks[0].channels.map((each: { offset_K: number }) => each.offset_K);
    expect(middle - stackEnd).toBeGreaterThan(1.2);
    expect(Math.abs(fireEnd)).toBeLessThan(1);
    expect(Math.abs(result.cooks[0].lag_s - 20)).toBeLessThan(5);
    for (const name of ['fit-2-middle.png', 'fit-2-middle-left-over.png', 'fit-4-firebox-steel.png']) {
      expect(statSync(folder.at(`charts/${name}`)).size).toBeGreaterThan(10_000);
    }
  });

  it('saves a file that a design can name, which then says what it rests on and spreads less', async () => {
    const saved = await pitwright([
      'fit',
      plain,
      cook,
      '--save',
      folder.at('yard.fitted.yaml'),
      '-o',
      folder.at('fit.txt'),
    ]);
    expect(saved).toMatchObject({ code: 0, stdout: '' });
    expect(saved.stderr).toContain("name it in a design as 'fitted: yard.fitted.yaml'");
    const design = folder.at('next.yaml');
    writeFileSync(design, `${readFileSync(plain, 'utf8')}fitted: yard.fitted.yaml\n`);
    const { code, stdout } = await pitwright(['estimate', design, '--spread', '20', '--json']);
    expect(code).toBe(0);
    const next = JSON.parse(stdout);
    expect(next.design.innerConvection).toBeGreaterThan(1.3);
    expect(next.design.fitted.logs[0].name).toBe('yard-cook.csv');
    const { low, high } = next.estimates.find(({ path }: { path: string }) => path === 'innerConvection');
    expect(high - low).toBeLessThan(0.3);
    const text = await pitwright(['estimate', design]);
    expect(text.stdout).toContain('yard-cook.csv');

    const again = await pitwright(['fit', design, cook]);
    expect(again).toMatchObject({ code: 3, stdout: '' });
    expect(again.stderr).toMatch(/this log counts already \(as yard-cook\.csv\)/);
  });

  it('takes the share to hold back with its % apart, and tells no quality where nothing is', async () => {
    const log = shortLog(150);
    const apart = await pitwright(['fit', plain, log, '--free', 'wood.heat', '--hold-back', '40', '%', '--json']);
    expect(apart.code).toBe(0);
    const { cooks } = JSON.parse(apart.stdout);
    expect(cooks[0].fittedTo_s / cooks[0].length_s).toBeCloseTo(0.6, 6);
    const none = await pitwright(['fit', plain, log, '--free', 'wood.heat', '--hold-back', '0%']);
    expect(none.stdout.replace(/\s+/g, ' ')).toMatch(
      /No part was held back, so that how good this fit is can't be told/,
    );
  });

  it('gives the same bytes every time', async () => {
    const log = shortLog(120);
    const [a, b] = [0, 1].map(() => pitwright(['fit', plain, log, '--free', 'innerConvection', '--json']));
    expect((await a).stdout).toBe((await b).stdout);
  });

  it.each([
    [['--save', cook], 2, /would overwrite the log itself/],
    [[cook], 3, /this log counts already/],
    [['--free', 'innerConvektion'], 2, /no estimate 'innerConvektion' to fit; did you mean 'innerConvection'\?/],
    [['--free', ' , '], 2, /--free: it names no estimate; allowed, commas between: /],
    [['--hold-back', '95%'], 2, /'95%' is out of range; allowed: a share from 0 % to 80 %/],
    [['--hold-back', '30'], 2, /--hold-back: '30' /],
  ])('refuses %s', async (args, exit, message) => {
    const { code, stdout, stderr } = await pitwright(['fit', plain, cook, ...args]);
    expect({ code, stdout }).toEqual({ code: exit, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\n {4}at /);
  });

  it('says so where a log that began hot has nothing left to fit', async () => {
    const path = folder.at('hot.csv');
    const rows = Array.from({ length: 80 }, (_, i) => `${i},${(400 - 0.5 * i).toFixed(1)},`);
    writeFileSync(path, ['time [min],middle [°F],wood [lb]', ...rows].join('\n'));
    await expectRefusal(
      ['fit', plain, path],
      3,
      /hot\.csv: 0 temperature readings are left to fit once the first hour is left out/,
    );
  });

  /** The made-up cook's rows with its cells changed, its header as it was. */
  function changedLog(change: (cells: string[]) => string[], rows = 300): string {
    const path = folder.at('changed.csv');
    const [about, header, ...table] = readCook().split('\n').slice(0, rows);
    writeFileSync(path, [about, header, ...table.map((row) => change(row.split(',')).join(',')), ''].join('\n'));
    return path;
  }

  it('does not save a fit that predicts worse than the design did, unless told to', async () => {
    // two probes in each other's place, the others not there
    const log = changedLog((c) =>
      c.map((cell, k) => (k === 1 ? c[3] : k === 3 ? c[1] : k === 2 || k === 4 ? '' : cell)),
    );
    const save = folder.at('yard.fitted.yaml');
    const args = [
      'fit',
      plain,
      log,
      '--free',
      'innerConvection,fire.radiant,wood.heat,estimates.stemFill',
      '--save',
      save,
    ];
    const refused = await pitwright([...args, '--json']);
    expect(refused.code).toBe(4);
    expect(existsSync(save)).toBe(false);
    const { quality, warnings } = JSON.parse(refused.stdout);
    expect(quality.heldBack_K).toBeGreaterThan(quality.heldBackBefore_K);
    expect(warnings.map(({ code }: { code: string }) => code)).toContain('predicts-worse');
    for (const error of [quality.heldBack_K, quality.heldBackBefore_K]) {
      expect(refused.stderr).toContain(`${(1.8 * error).toPrecision(3)} °F`);
    }
    expect(refused.stderr).toContain('--force');
    const forced = await pitwright([...args, '--force']);
    expect(forced.code).toBe(0);
    expect(readFileSync(save, 'utf8')).toMatch(/^fitted:/m);
    expect(forced.stdout.split('\n\n')[1]).toMatch(/^DOUBTFUL: it predicts worse/);
  });

  it('leaves nothing half-written where it stops', async () => {
    const save = folder.at('yard.fitted.yaml');
    const { code } = await pitwright(['fit', plain, folder.at('none.csv'), '--save', save]);
    expect(code).toBe(3);
    expect(existsSync(save)).toBe(false);
  });
});
