import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { eachFourWays, expectRefused, FOUR_WAYS, LABELS } from './fourWays.js';
import { pitwright } from './support/run.js';

const files = eachFourWays();
const { fileOf } = files;

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
