import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseVariation, type Variation } from '../../../src/design/vary.js';
import { platesOf } from '../../../src/design/plates.js';
import { geometryOf } from '../../../src/design/geometryOf.js';
import { compare } from '../../../src/study/compare/compare.js';
import type { Equal } from '../../../src/study/compare/equalShape.js';
import { optionsOf, type OptionRead } from '../../../src/study/compare/options.js';
import { distinctLabels } from '../../../src/study/compare/distinctLabels.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { comparedAsUsual } from '../../support/compared.js';
import { PLAIN, options, of } from './comparedDesigns.js';

async function faultsOf(vary: string[], equal?: Equal): Promise<string> {
  const made = await optionsOf(
    PLAIN,
    'pit.yaml',
    vary.map((each) => parseVariation(each) as Variation),
    equal,
  );
  return 'faults' in made ? made.faults.join('\n') : '';
}

describe('equal options', () => {
  it('differ by exactly nothing, and the verdict says so', async () => {
    const comparison = compare(await options(['chamber.plate=1/4 in | 0.25 in | 6.35 mm']), USUAL_SETTINGS);
    expect(comparison.options.map(({ label }) => label)).toEqual(['1/4 in', '0.25 in', '6.35 mm']);
    for (const { differences } of comparison.options) {
      expect(differences.length).toBeGreaterThan(25);
      for (const { difference, none } of differences) {
        expect(difference).toBe(0);
        expect(none).toBe(true);
      }
    }
    const said = comparison.verdict.split('\n');
    expect(said).toHaveLength(2);
    for (const sentence of said) expect(sentence).toMatch(/no difference in anything a builder weighs up\.$/);
  });

  it('stay told apart by their labels', async () => {
    const made = await options(['chamber.plate=1/4 in | 1/4 in']);
    expect(made.map(({ label }) => label)).toEqual(['1/4 in', '1/4 in (2)']);
    const labels = (given: string[]) => distinctLabels(given.map((label) => ({ label }))).map(({ label }) => label);
    expect(labels(['a', 'a', 'a (2)', 'a'])).toEqual(['a', 'a (3)', 'a (2)', 'a (4)']);
  });
});

describe('one plate for all', () => {
  // a firebox heavier than the chamber, a chamber door of the chamber's plate, a firebox door of its own
  const HEAVY = PLAIN.replace(
    'plate: 1/4 in',
    'plate: 3/8 in\n  door: { width: 14 in, height: 16 in, plate: 3/16 in }',
  ).replace(/(chamber:[^]*?plate: 1\/4 in)/, '$1\n  door: { width: 30 in, height: 12 in, plate: 0.25 in }');
  const plateOf = ({ design }: OptionRead) =>
    Object.fromEntries(platesOf(design).map(({ name, plate }) => [name, Number((plate / 0.0254).toFixed(4))]));

  it('says of every option that it thins what was drawn heavier, and of no other', async () => {
    const made = await options(['all.plate=1/8 in | 3/8 in | 1/2 in'], undefined, HEAVY);
    expect(made.map(({ warnings }) => warnings.map(({ code, where }) => [code, where]))).toEqual([
      [['heavier-part-thinned', 'firebox']],
      [],
      [],
    ]);
    expect(made[0].warnings[0]).toMatchObject({ value: 0.003175, limits: { low: 0.009525 } });
    const equal = await options(['all.plate=1/8 in | 1/2 in']);
    expect(equal.flatMap(({ warnings }) => warnings)).toEqual([]);
  });

  it('moves a door of the same plate and leaves one of another', async () => {
    const [thin] = await options(['all.plate=1/8 in'], undefined, HEAVY);
    expect(plateOf(thin)).toEqual({
      firebox: 0.125,
      'firebox door': 0.1875,
      chamber: 0.125,
      'chamber door': 0.125,
      stack: 0.1196,
    });
    expect(thin.changes).toContainEqual({ path: 'chamber.door.plate', value: '1/8 in' });
  });

  it('by name leaves the rest alone, in any order of the changes', async () => {
    const [named] = await options(['chamber.plate, stacks.wall = 3/16 in'], undefined, HEAVY);
    expect(plateOf(named)).toMatchObject({ firebox: 0.375, chamber: 0.1875, 'chamber door': 0.1875, stack: 0.1875 });
    expect([named.label, named.warnings]).toEqual(['3/16 in', []]);
    const both = ['chamber.plate=1/2 in', 'all.plate=1/8 in'];
    for (const vary of [both, [...both].reverse()]) {
      expect(plateOf((await options(vary, undefined, HEAVY))[0])).toMatchObject({ firebox: 0.125, chamber: 0.5 });
    }
  });
});

