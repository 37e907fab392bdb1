import { describe, expect, it } from 'vitest';
import {
  changeAll,
  changeTree,
  combinations,
  eachField,
  fieldsOf,
  parseVariation,
  type Tree,
  type Variation,
} from '../../src/design/vary.js';

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
    ['stacks[1]=none', 'stacks[1]', ['none']],
    [
      'chamber.insulation=none | { thickness: 2 in, skin: 16 ga }',
      'chamber.insulation',
      ['none', '{ thickness: 2 in, skin: 16 ga }'],
    ],
    ['firebox.diameter="24 in pipe, standard wall" | 26"', 'firebox.diameter', ['"24 in pipe, standard wall"', '26"']],
    ['gauge=middle | fireEnd', 'gauge', ['middle', 'fireEnd']],
    ['chamber.plate,upright.plate = 3/16 in | 1/4 in', 'chamber.plate, upright.plate', ['3/16 in', '1/4 in']],
    [
      'chamber.plate, firebox.insulation = 3/16 in; none | 1/4 in',
      'chamber.plate, firebox.insulation',
      ['3/16 in; none', '1/4 in'],
    ],
  ])('%s', (text, path, values) => {
    expect(read(text)).toMatchObject({ path, values });
  });

  it.each([
    ['chamber.plate', /no '='/],
    ['=1/4 in', /names no field/],
    ['chamber plate=1/4 in', /names no field.*; allowed: paths such as .*; did you mean 'chamber\.plate'\?/],
    ['stacks.[0].height=30 in', /did you mean 'stacks\[0\]\.height'\?/],
    ['stacks 0 height=30 in', /did you mean 'stacks\[0\]\.height'\?/],
    ['stacks[one]=none', /names no field: 'stacks\[one\]'; allowed: paths such as .* stacks\[1\]$/],
    ['__proto__.x=1', /names no field/],
    ['chamber..plate=1', /names no field/],
    ['chamber.plate=', /empty value/],
    ['chamber.plate, = 1 in', /names no field: ''/],
    ['chamber.plate, chamber.plate = 1 in', /names chamber\.plate twice/],
    ['chamber.plate=1/4 in |', /empty value/],
    ['chamber.plate=| 1/4 in', /empty value/],
    ['chamber.plate, upright.plate = 1/8 in; 1/4 in; 3/8 in', /3 values with semicolons between them for 2 fields/],
    ['chamber.plate = 1/8 in; 1/4 in', /2 values with semicolons between them for one field/],
    ['chamber.plate, upright.plate = 1/8 in;', /empty value between its semicolons/],
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

describe('changes of several fields', () => {
  it('have one value, or one each with semicolons between them', () => {
    const fields = (path: string, value: string) => fieldsOf({ path, value }).map((each) => each.value);
    expect(fields('chamber.plate, upright.plate', '3/16 in')).toEqual(['3/16 in', '3/16 in']);
    expect(
      fields('chamber.plate, firebox.insulation', '3/16 in; { material: ceramic fibre, thickness: 2 in }'),
    ).toEqual(['3/16 in', '{ material: ceramic fibre, thickness: 2 in }']);
    expect(fields('chamber.length, chamber.diameter', '60"; 24"')).toEqual(['60"', '24"']);
  });

  it('are one each, all parts first and doors last, so that none undoes what says more', () => {
    const change = (path: string) => ({ path, value: 'x' });
    const written = ['chamber.door.plate', 'chamber.plate, upright.plate', 'all.plate'].map(change);
    expect(eachField(written).map(({ path }) => path)).toEqual([
      'all.plate',
      'chamber.plate',
      'upright.plate',
      'chamber.door.plate',
    ]);
  });
});

describe("a part's new plate", () => {
  const partWith = (part: Tree, path: string, value: string) => {
    const made = changeTree({ chamber: part, firebox: { plate: '1/2 in' } }, { path, value });
    if ('problem' in made) throw new Error(made.problem);
    return { chamber: made.tree.chamber as Tree, also: made.also };
  };

  it.each([
    [{ plate: '1/4 in', door: { plate: '1/4 in' } }],
    [{ plate: '1/4 in', door: { plate: '0.25 in' } }],
    [{ plate: '6.35 mm', door: { plate: '1/4 in' } }],
    [{ plate: '11 ga', steel: 'stainless', door: { plate: '11 ga' } }],
    [{ plate: '11 ga', steel: 'stainless', door: { plate: '0.125 in' } }],
    [{ diameter: '24 in pipe, standard wall', door: { plate: '3/8 in' } }],
  ])('takes a door of the same plate along: %j', (part) => {
    for (const path of ['chamber.plate', 'all.plate']) {
      const { chamber, also } = partWith(part, path, '3/16 in');
      expect(chamber).toMatchObject({ plate: '3/16 in', door: { plate: '3/16 in' } });
      expect(also).toContainEqual({ path: 'chamber.door.plate', value: '3/16 in' });
    }
  });

  it.each([
    [{ plate: '1/4 in', door: { plate: '3/16 in' } }],
    [{ plate: '11 ga', door: { plate: '0.125 in' } }],
    [{ diameter: '24 in pipe, standard wall', door: { plate: '1/4 in' } }],
  ])('leaves a door that the design makes of another: %j', (part) => {
    const { chamber, also } = partWith(part, 'all.plate', '1/2 in');
    expect(chamber.door).toEqual(part.door);
    expect(also.map(({ path }) => path)).not.toContain('chamber.door.plate');
  });

  it('leaves a door without a plate of its own to follow by itself', () => {
    expect(partWith({ plate: '1/4 in', door: { width: '20 in' } }, 'chamber.plate', '1/2 in').chamber).toEqual({
      plate: '1/2 in',
      door: { width: '20 in' },
    });
  });

  it('makes a pipe a shell of its outside diameter, and says so', () => {
    const { chamber, also } = partWith({ diameter: '20 in pipe, extra strong' }, 'chamber.plate', '1/4 in');
    expect(chamber).toEqual({ diameter: '20 in', plate: '1/4 in' });
    expect(also).toEqual([{ path: 'chamber.diameter', value: '20 in' }]);
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

  it('takes an item out of its list, several by the numbers that they have in the file', () => {
    expect(changed('firebox.intakes[0]', 'none')).toMatchObject({ firebox: { intakes: [{ open: '50 %' }] } });
    const each = eachField([
      { path: 'loads[0], loads[2]', value: 'none' },
      { path: 'loads[3].mass', value: '1 lb' },
    ]);
    const loads = ['a', 'b', 'c', 'd'].map((name) => ({ name }));
    expect(changeAll({ loads }, each)).toMatchObject({ tree: { loads: [{ name: 'b' }, { name: 'd', mass: '1 lb' }] } });
  });

  it.each([
    ['upright.plate', '1/4 in', /the design has no upright/],
    ['stacks[2].height', '20 in', /no stacks\[2\]: the list has 1/],
    ['stacks[1]', 'none', /no stacks\[1\]: the list has 1, counted from 0; did you mean 'stacks\[0\]'\?$/],
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
