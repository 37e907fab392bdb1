import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../../src/design/geometryOf.js';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { trailerLoads } from '../../../src/study/carry/trailerLoads.js';
import { weightOf, weightWarnings } from '../../../src/study/carry/weight.js';
import { designOf, faultsOf, OVER, PLAIN, UPRIGHT } from '../../design/designFiles.js';

const INCH = 0.0254;
const POUND = 0.45359237;

const TRAILER = `trailer:
  mass: 600 lb
  balance: 80 in
  axle: 96 in
  offset: 150 in
  axleRating: 3,500 lb
  hitchRating: 500 lb
`;

const weigh = (design: Design) => weightOf(design, geometryOf(design));
const towed = (text = TRAILER) => designOf(PLAIN + text);

describe('two supports and a weight', () => {
  // NCERT, Physics, Class XI, part I, ch. 7, exercise 7.9: 3675 N on each front wheel, 5145 N on each back wheel
  // (published)
  it('share it as the textbook says', () => {
    const loads = trailerLoads({ axle: 1.8, hitch: 0, axleRating: 2000, hitchRating: 2000 }, 1800, 1.05);
    expect((loads.tongueLoad_kg / 2) * 9.8).toBeCloseTo(3675, 6);
    expect((loads.axleLoad_kg / 2) * 9.8).toBeCloseTo(5145, 6);
  });

  it('balance: forces and moments add up to nothing, whichever way positions run', () => {
    const place = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(place, place, place, fc.double({ min: 1, max: 5000, noNaN: true }), (axle, hitch, at, mass) => {
        fc.pre(Math.abs(axle - hitch) > 0.3);
        const loads = trailerLoads({ axle, hitch, axleRating: 1e4, hitchRating: 1e4 }, mass, at);
        expect(loads.axleLoad_kg + loads.tongueLoad_kg).toBeCloseTo(mass, 6);
        expect(loads.axleLoad_kg * axle + loads.tongueLoad_kg * hitch).toBeCloseTo(mass * at, 6);
      }),
    );
  });

  it('a weight over the axle leaves nothing on the tongue, one over the hitch all of it', () => {
    const lever = { axle: 2, hitch: 0, axleRating: 1000, hitchRating: 1000 };
    expect(trailerLoads(lever, 500, 2).tongueLoad_kg).toBe(0);
    expect(trailerLoads(lever, 500, 0).tongueLoad_kg).toBe(500);
    expect(trailerLoads(lever, 500, 2.5).tongueLoad_kg).toBeLessThan(0);
  });
});

describe('what a pit weighs and where', () => {
  it.each([
    ['plain', PLAIN],
    ['with an upright', UPRIGHT],
    ['upright on its firebox', OVER],
  ])('%s: the weights add up to all the steel there is', (_, text) => {
    const design = designOf(text);
    const geometry = geometryOf(design);
    expect(weightOf(design, geometry).pit.mass_kg).toBeCloseTo(geometry.totalSteelMass, 9);
  });

  it('a symmetrical pit balances over its middle', () => {
    const even = designOf(
      PLAIN.replace('length: 60 in', 'length: 24 in').replace(
        /stacks: .*/,
        'stacks: [{ part: chamber, diameter: 1 in, height: 1 in, wall: 0.5 mm, base: 42 in }]',
      ),
    );
    // firebox and chamber alike, but for vents, throat and a stack of an ounce
    expect(weigh(even).pit.position_m).toBeCloseTo(24 * INCH, 1);
  });

  it('lies within the pit, and within its height', () => {
    for (const text of [PLAIN, UPRIGHT, OVER]) {
      const { position_m: along, height_m: height } = weigh(designOf(text)).pit;
      expect(along).toBeGreaterThan(0);
      expect(along).toBeLessThan(108 * INCH);
      expect(height).toBeGreaterThan(0.3);
      expect(height).toBeLessThan(1.8);
    }
  });

  it('insulation counts by volume and density, over a round shell as a ring', () => {
    const layer = 'length: 60 in\n  insulation: { material: ceramic fibre, thickness: 2 in }';
    const items = weigh(designOf(PLAIN.replace('length: 60 in', layer))).items;
    const cover = items.find(({ name }) => name === 'chamber, insulation')!;
    // ring of 24 in inside and 28 in outside, 60 in long, both ends of 24 in, at 128 kg/m3 (catalog), less what is
    // shared
    const ring = (Math.PI / 4) * (28 ** 2 - 24 ** 2) * 60;
    const ends = 2 * (Math.PI / 4) * 24 ** 2 * 2;
    expect(cover.mass_kg).toBeLessThan(128 * (ring + ends) * INCH ** 3);
    expect(cover.mass_kg).toBeGreaterThan(128 * (ring + ends / 4) * INCH ** 3);
  });

  it('racks act where they stand', () => {
    const rack = (station: string) =>
      weigh(
        designOf(
          PLAIN.replace(
            'length: 60 in',
            `length: 60 in\n  contents: [{ name: racks, mass: 100 lb, area: 20 ft^2, station: ${station} }]`,
          ),
        ),
      ).items.find(({ name }) => name === 'chamber, racks')!;
    expect(rack('fireEnd').position_m).toBeCloseTo((24 + 10) * INCH, 9);
    expect(rack('stackEnd').position_m).toBeCloseTo((24 + 50) * INCH, 9);
    expect(rack('middle').mass_kg).toBeCloseTo(100 * POUND, 9);
  });

  it('the reverse-flow plate is among the weights', () => {
    const text = PLAIN.replace('length: 60 in', 'length: 60 in\n  reverse: { height: 8 in, turn: 100 in^2 }').replace(
      'throat: { area: 90 in^2, centre: 34 in }',
      'throat: { area: 60 in^2, centre: 32 in }',
    );
    const design = designOf(text);
    const geometry = geometryOf(design);
    const weight = weightOf(design, geometry);
    expect(weight.items.some(({ name }) => name === 'reverse-flow plate')).toBe(true);
    expect(weight.pit.mass_kg).toBeCloseTo(geometry.totalSteelMass, 9);
  });
});

