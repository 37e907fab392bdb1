import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { example, pitwright, scratch, type Run } from './support/run.js';

const plain = example('plain-24.yaml');

let folder: ReturnType<typeof scratch>;
beforeAll(() => {
  folder = scratch();
});
afterAll(() => folder.remove());

describe('size', () => {
  let run: Run;
  beforeAll(async () => {
    run = await pitwright(['size', plain, '--json', '--charts', folder.at('charts'), '--workers', '2']);
  }, 120_000);

  it('gives wanted, choices and the chosen one, and says its progress on stderr', () => {
    expect(run.code).toBe(0);
    const tree = JSON.parse(run.stdout);
    expect(Object.keys(tree)).toEqual(expect.arrayContaining(['wanted', 'choices', 'chosen', 'asDrawn', 'curves']));
    expect(tree.chosen).toBe(0);
    for (const key of ['intakes', 'throat', 'stack', 'margins', 'checks']) expect(tree.choices[0]).toHaveProperty(key);
    for (const { margin } of tree.choices[0].margins) expect(margin).toBeGreaterThanOrEqual(0);
    expect(run.progress).toMatch(/stacks tried/);
  });

  it('draws draft, air and the vent curve', () => {
    expect(readdirSync(folder.at('charts')).sort()).toEqual(['stack-air.png', 'stack-draft.png', 'vent-curve.png']);
  });

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

  it.each([['1']])('--clean-air %s: exit 2', async (value) => {
    const { code, stderr } = await pitwright(['size', plain, '--clean-air', value]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/1\.2 to 20/);
  });
});
