import { describe, expect, it } from 'vitest';
import { changeTree, combinations, parseVariation, type Tree, type Variation } from '../../src/design/vary.js';

const read = (text: string): Variation => {
  const variation = parseVariation(text);
  if ('problem' in variation) throw new Error(variation.problem);
  return variation;
};
const problemOf = (text: string) => (parseVariation(text) as { problem: string }).problem;

const TREE: Tree = {
  firebox: { shape: 'round', plate: '1/4 in', intakes: [{ open: '100 %' }, { open: '50 %' }] },
  chamber: { plate: '1/4 in', insulation: { material: 'ceramic fibre', thickness: '2 in' } },
  stacks: [{ height: '36 in' }],
};
const changed = (path: string, value: string): Tree => {
  const result = changeTree(TREE, { path, value });
  if ('problem' in result) throw new Error(result.problem);
  return result.tree;
};
const problemIn = (path: string, value: string) => (changeTree(TREE, { path, value }) as { problem: string }).problem;

describe('a variation', () => {
  it.each([
    ['chamber.plate=1/8 in | 3/16 in | 1/4 in', 'chamber.plate', ['1/8 in', '3/16 in', '1/4 in']],
    [' fire.heat = 70,000 BTU/h|90,000 BTU/h ', 'fire.heat', ['70,000 BTU/h', '90,000 BTU/h']],
    ['stacks[0].height=30 in', 'stacks[0].height', ['30 in']],
    [
      'chamber.insulation=none | { thickness: 2 in, skin: 16 ga }',
      'chamber.insulation',
      ['none', '{ thickness: 2 in, skin: 16 ga }'],
    ],
    ['firebox.diameter="24 in pipe, standard wall" | 26"', 'firebox.diameter', ['"24 in pipe, standard wall"', '26"']],
    ['gauge=middle | fireEnd', 'gauge', ['middle', 'fireEnd']],
  ])('%s', (text, path, values) => {
    expect(read(text)).toMatchObject({ path, values });
  });

  it.each([
    ['chamber.plate', /no '='/],
    ['=1/4 in', /names no field/],
    ['chamber plate=1/4 in', /names no field/],
    ['__proto__.x=1', /names no field/],
    ['chamber..plate=1', /names no field/],
    ['chamber.plate=', /empty value/],
    ['chamber.plate=1/4 in |', /empty value/],
    ['chamber.plate=| 1/4 in', /empty value/],
    [`chamber.plate=${Array.from({ length: 30 }, () => '1 in').join('|')}`, /30 values; up to 24/],
  ])('is told what is wrong with %s', (text, problem) => {
    expect(problemOf(text)).toMatch(problem);
  });

  it('makes every combination, the first values first', () => {
    const all = combinations([read('a.b=1 | 2'), read('c.d=x | y')]);
    expect(all.map((changes) => changes.map(({ value }) => value).join())).toEqual(['1,x', '1,y', '2,x', '2,y']);
    expect(combinations([])).toEqual([[]]);
  });
});

describe('a change of a tree', () => {
  it('sets one field, and leaves the tree it came from alone', () => {
    const before = structuredClone(TREE);
    expect(changed('chamber.plate', '3/8 in')).toMatchObject({
      chamber: { plate: '3/8 in' },
      firebox: { plate: '1/4 in' },
    });
    expect(TREE).toEqual(before);
  });

  it('sets every part with all, and every item of a list without an index', () => {
    expect(changed('all.plate', '3/8 in')).toMatchObject({
      firebox: { plate: '3/8 in' },
      chamber: { plate: '3/8 in' },
    });
    expect(changed('all.plate', '3/8 in')).not.toHaveProperty('upright');
    expect(changed('firebox.intakes.open', '25 %')).toMatchObject({
      firebox: { intakes: [{ open: '25 %' }, { open: '25 %' }] },
    });
    expect(changed('firebox.intakes[1].open', '25 %')).toMatchObject({
      firebox: { intakes: [{ open: '100 %' }, { open: '25 %' }] },
    });
  });

  it('reads values as the file would', () => {
    expect(changed('chamber.insulation', '{ material: mineral wool, thickness: 1 in }')).toMatchObject({
      chamber: { insulation: { material: 'mineral wool', thickness: '1 in' } },
    });
    expect(changed('innerConvection', '1.5')).toMatchObject({ innerConvection: 1.5 });
    expect(changed('chamber.diameter', '"20 in pipe, standard wall"')).toMatchObject({
      chamber: { diameter: '20 in pipe, standard wall' },
    });
  });

  it('takes a field away with none, and makes the blocks that are not there', () => {
    expect(changed('chamber.insulation', 'none')).toHaveProperty('chamber', { plate: '1/4 in' });
    expect(changed('site.wind', 'none')).toEqual(TREE);
    expect(changed('site.wind', '10 mph')).toMatchObject({ site: { wind: '10 mph' } });
    expect(JSON.stringify(changed('constructor.name', 'x'))).toContain('"constructor":{"name":"x"}');
  });

  it.each([
    ['upright.plate', '1/4 in', /the design has no upright/],
    ['stacks[2].height', '20 in', /no stacks\[2\]: the list has 1/],
    ['firebox.shape.width', '20 in', /firebox\.shape holds no fields/],
    ['chamber[0].plate', '1 in', /chamber is no list/],
    ['fire', '{ heat: 70,000 BTU/h }', /split by its comma.*"70,000 BTU\/h"/],
    ['chamber.plate', '{ a: b', /can't be read/],
    ['chamber.plate', '[1, 2', /can't be read/],
    ['chamber.plate', '~', /is empty/],
  ])('of %s to %s is told what is wrong', (path, value, problem) => {
    expect(problemIn(path, value)).toMatch(problem);
  });
});