describe('on a trailer', () => {
  it('positions follow from the offset and the way the pit runs', () => {
    const to = weigh(towed());
    const from = weigh(towed(`${TRAILER}  runs: from hitch\n`));
    const place = (of: typeof to) => of.items.find(({ name }) => name === 'firebox')!.position_m;
    expect(150 * INCH - place(to)).toBeCloseTo(place(from) - 150 * INCH, 9);
    expect(place(to)).toBeLessThan(150 * INCH);
  });

  it('the same trailer measured from another mark carries the same', () => {
    const shifted = TRAILER.replace('balance: 80 in', 'balance: -20 in')
      .replace('axle: 96 in', 'axle: -4 in\n  hitch: -100 in')
      .replace('offset: 150 in', 'offset: 50 in');
    const [a, b] = [weigh(towed()).trailer!, weigh(towed(shifted)).trailer!];
    expect(b.tongueLoad_kg).toBeCloseTo(a.tongueLoad_kg, 9);
    const mirrored = TRAILER.replace('balance: 80 in', 'balance: 20 in')
      .replace('axle: 96 in', 'axle: 4 in\n  hitch: 100 in')
      .replace('offset: 150 in', 'offset: -50 in');
    expect(weigh(towed(mirrored)).trailer!.tongueLoad_kg).toBeCloseTo(a.tongueLoad_kg, 9);
  });

  it('a load shifts it by its own moment', () => {
    const before = weigh(towed());
    const after = weigh(towed(`${TRAILER}loads: [{ name: wood, mass: 200 lb, position: 24 in }]\n`));
    const more = after.trailer!.tongueLoad_kg - before.trailer!.tongueLoad_kg;
    expect(more).toBeCloseTo((200 * POUND * (96 - 24)) / 96, 9);
  });

  it('warns of overloaded axles and hitch, and of a tongue out of 10 to 15 %', () => {
    const codes = (text: string) => {
      const design = towed(text);
      return weightWarnings(weigh(design), design).map(({ code }) => code);
    };
    const level = TRAILER.replace('axle: 96 in', 'axle: 108 in');
    expect(codes(TRAILER.replace('3,500 lb', '500 lb'))).toContain('axle-overloaded');
    expect(codes(level.replace('hitchRating: 500 lb', 'hitchRating: 20 lb'))).toContain('hitch-overloaded');
    expect(codes(TRAILER.replace('axle: 96 in', 'axle: 40 in'))).toContain('tongue-load-out-of-band');
    const share = weigh(towed()).trailer!.tongueShare;
    expect(codes(TRAILER).includes('tongue-load-out-of-band')).toBe(share < 0.1 || share > 0.15);
  });

  it('stands in an estimate only where the design names a trailer or loads', () => {
    expect(estimate(designOf(PLAIN), { steadyOnly: true })).not.toHaveProperty('weight');
    const result = estimate(towed(TRAILER.replace('3,500 lb', '500 lb')), { steadyOnly: true });
    expect(result.weight!.trailer!.axleMargin_kg).toBeLessThan(0);
    expect(result.warnings.map(({ code }) => code)).toContain('axle-overloaded');
    const loads = estimate(designOf(`${PLAIN}loads: [{ name: wood, mass: 1 lb, position: 1 in }]\n`), {
      steadyOnly: true,
    });
    expect(loads.weight!.trailer).toBeNull();
  });
});

describe('a trailer that cannot be', () => {
  it.each([
    ['an endless load', `loads: [{ name: wood, mass: 1e999 lb, position: 0 in }]\n`, 'loads[0].mass'],
    ['a load past all trailers', `loads: [{ name: wood, mass: 5 lb, position: 900 ft }]\n`, 'loads[0].position'],
    ['a weight below nothing', TRAILER.replace('600 lb', '-5 lb'), 'trailer.mass'],
    ['a rating without end', TRAILER.replace('hitchRating: 500 lb', 'hitchRating: infinity lb'), 'trailer.hitchRating'],
    ['an axle at the coupler', TRAILER.replace('axle: 96 in', 'axle: 3 in'), 'trailer.axle'],
    ['a field too many', `${TRAILER}  wheels: 4\n`, 'trailer.wheels'],
  ])('%s is refused by name', (_, text, path) => {
    expect(faultsOf(PLAIN + text).map((fault) => fault.path)).toEqual([path]);
  });
});
