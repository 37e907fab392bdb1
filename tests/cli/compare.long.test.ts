import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectTold, plain, plates } from './comparedPlates.js';
import { eachScratch, example, pitwright } from './support/run.js';

const folder = eachScratch();

describe('compare', () => {
  it.each(['shop', 'si'] as const)('prints verdict and table on stdout in %s units', async (units) => {
    const { code, stdout } = await pitwright([...plates, '--price', '$1.20/lb', '--units', units]);
    expect(code).toBe(0);
    expectTold(stdout, units);
  });

  it('gives the contract as JSON, the same bytes on every run and from standard input', async () => {
    const first = await pitwright([...plates, '--json']);
    const tree = JSON.parse(first.stdout);
    expect(Object.keys(tree)).toEqual(expect.arrayContaining(['baseline', 'options', 'verdict']));
    expect(tree.baseline).toBe('1/8 in');
    for (const option of tree.options) {
      expect(Object.keys(option)).toEqual(expect.arrayContaining(['label', 'changes', 'result', 'studies']));
      expect(Object.keys(option.result)).toEqual(
        expect.arrayContaining(['steady', 'assumed', 'warmUp', 'balance', 'geometry', 'design']),
      );
      for (const study of ['door', 'gust', 'shower', 'swing', 'coolDown']) {
        expect(option.studies[study].energyError).toBeLessThan(1e-3);
      }
    }
    expect((await pitwright([...plates, '--json'])).stdout).toBe(first.stdout);
    const piped = ['compare', '-', ...plates.slice(2), '--json'];
    const fromPipe = JSON.parse((await pitwright(piped, { stdin: readFileSync(plain) })).stdout);
    expect(fromPipe.options).toEqual(tree.options);
  });

  it('compares designs, and every value with every other', async () => {
    const two = await pitwright(['compare', plain, example('boxed-22.yaml'), '--json']);
    expect(JSON.parse(two.stdout).options.map(({ label }: { label: string }) => label)).toEqual([
      'Backyard 24',
      'Porch 22, boxed firebox',
    ]);
    const product = await pitwright([...plates, '--vary', 'site.wind=0 mph | 10 mph', '--baseline', '3', '--json']);
    const { baseline, options } = JSON.parse(product.stdout);
    expect(options).toHaveLength(4);
    expect(baseline).toBe('1/4 in, 0 mph');
  });

  it('opens the door as long as it is told, and for no time changes nothing', async () => {
    const { stdout } = await pitwright([...plates, '--door', '0 s', '--json']);
    for (const { studies } of JSON.parse(stdout).options) {
      expect(studies.door.dip_K).toBeLessThan(1e-3);
      expect(studies.door.recovery_s).toBe(0);
    }
  });

  it('answers with 0 where one option can’t hold the target, with 4 where none can', async () => {
    const one = await pitwright(['compare', plain, '--vary', 'throat.area=90 in^2 | 1 in^2']);
    expect(one.code).toBe(0);
    // before all else but the title
    expect(one.stdout.split('\n\n')[1]).toMatch(/^1 in\^2 never reads 250 °F: no fire/);
    const none = await pitwright(['compare', plain, '--vary', 'throat.area=1 in^2 | 2 in^2']);
    expect(none.code).toBe(4);
    expect(none.stderr).toMatch(/no fire holds the target in any of these options/);
  });
});

describe('compare refuses', () => {
  it.each([
    [
      'an infinite weight',
      ['--vary', 'chamber.contents=[{ name: stone, mass: Infinity lb, area: 1 ft^2 }]'],
      3,
      /Infinity lb/,
    ],
    ['a field varied twice', ['--vary', 'chamber.plate=1 in', '--vary', 'chamber.plate=2 in'], 2, /is varied twice/],
    ['a shape without what stays equal', ['--vary', 'firebox.shape=round | square'], 2, /needs --equal/],
    ['--equal without a shape', ['--vary', 'all.plate=1/4 in', '--equal', 'volume'], 2, /goes with a --vary of/],
    ['an infinite price', ['--price', '$Infinity/lb'], 2, /--price '\$Infinity\/lb' is no price/],
    ['a door that stays open all day', ['--door', '1 d'], 2, /out of range; allowed: 0 s to 1 h/],
    ['a baseline that is not there', ['--baseline', '3'], 2, /there are 1 options/],
    [
      'too many options',
      ['--vary', 'all.plate=1/8 in|3/16 in|1/4 in|3/8 in|1/2 in', '--vary', 'site.wind=0 mph|1 mph|2 mph|3 mph|4 mph'],
      2,
      /makes 25 options/,
    ],
    ['a part that is not there', ['--vary', 'upright.plate=1/4 in'], 3, /the design has no upright/],
  ])('%s', async (_, args, code, message) => {
    const run = await pitwright(['compare', plain, ...args]);
    expect({ code: run.code, stdout: run.stdout }).toEqual({ code, stdout: '' });
    expect(run.stderr).toMatch(message);
    expect(run.stderr).not.toMatch(/^ +at /m);
  });

  it('a file with faults, and an output over a design', async () => {
    writeFileSync(folder.at('bad.yaml'), 'schema: 1\n');
    expect((await pitwright(['compare', plain, folder.at('bad.yaml')])).code).toBe(3);
    expect((await pitwright(['compare', plain, '-o', plain])).stderr).toMatch(/would overwrite the design/);
    expect((await pitwright(['compare', '-', '-'])).code).toBe(2);
  });
});
