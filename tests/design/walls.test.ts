import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { LININGS } from '../../src/design/catalog/index.js';
import type { Geometry, PartGeometry } from '../../src/design/geometry.js';
import { geometryOf, linedArea } from '../../src/design/geometryOf.js';
import { changeTree, type Tree } from '../../src/design/vary.js';
import { platesOf } from '../../src/design/plates.js';
import { wallAt } from '../../src/design/walls.js';
import { makePit } from '../../src/network/pit.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { designOf, faultsOf, PLAIN, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;
const STEEL = 7850;

/** A design file with fields set by their paths. */
function withFields(fields: Record<string, unknown>, file = PLAIN): string {
  const tree = parse(file) as Tree;
  for (const [path, value] of Object.entries(fields)) {
    const steps = path.split('.');
    const block = steps.slice(0, -1).reduce((node, step) => (node[step] ??= {}) as Tree, tree);
    if (value === undefined) delete block[steps[steps.length - 1]];
    else block[steps[steps.length - 1]] = value;
  }
  return JSON.stringify(tree);
}

const SQUARE = {
  'firebox.shape': 'square',
  'firebox.diameter': undefined,
  'firebox.width': '24 in',
  'firebox.height': '22 in',
};

function geometry(fields: Record<string, unknown>, file = PLAIN): Geometry {
  return geometryOf(designOf(withFields(fields, file)));
}

function part(of: Geometry, name: string): PartGeometry {
  return of.parts.find((each) => each.name === name)!;
}

/** Steel of a part with all of what it shares, and the holes in it filled [m3]. */
function steelVolume(of: Geometry, name: string, holes: number): number {
  const shared = of.shared.filter(({ parts }) => parts.includes(name as 'firebox'));
  const own = part(of, name);
  return (own.steelMass + shared.reduce((sum, { mass }) => sum + mass / 2, 0)) / STEEL + holes;
}

describe('a face that is no other than its part', () => {
  it.each([
    { 'firebox.roof': { plate: '1/4 in' } },
    { 'chamber.sides': { plate: '0.25 in', finish: 'black paint' }, 'chamber.fireEnd': { insulation: 'none' } },
    { 'firebox.lining': { material: 'firebrick', thickness: '0 in' } },
  ])('changes nothing: %j', (fields) => {
    expect(geometry(fields)).toEqual(geometry({}));
  });
});

describe('a face of its own plate (derived)', () => {
  it('takes room and weighs as much as it is thick: a box exactly', () => {
    const thick = { 'firebox.roof': { plate: '1/2 in' }, 'firebox.fireEnd': { plate: '3/8 in' } };
    const own = part(geometry({ ...SQUARE, ...thick }), 'firebox');
    const [w, h, l] = [23.5 * INCH, (22 - 0.75) * INCH, (24 - 0.625) * INCH];
    expect(own.gasVolume).toBeCloseTo(w * h * l, 12);
    const roof = own.faces.find(({ name }) => name === 'roof')!;
    expect(roof.mass).toBeCloseTo(24 * (24 - 0.625) * 0.5 * INCH ** 3 * STEEL, 9);
    expect(own.roof).toBeCloseTo((30 + 11 - 0.5) * INCH, 12);
    expect(own.floor).toBeCloseTo((30 - 11 + 0.25) * INCH, 12);
  });

  it('is a third of a round part’s girth', () => {
    const own = part(geometry({ 'chamber.roof': { plate: '1/2 in' } }), 'chamber');
    const plain = part(geometry({}), 'chamber');
    const area = (bore: number) => (Math.PI / 4) * (bore * INCH) ** 2;
    expect(own.section).toBeCloseTo((2 / 3) * area(23.5) + (1 / 3) * area(23), 12);
    // a third of the ring of a quarter inch more, between the ends; the stack's foot is in the sides
    const more = ((area(23.5) - area(23)) / 3) * (60 - 0.5) * INCH;
    const faces = (of: PartGeometry) => of.faces.reduce((sum, { mass }) => sum + mass, 0);
    expect(faces(own) - faces(plain)).toBeCloseTo(more * STEEL, 9);
  });

  it('is what is left between two parts where it is the thicker', () => {
    const { shared } = geometry({ 'firebox.stackEnd': { plate: '1/2 in' } });
    expect(shared[0].thickness).toBeCloseTo(0.5 * INCH, 12);
  });

  it('is listed among the plates, and goes with its part when that is varied', () => {
    const text = withFields({ 'firebox.roof': { plate: '3/8 in' }, 'firebox.floor': { plate: '1/4 in' } });
    expect(platesOf(designOf(text)).map(({ name }) => name)).toContain('firebox roof');
    const made = changeTree(JSON.parse(text) as Tree, { path: 'firebox.plate', value: '1/2 in' });
    if ('problem' in made) throw new Error(made.problem);
    const { firebox } = designOf(JSON.stringify(made.tree));
    expect(firebox.roof?.plate).toBeCloseTo(0.375 * INCH, 12);
    expect(firebox.floor?.plate).toBeCloseTo(0.5 * INCH, 12);
  });
});