describe('plate', () => {
  it('buys smaller swings, costs weight and time, and leaves the wood to hold alone', async () => {
    const priced = `${PLAIN}prices: { steel: $2/kg }\n`;
    const comparison = comparedAsUsual(await options(['all.plate=1/8 in | 1/4 in'], undefined, priced));
    const [thin, thick] = comparison.options;
    expect(of(comparison, 1, 'swing.thermometer_K').difference).toBeLessThan(0);
    expect(of(comparison, 1, 'soaked_s').share).toBeGreaterThan(0.3);
    expect(of(comparison, 1, 'hold.wood_kg_per_s').none).toBe(true);
    expect(of(comparison, 1, 'door.recovery_s').none).toBe(true);
    expect(of(comparison, 1, 'steel_kg').difference).toBeCloseTo(
      thick.result.geometry.totalSteelMass_kg - thin.result.geometry.totalSteelMass_kg,
      10,
    );
    expect(of(comparison, 1, 'steelCost').difference).toBeCloseTo(2 * of(comparison, 1, 'steel_kg').difference!, 8);
    expect(comparison.verdict).toMatch(
      /^1\/4 in instead of 1\/8 in buys .*years of scale.*; costs .*more steel \(.*\$\d+ more\).*longer soak.*; .*makes no difference to .*wood to hold/,
    );
  });

  it('can be held against any of the options', async () => {
    const made = await options(['all.plate=1/8 in | 1/4 in']);
    const comparison = comparedAsUsual(made, 1);
    expect(comparison.baseline).toBe('1/4 in');
    expect(of(comparison, 1, 'steel_kg')).toMatchObject({ difference: 0, none: true });
    expect(of(comparison, 0, 'steel_kg').difference).toBeLessThan(0);
    expect(comparison.verdict).toMatch(/^1\/8 in instead of 1\/4 in buys .*less steel/);
  });
});

describe('insulation', () => {
  it('buys wood and costs steel and time, as plate does not', async () => {
    const made = await options(['chamber.insulation=none | { material: ceramic fibre, thickness: 2 in, skin: 16 ga }']);
    expect(made.map(({ label }) => label)).toEqual(['no insulation', 'ceramic fibre 2 in 16 ga']);
    const comparison = comparedAsUsual(made);
    expect(of(comparison, 1, 'hold.wood_kg_per_s').share).toBeLessThan(-0.3);
    expect(of(comparison, 1, 'steel_kg').difference).toBeGreaterThan(0);
    expect(of(comparison, 1, 'hold.heatLoss_W.chamber').share).toBeLessThan(-0.5);
    expect(comparison.verdict).toMatch(/buys .*less wood to hold/);
  });
});

