import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { example, pitwright, scratch } from './support/run.js';

let folder: ReturnType<typeof scratch>;
beforeEach(() => {
  folder = scratch();
});
afterEach(() => folder.remove());

const market = example('reverse-flow.yaml');

describe('cook', () => {
  it('follows the day of a design', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', market]);
    expect(code).toBe(0);
    // on a busy machine it says what it is doing
    expect(stderr.replace('pitwright: computing ...\n', '')).toBe('');
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/The day takes [\d.]+ lb \([\d.]+ kg\) of wood/);
    expect(stdout).toMatch(/last wood +5 h 47 min/);
    for (const line of stdout.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
  });

  it('gives JSON, CSV and a picture', async () => {
    const args = ['cook', market, '--json', '--csv', folder.at('day.csv'), '--charts', folder.at('charts')];
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    const { cook } = JSON.parse(stdout);
    expect(cook.energyError).toBeLessThan(1e-3);
    expect(cook.inBand_share).toBeGreaterThan(0.8);
    const rows: string[][] = parse(readFileSync(folder.at('day.csv')));
    expect(rows[0]).toEqual(['time [min]', 'fire [BTU/h]', 'thermometer [degF]', 'gas [degF]', 'steel [degF]']);
    expect(rows).toHaveLength(cook.curve.time_s.length + 1);
    expect(existsSync(folder.at('charts/cook.png'))).toBe(true);
  });

  it('tells what the reader chose, and what is left of the wood', async () => {
    const text = readFileSync(market, 'utf8');
    const pipe = text.replace(/(chamber:[^]*?)diameter: [^\n#]*/, '$1diameter: 30 in pipe, extra strong ');
    writeFileSync(folder.at('pit.yaml'), pipe);
    const { code, stdout, stderr } = await pitwright(['cook', folder.at('pit.yaml'), '--json']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^pitwright: chamber\.plate: /m);
    const { cook, warnings } = JSON.parse(stdout);
    expect(warnings).toMatchObject([{ code: 'wall-not-of-pipe', where: 'chamber.plate' }]);
    expect(cook.left_kg).toBeGreaterThan(0);
    expect(cook.left_kg).toBeLessThan(cook.woodTending_kg);
  });

  it('says what a design without one lacks', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', example('plain-24.yaml')]);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(/has no cook to follow\. Add one/);
  });
});

describe('cold-smoke', () => {
  const upright = example('offset-with-upright.yaml');

  it('says whether the pit can, on which day and with what fire', async () => {
    const cool = await pitwright(['cold-smoke', upright, '--air', '45 °F']);
    expect(cool.code).toBe(0);
    expect(cool.stdout).toMatch(/^Yes: the upright stays under 90 °F/m);
    const warm = await pitwright(['cold-smoke', upright, '--air', '86 °F']);
    expect(warm.stdout).toMatch(/^No: on a day of 86 °F .* the smallest steady fire already warms/m);
    const hot = await pitwright(['cold-smoke', upright, '--air', '95 °F', '--json']);
    expect(JSON.parse(hot.stdout).coldSmoke).toMatchObject({ possible: false, why: 'air-too-warm' });
  });

  it('takes another ceiling and another least fire', async () => {
    const { stdout } = await pitwright([
      'cold-smoke',
      upright,
      '--ceiling',
      '120 °F',
      '--least',
      '1 lb wood/h',
      '--json',
    ]);
    const { coldSmoke } = JSON.parse(stdout);
    expect(coldSmoke.possible).toBe(true);
    expect(coldSmoke.fire.wood_kg_per_s * 3600).toBeCloseTo(0.45359237, 6);
  });

  it.each([
    [['--ceiling', '90'], /has no unit/],
    [['--ceiling', '900 °F'], /out of range; allowed: 40 °F to 200 °F/],
    [['--least', '0 W'], /out of range/],
    [['--air', 'warm'], /does not begin with a number/],
  ])('refuses %s', async (args, message) => {
    const { code, stdout, stderr } = await pitwright(['cold-smoke', upright, ...args]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
  });
});
