import { describe, expect, it } from 'vitest';
import { deckArea } from '../../src/design/decks.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Face, Geometry, PartGeometry } from '../../src/design/geometry.js';
import type { PartName } from '../../src/design/design.js';
import { changed, designOf, inChamber, OVER, PLAIN, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;
const POUND = 0.45359237;
const STEEL = 7850; // published: EN 1993-1-2:2005, 3.4

function part(geometry: Geometry, name: PartName): PartGeometry {
  const found = geometry.parts.find((each) => each.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

function face(geometry: Geometry, name: PartName, wanted: string): Face {
  const found = part(geometry, name).faces.find((each) => each.name === wanted);
  if (!found) throw new Error(`no ${wanted} on ${name}`);
  return found;
}

const sum = (values: number[]): number => values.reduce((a, b) => a + b, 0);

/** Steel of everything but stacks and skins: by faces and by shared plates. */
function steelOf(geometry: Geometry): number {
  return sum(geometry.parts.map((each) => each.steelMass));
}

describe('weights against handbook rows', () => {
  it.each([
    // published: ASME B36.10M, plain-end weight of NPS 24, 20, 16 and 6 pipe, lb/ft (values from memory)
    ['24 in pipe, standard wall', 94.62],
    ['20 in pipe, schedule 10', 52.73],
    ['16 in pipe, standard wall', 62.58],
  ])('%s: %s lb/ft', (pipe, poundsPerFoot) => {
    const text = inChamber('diameter: 24 in', `diameter: ${pipe}`).replace(/(chamber:[^]*?) {2}plate: 1\/4 in\n/, '$1');
    const ten = (feet: number): number => {
      const design = designOf(
        text
          .replace('length: 60 in', `length: ${feet} ft`)
          .replace('area: 90 in^2', 'area: 20 in^2')
          .replace('base: 42 in', 'base: 40 in'),
      );
      return geometryOf(design).parts.find((each) => each.name === 'chamber')?.steelMass ?? NaN;
    };
    // two lengths: ends and holes cancel. ASME takes the same 7850 kg/m3
    const perFoot = (ten(10) - ten(5)) / 5 / POUND;
    expect(Math.abs(perFoot / poundsPerFoot - 1)).toBeLessThan(0.003);
  });

  it('a square foot of quarter plate is 10.2 lb', () => {
    // memory: handbook weight of plate, 40.8 lb/ft2 per inch; sheet gauges are sold by 41.82, another density
    const box = (feet: number): number => {
      const text = inChamber(
        'shape: round\n  diameter: 24 in\n  length: 60 in',
        `shape: square\n  width: 24 in\n  length: ${feet} ft`,
      );
      return part(geometryOf(designOf(text)), 'chamber').steelMass / POUND;
    };
    // five feet more of box: the middle of its plate is 23.75 in wide on each of four sides
    const perSquareFoot = (box(10) - box(5)) / ((4 * 23.75) / 12) / 5;
    expect(Math.abs(perSquareFoot / 10.2 - 1)).toBeLessThan(0.003);
  });

  it('the 6 in stack of 11 gauge is hollow by its bore', () => {
    const [stack] = geometryOf(designOf(PLAIN)).stacks;
    const [outer, inner] = [6 * INCH, (6 - 2 * 0.1196) * INCH];
    // derived: (outer2 - inner2) pi/4 x length x density
    expect(stack.mass).toBeCloseTo((Math.PI / 4) * (outer ** 2 - inner ** 2) * 36 * INCH * STEEL, 4);
    expect(stack.flowArea).toBeCloseTo((Math.PI / 4) * inner ** 2, 6);
    expect([stack.base, stack.top]).toEqual([expect.closeTo(42 * INCH, 9), expect.closeTo(78 * INCH, 9)]);
  });
});

describe('the plain 24 in offset', () => {
  const geometry = geometryOf(designOf(PLAIN));
  const disc = (Math.PI / 4) * (24 * INCH) ** 2;
  // derived: lens of two 24 in circles 10 in apart, 219.53 in2
  const lens = (288 * Math.acos(10 / 24) - 5 * Math.sqrt(476)) * INCH ** 2;
  const vents = 2 * (Math.PI / 4) * (4 * INCH) ** 2;
  const stackFoot = (Math.PI / 4) * (6 * INCH) ** 2;

  it('has the areas of its cylinders and discs, less what is cut out', () => {
    expect(face(geometry, 'chamber', 'shell').outsideArea).toBeCloseTo(Math.PI * 24 * 60 * INCH ** 2 - stackFoot, 9);
    expect(face(geometry, 'chamber', 'farEnd').outsideArea).toBeCloseTo(disc, 9);
    expect(face(geometry, 'chamber', 'fireEnd').outsideArea).toBeCloseTo(disc - lens, 5);
    expect(face(geometry, 'firebox', 'farEnd').outsideArea).toBeCloseTo(disc - lens, 5);
    expect(face(geometry, 'firebox', 'fireEnd').outsideArea).toBeCloseTo(disc - vents, 9);
    expect(face(geometry, 'firebox', 'shell').outsideArea).toBeCloseTo(Math.PI * 24 * 24 * INCH ** 2, 9);
  });

  it('shares one plate, less the throat, that is outdoors for neither', () => {
    expect(geometry.shared).toHaveLength(1);
    const [shared] = geometry.shared;
    expect(shared.parts).toEqual(['firebox', 'chamber']);
    expect(shared.area).toBeCloseTo(lens - 90 * INCH ** 2, 5);
    expect(shared.mass).toBeCloseTo(shared.area * 0.25 * INCH * STEEL, 9);
    // the lens is centred at 35 in, the throat at 34: what is left of it lies higher
    expect(shared.centre / INCH).toBeGreaterThan(35);
    expect(shared.centre / INCH).toBeLessThan(42);
  });

  it('holds the volumes inside its steel', () => {
    const inside = (Math.PI / 4) * (23.5 * INCH) ** 2;
    expect(part(geometry, 'chamber').gasVolume).toBeCloseTo(inside * 59.5 * INCH, 9);
    expect(part(geometry, 'chamber').section).toBeCloseTo(inside, 12);
    expect(part(geometry, 'chamber').perimeter).toBeCloseTo(Math.PI * 23.5 * INCH, 12);
    expect(part(geometry, 'chamber').floor).toBeCloseTo(28.25 * INCH, 12);
    expect(part(geometry, 'chamber').roof).toBeCloseTo(51.75 * INCH, 12);
  });

  it('weighs its outer volume less its inner one, less the holes', () => {
    const cylinder = (d: number, l: number): number => (Math.PI / 4) * (d * INCH) ** 2 * l * INCH;
    const shell = (l: number): number => cylinder(24, l) - cylinder(23.5, l - 0.5);
    // two closed cylinders; one end plate of the lens counts once; vents, throat and the stack's foot are cut
    const cut = 0.25 * INCH * (lens + 90 * INCH ** 2 + vents + stackFoot);
    expect(steelOf(geometry)).toBeCloseTo((shell(24) + shell(60) - cut) * STEEL, 2);
    expect(geometry.totalSteelMass).toBeCloseTo(steelOf(geometry) + geometry.stacks[0].mass, 9);
  });

  it('gives each face the length of its convection relation', () => {
    expect(face(geometry, 'chamber', 'shell')).toMatchObject({ orientation: 'horizontalCylinder', place: 'along' });
    expect(face(geometry, 'chamber', 'shell').length).toBeCloseTo(24 * INCH, 12);
    expect(face(geometry, 'chamber', 'farEnd').length).toBeCloseTo(0.886 * 24 * INCH, 3);
    // what the firebox leaves of the chamber's fire end lies above the lens
    expect(face(geometry, 'chamber', 'fireEnd').centre).toBeGreaterThan(40 * INCH);
    expect(face(geometry, 'firebox', 'farEnd').centre).toBeLessThan(30 * INCH);
  });
});

describe('other parts', () => {
  it('an upright shares the chamber’s whole end, and stands on four sides, roof and floor', () => {
    const geometry = geometryOf(designOf(UPRIGHT));
    const end = (Math.PI / 4) * (24 * INCH) ** 2;
    expect(part(geometry, 'chamber').faces.map((each) => each.name)).toEqual(['shell', 'fireEnd']);
    const shared = geometry.shared.find((each) => each.parts[1] === 'upright');
    expect(shared?.area).toBeCloseTo(end - 90 * INCH ** 2, 5);
    expect(face(geometry, 'upright', 'sides').outsideArea).toBeCloseTo(4 * 24 * 40 * INCH ** 2 - end, 5);
    expect(face(geometry, 'upright', 'roof').outsideArea).toBeCloseTo((576 - 9 * Math.PI) * INCH ** 2, 9);
    expect(face(geometry, 'upright', 'floor')).toMatchObject({ orientation: 'down', place: 'bottom' });
    expect(face(geometry, 'upright', 'roof').length).toBeCloseTo((576 / 96) * INCH, 12);
  });

  it('an upright on its firebox shares the roof', () => {
    const geometry = geometryOf(designOf(OVER));
    expect(geometry.shared).toEqual([expect.objectContaining({ parts: ['firebox', 'upright'], orientation: 'up' })]);
    expect(geometry.shared[0].area).toBeCloseTo((576 - 60) * INCH ** 2, 9);
    expect(geometry.shared[0].thickness).toBeCloseTo(0.25 * INCH, 12);
    expect(part(geometry, 'firebox').faces.map((each) => each.name)).not.toContain('roof');
    expect(part(geometry, 'upright').faces.map((each) => each.name)).not.toContain('floor');
  });

  it('an upright on a round firebox shares the arc under it', () => {
    const text = OVER.replace('shape: square\n  width: 24 in\n  height: 18 in', 'shape: round\n  diameter: 30 in')
      .replace('centre: 15 in\n', 'centre: 20 in\n')
      .replace('centre: 24 in, through', 'centre: 34 in, through')
      .replace('centre: 48 in', 'centre: 58 in')
      .replace('base: 72 in', 'base: 82 in')
      .replace('centre: 10 in }', 'centre: 15 in }');
    const geometry = geometryOf(designOf(text));
    // derived: arc over a chord of 24 in in a circle of 30 in: 30 asin(24/30) = 27.819 in
    const arc = 30 * Math.asin(0.8);
    expect(geometry.shared[0].area).toBeCloseTo((arc * 24 - 60) * INCH ** 2, 9);
    expect(face(geometry, 'firebox', 'shell').outsideArea).toBeCloseTo((Math.PI * 30 - arc) * 24 * INCH ** 2, 9);
  });

  it('a square part is roof, floor, sides and ends', () => {
    const text = changed([
      'shape: round\n  diameter: 24 in\n  length: 24 in\n  plate: 1/4 in',
      'shape: square\n  width: 24 in\n  height: 20 in\n  length: 26 in\n  plate: 1/2 in',
    ]);
    const geometry = geometryOf(designOf(text));
    expect(face(geometry, 'firebox', 'roof').outsideArea).toBeCloseTo(24 * 26 * INCH ** 2, 9);
    expect(face(geometry, 'firebox', 'sides').outsideArea).toBeCloseTo(2 * 20 * 26 * INCH ** 2, 9);
    expect(face(geometry, 'firebox', 'roof')).toMatchObject({
      orientation: 'up',
      centre: expect.closeTo(40 * INCH, 9),
    });
    expect(part(geometry, 'firebox').gasVolume).toBeCloseTo(23 * 19 * 25 * INCH ** 3, 9);
    // the heavier of the two plates is the one that is left
    expect(geometry.shared[0].thickness).toBeCloseTo(0.5 * INCH, 12);
    const faces = sum(part(geometry, 'firebox').faces.map((each) => each.mass));
    const vents = 8 * Math.PI;
    const box = 24 * 20 * 26 - 23 * 19 * 25;
    // overlap of the square with the round chamber comes off the end
    const given = (24 * 20 - face(geometry, 'firebox', 'farEnd').outsideArea / INCH ** 2) * 0.5;
    expect(faces).toBeCloseTo((box - vents * 0.5 - given) * INCH ** 3 * STEEL, 3);
  });

  it('a door adds its lap and its plate, and takes its hole', () => {
    const plain = geometryOf(designOf(PLAIN));
    const doored = geometryOf(
      designOf(inChamber('doorGap: 2.0 in^2', 'door: { width: 40 in, height: 20 in, plate: 3/8 in, lap: 1 in }')),
    );
    const added = (42 * 22 * 0.375 - 40 * 20 * 0.25) * INCH ** 3 * STEEL;
    expect(part(doored, 'chamber').steelMass - part(plain, 'chamber').steelMass).toBeCloseTo(added, 6);
    expect(face(doored, 'chamber', 'shell').outsideArea).toBe(face(plain, 'chamber', 'shell').outsideArea);
  });

  it('stainless weighs 7900, skins and steel contents count in the total alone', () => {
    const plain = geometryOf(designOf(PLAIN));
    const stainless = geometryOf(designOf(inChamber('doorGap: 2.0 in^2', 'steel: stainless')));
    expect(face(stainless, 'chamber', 'shell').mass / face(plain, 'chamber', 'shell').mass).toBeCloseTo(7900 / 7850, 9);
    const wrapped = geometryOf(
      designOf(
        inChamber(
          'doorGap: 2.0 in^2',
          'insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }\n  contents: [{ name: racks, mass: 30 lb, area: 9 ft^2 }, { name: pan, material: water, mass: 9 lb, area: 2 ft^2 }]',
        ),
      ),
    );
    expect(part(wrapped, 'chamber').steelMass).toBeCloseTo(part(plain, 'chamber').steelMass, 9);
    const chamber = part(plain, 'chamber');
    // derived: the skin lies 2 in off the shell, so its cylinder is 28 in across
    const areas = chamber.faces.map((each) => each.outsideArea * (each.name === 'shell' ? 28 / 24 : 1));
    const skin = sum(areas) * 0.0598 * INCH * STEEL;
    expect(wrapped.totalSteelMass - plain.totalSteelMass).toBeCloseTo(skin + 30 * POUND, 4);
  });

  it('a reverse plate weighs on the chamber: chord times length less the turn', () => {
    const text = inChamber('doorGap: 2.0 in^2', 'reverse: { height: 7 in, plate: 3/16 in, turn: 90 in^2 }').replace(
      'area: 90 in^2, centre: 34 in',
      'area: 60 in^2, centre: 31 in',
    );
    const design = designOf(text);
    if (!design.chamber) throw new Error('no chamber');
    // derived: chord 7 in up a bore of 23.5 in: 2 sqrt(7 x 16.5)
    const area = (2 * Math.sqrt(7 * 16.5) * 59.5 - 90) * INCH ** 2;
    expect(deckArea(design.chamber)).toBeCloseTo(area, 9);
    const without = geometryOf(designOf(text.replace(/ {2}reverse: .*\n/, '')));
    const mass = area * 0.1875 * INCH * STEEL;
    expect(part(geometryOf(design), 'chamber').steelMass - part(without, 'chamber').steelMass).toBeCloseTo(mass, 6);
  });
});
