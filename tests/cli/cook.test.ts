import { existsSync, readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, pitwright } from './support/run.js';

const folder = eachScratch();

const market = example('reverse-flow.yaml');

describe('cook', () => {
  it('follows the day of a design', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', market]);
    expect(code).toBe(0);
    expect(stderr).toBe('');
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/The day takes \d+ splits of [\d.]+ lb \([\d.]+ kg\)/);
    // five hours of tending from the loading on, as the file asks
    const minutes = (what: string) => {
      const [, hours = '0', rest] = new RegExp(`^ +${what} +(?:(\\d+) h )?(\\d+) min`, 'm').exec(stdout)!;
      return 60 * Number(hours) + Number(rest);
    };
    expect(minutes('last wood') - minutes('loaded')).toBe(5 * 60);
    for (const line of stdout.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    expect(stdout).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
  });

  it('gives JSON, CSV and a picture', async () => {
    const args = ['cook', market, '--json', '--csv', folder.at('day.csv'), '--charts', folder.at('charts')];
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    const { cook } = JSON.parse(stdout);
    expect(cook.energyError).toBeLessThan(1e-3);
    expect(cook.inBand_share).toBeGreaterThan(0.5);
    const rows: string[][] = parse(readFileSync(folder.at('day.csv')));
    expect(rows[0]).toEqual(['time [min]', 'fire [BTU/h]', 'thermometer [degF]', 'gas [degF]', 'steel [degF]']);
    expect(rows).toHaveLength(cook.curve.time_s.length + 1);
    expect(existsSync(folder.at('charts/cook.png'))).toBe(true);
  });

  it('says what a design without one lacks', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', example('plain-24.yaml')]);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(/has no cook to follow\. Add one/);
  });
});

describe('cold-smoke', () => {
  const upright = example('offset-with-upright.yaml');

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

  it.each([[['--ceiling', '90'], /has no unit/]])('refuses %s', async (args, message) => {
    const { code, stdout, stderr } = await pitwright(['cold-smoke', upright, ...args]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
  });
});
