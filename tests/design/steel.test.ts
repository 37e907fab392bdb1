import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Design } from '../../src/design/design.js';
import { buildNetwork } from '../../src/network/build.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { designOf, OVER, PLAIN, read, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;
/** US standard gauge for stainless sheet, and the manufacturers' one for carbon sheet [in]. */
const GAUGE = { stainless: { 11: 0.125, 16: 0.0625 }, carbon: { 11: 0.1196, 16: 0.0598 } };
/** EN 10088-1 (1.4301) over EN 1993-1-2 */
const HEAVIER = 7900 / 7850;

const DOOR = 'door: { width: 14 in, height: 12 in, plate: 11 ga }';
const SKIN = 'insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }';

/** PLAIN with a chamber of 11 gauge throughout, of a steel, and more text in its block. */
const chamberOf = (more: string) =>
  PLAIN.replace(/(chamber:[^]*?)plate: 1\/4 in([^]*?)doorGap: 2.0 in\^2/, `$1plate: 11 ga$2${DOOR}\n  ${more}`);

function warningsOf(text: string): { code: string; where: string; value: number | null }[] {
  const result = read(text);
  if (result.faults) throw new Error(JSON.stringify(result.faults));
  return result.warnings.map(({ code, where, value }) => ({ code, where, value }));
}

describe('a gauge', () => {
  it('is read from one table, the own steel’s: shell, door, reverse plate and skin alike', () => {
    for (const steel of ['stainless', 'carbon'] as const) {
      const reverse = 'reverse: { height: 7 in, plate: 11 ga, turn: 90 in^2 }';
      const text = chamberOf(`steel: ${steel}\n  ${SKIN}\n  ${reverse}`).replace(
        'area: 90 in^2, centre: 34 in',
        'area: 60 in^2, centre: 31 in',
      );
      const chamber = designOf(text).chamber!;
      const thickness = GAUGE[steel][11] * INCH;
      expect(chamber.plate).toBeCloseTo(thickness, 9);
      expect(chamber.door!.plate).toBeCloseTo(thickness, 9);
      expect(chamber.reverse!.plate).toBeCloseTo(thickness, 9);
      expect(chamber.insulation!.skin).toBeCloseTo(GAUGE[steel][16] * INCH, 9);
    }
  });

  it('of a pipe’s own wall is one of the part’s steel too', () => {
    const pipe = (steel: string) =>
      PLAIN.replace(
        'diameter: 24 in\n  length: 24 in\n  plate: 1/4 in',
        `diameter: 24 in pipe, 11 ga wall\n  length: 24 in\n  steel: ${steel}`,
      );
    expect(designOf(pipe('stainless')).firebox.plate).toBeCloseTo(GAUGE.stainless[11] * INCH, 9);
    expect(designOf(pipe('carbon')).firebox.plate).toBeCloseTo(GAUGE.carbon[11] * INCH, 9);
  });

  it('of a skin is one of the skin’s steel where the file names it', () => {
    const [own, other] = ['', ', skinSteel: stainless'].map((word) =>
      designOf(chamberOf(SKIN.replace(' }', `${word} }`))),
    );
    expect(own.chamber!.insulation!.skin).toBeCloseTo(GAUGE.carbon[16] * INCH, 9);
    expect(other.chamber!.insulation!.skin).toBeCloseTo(GAUGE.stainless[16] * INCH, 9);
  });

  it('of a stack is one of the stack’s steel, and a stack that may be meant stainless is told', () => {
    const on = (more: string) => chamberOf('steel: stainless').replace('wall: 11 ga', `wall: 11 ga${more}`);
    expect(designOf(on('')).stacks[0].wall).toBeCloseTo(GAUGE.carbon[11] * INCH, 9);
    expect(warningsOf(on(''))).toContainEqual({ code: 'stack-taken-as-carbon', where: 'stacks[0]', value: null });
    const { stacks } = designOf(on(', steel: stainless'));
    expect(stacks[0].wall).toBeCloseTo(GAUGE.stainless[11] * INCH, 9);
    for (const said of [', steel: stainless', ', steel: carbon']) {
      expect(warningsOf(on(said)).map(({ code }) => code)).not.toContain('stack-taken-as-carbon');
    }
  });

  it('of stainless is told, with field and thickness; of carbon it is not', () => {
    const told = warningsOf(chamberOf(`steel: stainless\n  ${SKIN}`)).filter(({ code }) => code === 'stainless-gauge');
    expect(told.map(({ where }) => where).sort()).toEqual([
      'chamber.door.plate',
      'chamber.insulation.skin',
      'chamber.plate',
    ]);
    expect(told.find(({ where }) => where === 'chamber.plate')!.value).toBeCloseTo(GAUGE.stainless[11] * INCH, 9);
    expect(warningsOf(chamberOf(SKIN))).toEqual([]);
  });
});

