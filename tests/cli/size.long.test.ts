import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { example, pitwright, scratch, type Run } from './support/run.js';
import { readFileSync } from 'node:fs';

const plain = example('plain-24.yaml');

let folder: ReturnType<typeof scratch>;
beforeAll(() => {
  folder = scratch();
});
afterAll(() => folder.remove());

describe('size', () => {
  it('prints a table of choices with margins, the file’s lines, other weather and rules of thumb, in 100 columns', async () => {
    const { code, stdout } = await pitwright(['size', plain, '--full']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^CHOSEN: /m);
    expect(stdout).toMatch(/^ {4}firebox:\n {6}intakes: \[/m);
    expect(stdout).toMatch(/OTHER WEATHER/);
    expect(stdout).toMatch(/RULES OF THUMB .*common practice, no source/);
    const lines = stdout.slice(0, stdout.indexOf('  In the design file')) + stdout.slice(stdout.indexOf('LIMITS'));
    for (const line of lines.split('\n')) expect([...line].length).toBeLessThanOrEqual(100);
    const block = /In the design file.*\n((?: {4}.*\n)+)/.exec(stdout)![1].replace(/^ {4}/gm, '');
    expect(Object.keys(parse(block))).toEqual(['firebox', 'throat', 'stacks']);
  }, 120_000);

  it('ends with 4 where nothing from stock fits, and says what stands in the way', async () => {
    const { code, stdout, stderr } = await pitwright(['size', example('insulated-upright.yaml'), '--json']);
    expect(code).toBe(4);
    expect(JSON.parse(stdout).chosen).toBeNull();
    expect(stderr).toMatch(/no size from stock keeps within every limit\n {2}- \d+ of \d+ stacks/);
    expect(stderr).toMatch(/close the firebox door/);
  }, 120_000);

  it.each([['many'], ['1e3']])('--clean-air %s: exit 2', async (value) => {
    const { code, stderr } = await pitwright(['size', plain, '--clean-air', value]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/1\.2 to 20/);
  });

  let run: Run;

  beforeAll(async () => {
    run = await pitwright(['size', plain, '--json', '--charts', folder.at('charts'), '--workers', '2']);
  }, 120_000);

  it('can be followed by hand: the choice written into the file, estimated by the command, gives its margins', async () => {
    const { choices, chosen } = JSON.parse(run.stdout);
    const { fields, intakes, margins } = choices[chosen];
    const file = parse(readFileSync(plain, 'utf8'));
    const write = (open: number) => {
      const [vent] = fields.firebox.intakes;
      const firebox = { ...file.firebox, intakes: [{ ...vent, open: `${Math.round(100 * open)} %` }] };
      return stringify({ ...file, firebox, throat: fields.throat, stacks: fields.stacks });
    };
    const estimated = async (open: number) =>
      JSON.parse((await pitwright(['estimate', '-', '--json'], { stdin: write(open) })).stdout);
    const value = (key: string) => margins.find((each: { key: string }) => each.key === key).value;
    const { assumed } = await estimated(1);
    expect(assumed.letInRatio).toBeCloseTo(value('air'), 6);
    expect(assumed.draft.stackVelocity_m_per_s).toBeCloseTo(value('stackSpeed'), 6);
    const { steady } = await estimated(intakes.holdOpening);
    expect(steady.draft.stackVelocity_m_per_s).toBeCloseTo(value('holdStackSpeed'), 6);
  });
});

beforeAll(() => {
  folder = scratch();
});
afterAll(() => folder.remove());
