import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { expectTold, plain, plates } from './comparedPlates.js';
import { eachScratch, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

describe('compare', () => {
  it('gives verdict and table, within 100 columns, the table as CSV, and every chart', async () => {
    const { code, stderr } = await pitwright([
      ...plates,
      '--workers',
      '1',
      '--price',
      '$1.20/lb',
      '-o',
      folder.at('table.txt'),
      '--csv',
      folder.at('table.csv'),
      '--charts',
      folder.at('charts'),
    ]);
    expect({ code, said: stderr.includes('charts in') }).toEqual({ code: 0, said: true });
    expectTold(readFileSync(folder.at('table.txt'), 'utf8'), 'shop');
    const rows: string[][] = parse(readFileSync(folder.at('table.csv')));
    expect(rows[0].slice(0, 5)).toEqual(['group', 'quantity', 'unit', '1/8 in', '1/4 in']);
    const steel = rows.find(([, what]) => what === 'all steel')!;
    expect(Number(steel[5])).toBeCloseTo(Number(steel[4]) - Number(steel[3]), 3);
    expect(Number(steel[6])).toBeCloseTo((100 * Number(steel[5])) / Number(steel[3]), 3);
    expect(rows.every((row) => row.length === rows[0].length)).toBe(true);
    expect(readdirSync(folder.at('charts')).sort()).toEqual([
      'compare-door.png',
      'compare-heat-loss.png',
      'compare-splits-steel.png',
      'compare-splits.png',
      'compare-warm-up-steel.png',
      'compare-warm-up.png',
    ]);
  });
});

describe('compare refuses', () => {
  it.each([
    ['a --vary without values', ['--vary', 'chamber.plate'], 2, /has no '='/],
    [
      'a value that can’t be built',
      ['--vary', 'chamber.plate=1/4 in | 5 ft'],
      3,
      /--vary 'chamber\.plate=1\/4 in \| 5 ft': with '5 ft'/,
    ],
  ])('%s', async (_, args, code, message) => {
    await expectRefusal(['compare', plain, ...args], code, message);
  });
});