describe('a lining (derived)', () => {
  const brick = { material: 'firebrick', thickness: '1-1/4 in' };

  it.each([
    ['firebox', 'the shell of a round one', {}, ['roof', 'floor', 'sides']],
    ['firebox', 'two thirds of it', {}, ['floor', 'sides']],
    ['firebox', 'the girth of a box', SQUARE, ['roof', 'floor', 'sides']],
    ['firebox', 'two faces of a box', SQUARE, ['floor', 'sides']],
    ['chamber', 'the far end', {}, ['stackEnd']],
    ['chamber', 'all but the near end', {}, ['roof', 'floor', 'sides', 'stackEnd']],
  ] as const)('of a %s takes the gas its volume and leaves the steel: %s', (name, _, shape, faces) => {
    const [bare, lined] = [geometry(shape), geometry({ ...shape, [`${name}.lining`]: { ...brick, faces } })];
    const own = part(lined, name);
    // the stack's foot goes through the brick
    const foot = name === 'chamber' && faces.length > 1 ? (Math.PI / 4) * (6 * INCH) ** 2 * 1.25 * INCH : 0;
    expect(own.steelMass).toBeCloseTo(part(bare, name).steelMass, 9);
    expect(own.liningMass / LININGS.firebrick.density).toBeCloseTo(
      part(bare, name).gasVolume - own.gasVolume - foot,
      12,
    );
  });

  it('lines the faces that it names, and has their area', () => {
    const design = designOf(withFields({ ...SQUARE, 'firebox.lining': { ...brick, faces: ['floor'] } }));
    expect(wallAt(design.firebox, 'floor').lining).toBeDefined();
    expect(wallAt(design.firebox, 'sides').lining).toBeUndefined();
    expect(linedArea(design)).toBeCloseTo(23.5 * 23.5 * INCH ** 2, 12);
  });

  it('lies on its side of the plate between two parts', () => {
    const [plate] = geometry({ 'firebox.lining': brick }).shared;
    expect(plate.linings.map((each) => each?.material)).toEqual(['firebrick', undefined]);
  });
});

describe('heat shield and covered doors (derived)', () => {
  it('weigh what their sheet does: a ring round a round part', () => {
    const bare = geometry({});
    const shield = { plate: '11 ga', gap: '1 in', faces: ['roof', 'floor', 'sides'] };
    const { totalSteelMass } = geometry({ 'chamber.shield': shield });
    const sheet = designOf(withFields({ 'chamber.shield': shield })).chamber!.shield!.plate;
    const [face] = part(bare, 'chamber').faces;
    expect(totalSteelMass - bare.totalSteelMass).toBeCloseTo(face.outsideArea * (26 / 24) * sheet * STEEL, 9);
  });

  it('part the leaf from its face, steel and area as they were', () => {
    const door = { width: '40 in', height: '20 in' };
    const of = (more: object) => part(geometry({ 'chamber.door': { ...door, ...more } }), 'chamber');
    const wrapped = of({ insulation: { material: 'ceramic fibre', thickness: '1 in' } });
    const leaf = wrapped.faces.find(({ name }) => name === 'door')!;
    expect(leaf.outsideArea).toBeCloseTo(800 * INCH ** 2, 12);
    expect(leaf.mass).toBeCloseTo(41 * 21 * 0.25 * INCH ** 3 * STEEL, 9);
    const sum = (own: PartGeometry, key: 'outsideArea' | 'insideArea' | 'mass') =>
      own.faces.reduce((total, face) => total + face[key], 0);
    for (const key of ['outsideArea', 'insideArea', 'mass'] as const) {
      expect(sum(wrapped, key)).toBeCloseTo(sum(of({}), key), 9);
    }
  });
});