describe('square against round', () => {
  const firebox = ({ design }: OptionRead) => geometryOf(design).parts.find(({ name }) => name === 'firebox')!;

  it('at equal length keeps the size across', async () => {
    const [round, square] = await options(['firebox.shape=round | square'], 'length');
    expect(square.design.firebox).toMatchObject({ shape: 'square', length: round.design.firebox.length });
    expect(square.design.firebox.width).toBeCloseTo(round.design.firebox.width, 6);
    expect(square.changes).toContainEqual({ path: 'firebox.width', value: '24.0000 in' });
  });

  it('at equal volume keeps the volume: the square of the bore’s area', async () => {
    const [round, square] = await options(['firebox.shape=round | square'], 'volume');
    expect(firebox(square).gasVolume / firebox(round).gasVolume).toBeCloseTo(1, 4);
    // derived: side inside = bore sqrt(pi) / 2
    const { plate, width } = round.design.firebox;
    expect(square.design.firebox.width - 2 * plate).toBeCloseTo(((width - 2 * plate) * Math.sqrt(Math.PI)) / 2, 5);
  });

  it('at equal weight keeps the weight', async () => {
    const [round, square] = await options(['firebox.shape=round | square'], 'weight');
    expect(firebox(square).steelMass / firebox(round).steelMass).toBeCloseTo(1, 4);
  });

  it('works from a pipe, whose wall stays the plate, and back from a square', async () => {
    const pipe = PLAIN.replace(
      'diameter: 24 in\n  length: 24 in\n  plate: 1/4 in',
      'diameter: 24 in pipe, standard wall\n  length: 24 in',
    );
    const [round, square] = await options(['firebox.shape=round | square'], 'volume', pipe);
    expect(square.design.firebox.plate).toBeCloseTo(round.design.firebox.plate, 8);
    const boxed = readFileSync('examples/boxed-22.yaml', 'utf8');
    const [first, second] = await options(['firebox.shape=square | round'], 'volume', boxed);
    expect(first.design.firebox.shape).toBe('square');
    expect(firebox(second).gasVolume / firebox(first).gasVolume).toBeCloseTo(1, 4);
  });

  it('is measured against the option’s own plate', async () => {
    const made = await options(['firebox.shape=round | square', 'firebox.plate=1/4 in | 1/2 in'], 'weight');
    expect(made.map(({ label }) => label)).toEqual([
      'round, 1/4 in',
      'round, 1/2 in',
      'square, 1/4 in',
      'square, 1/2 in',
    ]);
    expect(firebox(made[3]).steelMass / firebox(made[1]).steelMass).toBeCloseTo(1, 4);
  });
});

describe('an option that cannot be', () => {
  it('is told with the --vary that makes it, field and value', async () => {
    expect(await faultsOf(['chamber.plate=1/4 in | 5 ft'])).toMatch(
      /^--vary 'chamber\.plate=1\/4 in \| 5 ft': with '5 ft': chamber\.plate: '5 ft' is thicker than half the part/,
    );
    expect(await faultsOf(['chamber.plat=1/4 in'])).toMatch(/is no field here.*did you mean 'plate'/);
    expect(await faultsOf(['firebox.diameter=24 in | 10 in'])).toMatch(/with '10 in': throat\.area: .* is larger than/);
    expect(await faultsOf(['firebox.shape=round | oval'], 'volume')).toMatch(/'oval' is no shape/);
    expect(await faultsOf(['chamber.contents=none | [{ name: stone, mass: Infinity lb, area: 1 ft^2 }]'])).toMatch(
      /contents\[0\]\.mass: 'Infinity lb'/,
    );
  });

  it('is still compared when only the target is out of its reach', async () => {
    const comparison = comparedAsUsual(await options(['throat.area=90 in^2 | 1 in^2']));
    expect(comparison.options[1].result.steady).toBeNull();
    expect(comparison.options[1].studies).toBeNull();
    expect(comparison.options.map(({ shortfall }) => shortfall?.code ?? null)).toEqual([null, 'not-held']);
    expect(comparison.verdict).toMatch(
      /^1 in\^2 never reads 250 °F: no fire that its air allows is enough; \d+ °F is the most/,
    );
    expect(comparison.verdict.split('\n')).toHaveLength(1);
    expect(of(comparison, 1, 'hold.fire_W')).toMatchObject({ value: null, difference: null, none: false });
  });
});
