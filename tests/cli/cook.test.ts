import { describe, expect, it } from 'vitest';
import { expectFiles } from './cookFiles.js';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const market = example('reverse-flow.yaml');

describe('cook', () => {
  it('follows the day of a design, and gives CSV and a picture', async () => {
    const files = ['--csv', folder.at('day.csv'), '--charts', folder.at('charts')];
    const { code, stdout, stderr } = await pitwright(['cook', market, ...files]);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^.*cook\.png.*\n$/);
    expectFiles(folder);
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

  it('says what a design without one lacks', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', example('plain-24.yaml')]);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(/has no cook to follow\. Add one/);
  });
});

describe('cold-smoke', () => {
  const upright = example('offset-with-upright.yaml');

  it.each([[['--ceiling', '90'], /has no unit/]])('refuses %s', async (args, message) => {
    await expectRefusal(['cold-smoke', upright, ...args], 2, message);
  });
});