describe('one message for what is no wall', () => {
  it.each([
    ['firebox.firebrick', { 'firebox.firebrick': '1-1/4 in' }, 'lining', '{ material: firebrick'],
    ['firebox.heatShield', { 'firebox.heatShield': '16 ga' }, 'shield', '{ plate: 16 ga'],
    ['firebox.front', { 'firebox.front': { plate: '3/8 in' } }, 'fireEnd', '{ plate: 3/8 in }'],
    ['chamber.top', { 'chamber.top': { plate: '3/8 in' } }, 'roof', '{ plate: 3/8 in }'],
    ['prices.brick', { prices: { brick: '$12/ft^2' } }, 'lining', undefined],
  ])('%s names the field that does it', (path, fields, nearest, example) => {
    const [fault, ...others] = faultsOf(withFields(fields));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: 'unknown-key', path, nearest });
    if (example) expect(fault.example).toContain(example);
  });

  it('an upright has its four walls as sides', () => {
    const [fault] = faultsOf(withFields({ 'upright.fireEnd': { plate: '3/8 in' } }, UPRIGHT));
    expect(fault).toMatchObject({ code: 'unknown-key', path: 'upright.fireEnd', nearest: 'sides' });
  });

  it.each([
    ['firebox.lining', { 'firebox.lining': '1-1/4 in' }, 'wrong-type', '{ material: firebrick'],
    ['chamber.roof', { 'chamber.roof': '3/8 in' }, 'wrong-type', '{ plate: 3/8 in }'],
    ['chamber.roof.insulation', { 'chamber.roof': { insulation: '2 in' } }, 'wrong-type', '{ material: ceramic fibre'],
    ['firebox.shield', { 'firebox.shield': '1 in' }, 'wrong-type', '{ plate: 16 ga'],
  ])('%s of the wrong form shows one of the right form', (path, fields, code, example) => {
    const [fault, ...others] = faultsOf(withFields(fields));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code, path });
    expect(fault.example).toContain(example);
  });

  it('a name that there is not, with the nearest', () => {
    const brick = { material: 'fierbrick', thickness: '1 in', faces: ['floor', 'side'] };
    expect(faultsOf(withFields({ 'firebox.lining': brick }))).toMatchObject([
      { code: 'unknown-name', path: 'firebox.lining.material', nearest: 'firebrick' },
      { code: 'unknown-name', path: 'firebox.lining.faces[1]', nearest: 'sides' },
    ]);
  });

  it.each([
    [
      'firebox.lining.thickness',
      { ...SQUARE, 'firebox.width': '12 in', 'firebox.lining': { material: 'firebrick', thickness: '6 in' } },
    ],
    [
      'firebox.roof.plate',
      { ...SQUARE, 'firebox.height': '6 in', 'firebox.centre': '34 in', 'firebox.roof': { plate: '3 in' } },
    ],
  ])('%s that leaves no room inside', (path, fields) => {
    const found = faultsOf(withFields(fields)).filter((fault) => fault.path === path);
    expect(found).toHaveLength(1);
  });
});

describe('insulation of a face or a door', () => {
  const wrap = { material: 'ceramic fibre', thickness: '2 in' };

  it('none takes it away there, also by --vary', () => {
    const text = withFields({ 'chamber.insulation': wrap, 'chamber.floor': { finish: 'bare' } });
    const made = changeTree(JSON.parse(text) as Tree, { path: 'chamber.floor.insulation', value: 'none' });
    if ('problem' in made) throw new Error(made.problem);
    const { chamber } = designOf(JSON.stringify(made.tree));
    expect(wallAt(chamber!, 'floor').insulation).toBeUndefined();
    expect(wallAt(chamber!, 'roof').insulation?.material).toBe('ceramic fibre');
  });

  it('is judged by what the part says where the face says nothing', () => {
    const { chamber } = designOf(withFields({ 'chamber.emissivity': 0.5, 'chamber.roof': { plate: '3/8 in' } }));
    expect(wallAt(chamber!, 'roof').emissivity).toBe(0.5);
    const bare = designOf(withFields({ 'chamber.emissivity': 0.5, 'chamber.roof': { finish: 'bare' } })).chamber!;
    expect(wallAt(bare, 'roof').emissivity).toBe(0.77);
  });
});

it('steel of a box with walls of four plates is its outside less its inside (derived)', () => {
  const plates = { roof: '1/2 in', floor: '3/8 in', sides: '3/16 in', fireEnd: '5/16 in', stackEnd: '1/4 in' };
  const faces = Object.fromEntries(Object.entries(plates).map(([face, plate]) => [`firebox.${face}`, { plate }]));
  const made = geometry({ ...SQUARE, ...faces });
  const own = part(made, 'firebox');
  const holes = 2 * (Math.PI / 4) * (4 * INCH) ** 2 * (5 / 16) * INCH + 90 * INCH ** 2 * 0.25 * INCH;
  expect(steelVolume(made, 'firebox', holes)).toBeCloseTo(24 * 22 * 24 * INCH ** 3 - own.gasVolume, 9);
});

