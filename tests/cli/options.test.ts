import { readFileSync } from 'node:fs';
import { parse as parseCsv } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { eachFourWays, expectRefused, FOUR_WAYS, LABELS } from './fourWays.js';
import { pitwright } from './support/run.js';

const files = eachFourWays();
const { folder, fileOf } = files;

describe('options of a design', () => {
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

  it('stand in the batch’s line of their design, and take what a row changes in it', async () => {
    const design = JSON.stringify(parse(readFileSync(FOUR_WAYS, 'utf8')));
    const alone = await pitwright(['batch', '--steady'], { stdin: `${design}\n` });
    expect(alone.code).toBe(0);
    const line = JSON.parse(alone.stdout) as BatchLine;
    expect(line.options.map(({ name }) => name)).toEqual(LABELS.slice(1));
    expect(line.options[0].changes).toMatchObject({ 'chamber.plate': '3/16 in' });
    const masses = [line, ...line.options].map(({ geometry }) => geometry!.totalSteelMass_kg);
    expect(masses[1]).toBeLessThan(masses[0]);
    expect(masses[2]).toBeGreaterThan(masses[0]);

    const rows = 'name,chamber.plate,throat.area\na,3/8 in,\nb,,185 in^2\n';
    const changed = await pitwright(['batch', '--steady', '--changes', FOUR_WAYS], { stdin: rows });
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

  it.each(['compare'])('are refused by %s where one is faulty', (command) => expectRefused(files, command));
});

describe('prices', () => {
  it('in two currencies are not compared', async () => {
    const euros = fileOf('euros.yaml', (tree) => {
      delete tree.options;
      tree.prices = { steel: '2 €/kg' };
    });
    const { code, stdout, stderr } = await pitwright(['compare', FOUR_WAYS, euros]);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(/'\$' and '€'/);
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