describe('stainless', () => {
  const steels = (text: string) => (['carbon', 'stainless'] as const).map((steel) => inSteel(text, steel));
  /** Everything of a design in one steel, thicknesses as they are. */
  function inSteel(text: string, steel: 'carbon' | 'stainless'): Design {
    const design = structuredClone(designOf(text));
    for (const part of [design.firebox, design.chamber, design.upright]) {
      if (!part) continue;
      part.steel = steel;
      part.door = { width: 10 * INCH, height: 10 * INCH, plate: 0.004, lap: 0.0127 };
      part.insulation = { material: 'ceramic fibre', thickness: 0.05, skin: 0.0015 };
    }
    for (const stack of design.stacks) Object.assign(stack, { steel, insulation: { ...design.firebox.insulation } });
    return design;
  }

  it.each([
    ['plain', PLAIN],
    ['with an upright', UPRIGHT],
    ['over its firebox', OVER],
  ])('weighs by its own density everywhere, and the network holds that steel and no other: %s', (_, text) => {
    const [carbon, stainless] = steels(text);
    const [light, heavy] = [carbon, stainless].map((design) => geometryOf(design));
    expect(heavy.totalSteelMass / light.totalSteelMass).toBeCloseTo(HEAVIER, 9);
    const steelOnly = (design: Design) => {
      const wool = structuredClone(design);
      for (const each of [wool.firebox, wool.chamber, wool.upright, ...wool.stacks])
        if (each) each.insulation!.skin = 0;
      const insulation = weightOf(wool, geometryOf(wool)).items.filter(({ name }) => name.includes('insulation'));
      const covers = weightOf(design, geometryOf(design)).items.filter(({ name }) => name.includes('insulation'));
      return covers.map(({ mass_kg }, i) => mass_kg - insulation[i].mass_kg);
    };
    steelOnly(stainless).forEach((mass, i) => expect(mass / steelOnly(carbon)[i]).toBeCloseTo(HEAVIER, 9));
    for (const [design, geometry] of [
      [carbon, light],
      [stainless, heavy],
    ] as const) {
      const { nodes, links } = buildNetwork(design, geometry).network;
      const plates = nodes.filter(({ material }) => material !== 'constant');
      expect(new Set(plates.map(({ material }) => material))).toEqual(new Set([design.firebox.steel]));
      expect(plates.reduce((sum, { mass }) => sum + mass, 0) / geometry.totalSteelMass).toBeCloseTo(1, 2);
      for (const { conductivity } of links) {
        if (typeof conductivity === 'string') expect(conductivity).toBe(design.firebox.steel);
      }
    }
  });
});

describe('a plate that two parts share', () => {
  it.each([
    ['firebox and chamber', PLAIN, 'firebox', 'chamber'],
    ['chamber and upright', UPRIGHT, 'chamber', 'upright'],
    ['firebox and upright over it', OVER, 'firebox', 'upright'],
  ] as const)('is the thicker part’s as a whole: %s', (_, text, first, second) => {
    for (const [thick, thin] of [
      [first, second],
      [second, first],
    ] as const) {
      for (const steel of ['carbon', 'stainless'] as const) {
        const design = designOf(text);
        Object.assign(design[thick]!, { plate: 0.0095, steel });
        Object.assign(design[thin]!, { plate: 0.003, steel: steel === 'carbon' ? 'stainless' : 'carbon' });
        const geometry = geometryOf(design);
        const plate = geometry.shared.find(({ parts }) => parts[0] === first && parts[1] === second)!;
        expect(plate).toMatchObject({ thickness: 0.0095, steel });
        expect(plate.mass).toBeCloseTo(plate.area * 0.0095 * (steel === 'carbon' ? 7850 : 7900), 9);
        const { nodes, links } = buildNetwork(design, geometry).network;
        const pieces = nodes.flatMap(({ name }, i) => (name === `${first} to ${second} plate` ? [i] : []));
        expect(pieces.reduce((sum, i) => sum + nodes[i].mass, 0)).toBeCloseTo(plate.mass, 9);
        for (const i of pieces) expect(nodes[i]).toMatchObject({ material: steel, thickness: 0.0095 });
        const own = links.filter(({ a, b }) => pieces.includes(a) || pieces.includes(b));
        expect(own.length).toBeGreaterThanOrEqual(pieces.length);
        for (const { conductivity } of own) expect(conductivity).toBe(steel);
      }
    }
  });

  it('of two of one thickness is the one nearer to the fire', () => {
    const design = designOf(PLAIN);
    design.firebox.steel = 'stainless';
    expect(geometryOf(design).shared[0]).toMatchObject({ steel: 'stainless', thickness: design.firebox.plate });
  });
});