describe('walls of a round chamber with heads and several doors (derived)', () => {
  const disc = (across: number) => (Math.PI / 4) * across ** 2;
  /** Half a spheroid: its volume, and its surface [in3], [in2]. */
  const dome = (across: number, depth: number) => {
    const r = across / 2;
    const e = Math.sqrt(1 - (depth / r) ** 2);
    return {
      volume: (2 / 3) * Math.PI * r ** 2 * depth,
      area: Math.PI * (r ** 2 + (depth ** 2 / e) * Math.atanh(e)),
    };
  };
  const thick = { 'chamber.roof': { plate: '1/2 in' } };
  const faceOf = (own: PartGeometry, wanted: string) => own.faces.find(({ name }) => name === wanted)!;

  it('room, brick and steel are those of three thirds between the seams and of two domes', () => {
    const text = withFields({
      ...thick,
      'chamber.heads': 'elliptical',
      'chamber.lining': { material: 'firebrick', thickness: '1-1/4 in' },
    });
    const design = designOf(text);
    const made = geometryOf(design);
    const own = part(made, 'chamber');
    // the firebox covers a lens of two 24 in circles 10 in apart, 219.53 in2, of the head at the fire
    const lens = 219.53;
    const domes = 2 - lens / disc(24);
    const thirds = (roof: number, others: number) => (disc(roof) + 2 * disc(others)) / 3;
    const [steelInside, room] = [thirds(23, 23.5), thirds(20.5, 21)];
    const [plateInside, hot] = [dome(23.5, 23.5 / 4), dome(21, 23.5 / 4 - 1.25)];
    expect(own.gasVolume / INCH ** 3).toBeCloseTo(60 * room + domes * hot.volume, 0);

    const foot = disc(6);
    const plateBetween = lens - 90;
    const brick = 60 * (steelInside - room) + domes * (plateInside.volume - hot.volume) + (plateBetween - foot) * 1.25;
    expect(own.liningMass / LININGS.firebrick.density / INCH ** 3).toBeCloseTo(brick, 0);

    // the stack leaves by a face of a quarter inch, and half of the plate between the parts is the chamber's
    const steel =
      60 * (disc(24) - steelInside) +
      domes * dome(23.75, 23.75 / 4 + 0.0625).area * 0.25 -
      foot * 0.25 +
      plateBetween * 0.125;
    expect(own.steelMass / STEEL / INCH ** 3).toBeCloseTo(steel, 0);

    const firebrick = made.parts.reduce((sum, { liningMass }) => sum + liningMass, 0);
    const { items, pit } = weightOf(design, made);
    expect(pit.mass_kg).toBeCloseTo(made.totalSteelMass + firebrick, 6);
    expect(items.map(({ name }) => name)).toContain('chamber, lining');
  });

  it('a lid of two doors hangs half in the roof and half in the sides, of other plate', () => {
    const door = { width: '24 in', height: '14 in', plate: '1/4 in' };
    const two = (more: object) => ({
      ...thick,
      'chamber.doors': [
        { name: 'left', ...door, ...more },
        { name: 'right', ...door },
      ],
    });
    const [none, hung] = [part(geometry(thick), 'chamber'), part(geometry(two({})), 'chamber')];
    const more = (name: string) => (faceOf(hung, name).mass - faceOf(none, name).mass) / STEEL / INCH ** 3;
    const [leaf, hole] = [25 * 15 * 0.25, 24 * 14];
    expect(more('roof')).toBeCloseTo(leaf - hole * 0.5, 6);
    expect(more('sides')).toBeCloseTo(leaf - hole * 0.25, 6);
    expect(more('floor')).toBeCloseTo(0, 9);

    const fields = two({ insulation: { material: 'ceramic fibre', thickness: '1 in' } });
    const wrapped = part(geometry(fields), 'chamber');
    expect(wrapped.faces.map(({ name }) => name)).toContain('door left');
    expect(faceOf(wrapped, 'door left').mass / STEEL / INCH ** 3).toBeCloseTo(leaf, 6);
    for (const key of ['outsideArea', 'mass'] as const) {
      const sum = (own: PartGeometry) => own.faces.reduce((total, face) => total + face[key], 0);
      expect(sum(wrapped)).toBeCloseTo(sum(hung), 9);
    }
    const design = designOf(withFields(fields));
    const { nodes } = makePit(design, geometryOf(design)).model.network;
    expect(nodes.filter(({ name }) => /^chamber door left \d+ insulation/.test(name)).length).toBeGreaterThan(0);
  });
});
