import { readFileSync } from 'node:fs';
import { parse as parseCsv } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { ComparedOption, Comparison } from '../../src/study/compare/compare.js';
import { eachFourWays, expectRefused, FOUR_WAYS, LABELS } from './fourWays.js';
import { pitwright } from './support/run.js';

const files = eachFourWays();
const { folder, fileOf } = files;

async function compared(...args: string[]): Promise<Comparison> {
  const { code, stdout, stderr } = await pitwright(['compare', '--json', ...args]);
  expect({ code, stderr }).toMatchObject({ code: 0 });
  return JSON.parse(stdout) as Comparison;
}

describe('options of a design', () => {
  it('stand in the batch’s line of their design, and take what a row changes in it', async () => {
    const design = JSON.stringify(parse(readFileSync(FOUR_WAYS, 'utf8')));
    const alone = await pitwright(['batch', '--steady', '--workers', '1'], { stdin: `${design}\n` });
    expect(alone.code).toBe(0);
    const line = JSON.parse(alone.stdout) as BatchLine;
    expect(line.options.map(({ name }) => name)).toEqual(LABELS.slice(1));
    expect(line.options[0].changes).toMatchObject({ 'chamber.plate': '3/16 in' });
    const masses = [line, ...line.options].map(({ geometry }) => geometry!.totalSteelMass_kg);
    expect(masses[1]).toBeLessThan(masses[0]);
    expect(masses[2]).toBeGreaterThan(masses[0]);

    const rows = 'name,chamber.plate,throat.area\na,3/8 in,\nb,,185 in^2\n';
    const changed = await pitwright(['batch', '--steady', '--workers', '1', '--changes', FOUR_WAYS], { stdin: rows });
    const [a, b] = changed.stdout
      .trim()
      .split('\n')
      .map((each) => JSON.parse(each) as BatchLine);
    // an option's own plate stays, one that says nothing of it gets the row's
    expect(a.options[0].geometry!.totalSteelMass_kg).toBeCloseTo(masses[1], 9);
    expect(a.geometry!.totalSteelMass_kg).toBeGreaterThan(masses[0]);
    // a throat that heavier plate leaves no room for
    expect(b.error).toBeUndefined();
    expect(b.options.map(({ error }) => error?.code)).toEqual([undefined, 'wrong-design', undefined]);
  });

  it('stand in table and CSV with what they cost', async () => {
    const { code, stdout } = await pitwright(['compare', FOUR_WAYS, '--csv', folder.at('table.csv')]);
    expect(code).toBe(0);
    for (const label of LABELS) expect(stdout).toContain(`- ${label}`);
    expect(stdout).toMatch(/paid back after \[cooks\] +– +at once/);
    expect(stdout).toMatch(/Prices: steel \$1\.20\/lb, insulation \$4\/ft², wood \$0\.30\/lb\./);
    for (const line of stdout.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    const rows: string[][] = parseCsv(readFileSync(folder.at('table.csv')));
    expect(rows[0].slice(3, 7)).toEqual(LABELS);
    const row = (what: string) => rows.find(([group, name]) => group === 'What it costs' && name === what)!;
    const [steel, insulation, both] = ['its steel', 'its insulation', 'all together'].map((what) =>
      row(what).slice(3, 7).map(Number),
    );
    both.forEach((cost, i) => expect(cost).toBeCloseTo(steel[i] + insulation[i], 3));
    expect(row('paid back after').slice(3, 7)).toEqual(['', 'at once', 'never', expect.stringMatching(/^\d+$/)]);
  });

  it('are compared as files with the same changes are, each by its name, with costs and payback', async () => {
    const comparison = await compared(FOUR_WAYS);
    expect(comparison.options.map(({ label }) => label)).toEqual(LABELS);
    expect(comparison.baseline).toBe('as drawn');
    const without = fileOf('drawn.yaml', (tree) => void delete tree.options);
    const wrapped = fileOf('wrapped.yaml', (tree) => {
      delete tree.options;
      tree.firebox.insulation = { material: 'ceramic fibre', thickness: '1 in', skin: '16 ga' };
    });
    const files = await compared(without, wrapped);
    const [drawn, , , option] = comparison.options;
    expect(files.options.map(({ result }) => result)).toEqual([drawn.result, option.result]);
    const cost = (of: ComparedOption) => of.differences.find(({ key }) => key === 'cookCost');
    expect(cost(files.options[1])).toEqual(cost(option));
    expect(files.options[1].payback).toEqual(option.payback);
    expect(drawn.payback).toBeNull();
    expect(option.payback).toMatchObject({ usedUp: null });
    expect(option.payback!.cooks).toBe(Math.ceil(option.payback!.extra / option.payback!.saved));
    expect(comparison.verdict).toMatch(/wrapped firebox instead of as drawn .*paid back after about \d+ cooks/);
    expect(comparison.verdict).toMatch(/3\/8 plate instead of as drawn .*never paid back/);
  });

  it('give way to --vary, which is said', async () => {
    const { code, stdout, stderr } = await pitwright([
      'compare',
      FOUR_WAYS,
      '--vary',
      'chamber.plate, firebox.insulation = 3/16 in; none | 1/4 in; { material: mineral wool, thickness: 1 in }',
    ]);
    expect(code).toBe(0);
    expect(stdout).toContain('3/16 in, no insulation');
    expect(stdout).toContain('1/4 in, mineral wool 1 in');
    expect(stdout).not.toContain('3/8 plate');
    expect(stderr).toContain('--vary takes the place of the options');
  });

  it('stand side by side on the buyer’s sheet', async () => {
    const { code, stdout } = await pitwright(['report', FOUR_WAYS, '--spread', '20']);
    expect(code).toBe(0);
    const words = stdout.replace(/^[^]*<body>/, '').replaceAll('&nbsp;', ' ');
    for (const label of [...LABELS, 'cost of steel and what covers it'])
      expect(words.includes(label), label).toBe(true);
    expect(/wrapped firebox has paid for itself in wood after about \d+ cooks/.test(words)).toBe(true);
  });

  it.each(['check', 'estimate', 'report', 'page'])('are refused by %s where one is faulty', (command) =>
    expectRefused(files, command),
  );
});

describe('prices', () => {
  it('of the command stand for the design’s', async () => {
    const dear = await compared(FOUR_WAYS, '--price', '$2.40/lb');
    const cheap = await compared(FOUR_WAYS);
    const cost = ({ options }: Comparison) => options[0].differences.find(({ key }) => key === 'steelCost')!.value!;
    expect(cost(dear)).toBeCloseTo(2 * cost(cheap), 6);
    const { code, stderr } = await pitwright(['compare', FOUR_WAYS, '--price', '$2.40']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/did you mean '\$2\.40\/lb'/);
  });
});

interface BatchLine {
  geometry?: { totalSteelMass_kg: number };
  error?: { code: string };
  options: {
    name: string;
    changes: Record<string, string>;
    geometry?: { totalSteelMass_kg: number };
    error?: { code: string };
  }[];
}
