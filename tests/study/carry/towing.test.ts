import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../../src/design/geometryOf.js';
import { towingWords } from '../../../src/report/carryData.js';
import { towingOf, type Towing } from '../../../src/study/carry/towing.js';
import { trailerLoads } from '../../../src/study/carry/trailerLoads.js';
import { moveWords, weightOf, weightWarnings } from '../../../src/study/carry/weight.js';
import { exampleDesign } from '../../support/examples.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { inWords } from '../../../src/units/index.js';

const BARE = { axleRating: 2000, hitchRating: 500, mass: 200, balance: 2.2, offset: 0, runs: 'to hitch' as const };
const TRAILER = { ...BARE, axle: 2.6, hitch: 0 };
const FRAME = { mass_kg: 200, position_m: 2.2 };
const PIT = { mass_kg: 400, position_m: 2.5, ofPit: true };
const share = (axle: number, weights: { mass_kg: number; position_m: number }[]) => {
  const mass = weights.reduce((sum, each) => sum + each.mass_kg, 0);
  const moment = weights.reduce((sum, each) => sum + each.mass_kg * each.position_m, 0);
  return trailerLoads({ ...TRAILER, axle }, mass, moment / mass).tongueShare;
};

describe('moving an axle or a pit', () => {
  it('puts the tongue on the edges of the band, as weighing it again says', () => {
    const { axle, pit, cases } = towingOf(TRAILER, [FRAME, PIT]);
    expect(cases.map(({ name }) => name)).toEqual(['loaded']);
    expect(share(2.6 + axle!.from_m, [FRAME, PIT])).toBeCloseTo(0.1, 9);
    expect(share(2.6 + axle!.to_m, [FRAME, PIT])).toBeCloseTo(0.15, 9);
    const moved = (by: number) => share(2.6, [FRAME, { ...PIT, position_m: 2.5 + by }]);
    expect([moved(pit!.from_m), moved(pit!.to_m)].sort()[0]).toBeCloseTo(0.1, 9);
    expect([moved(pit!.from_m), moved(pit!.to_m)].sort()[1]).toBeCloseTo(0.15, 9);
  });

  it('says the same of a trailer measured the other way', () => {
    const mirror = ({ position_m, ...rest }: typeof PIT | typeof FRAME) => ({ ...rest, position_m: -position_m });
    const [a, b] = [
      towingOf(TRAILER, [FRAME, PIT]),
      towingOf({ ...TRAILER, axle: -2.6 }, [mirror(FRAME), mirror(PIT)]),
    ];
    expect(b.axle!.from_m).toBeCloseTo(a.axle!.from_m, 12);
    expect(b.pit!.to_m).toBeCloseTo(a.pit!.to_m, 12);
  });
});

describe('load cases', () => {
  const wood = { mass_kg: 100, position_m: 2.4, kind: 'wood' as const };
  const table = { mass_kg: 40, position_m: 1, kind: 'gear' as const };
  const weights = [FRAME, PIT, wood, table];

  it('are empty, loaded, and without the wood and food that a cook has used', () => {
    const { cases } = towingOf(TRAILER, weights);
    expect(cases.map(({ name, mass_kg }) => [name, mass_kg])).toEqual([
      ['empty', 600],
      ['loaded', 740],
      ['after a cook', 640],
    ]);
  });

  it('leave water out of an empty pit alone, and food out of one after a cook too', () => {
    const contents =
      'contents: [{ name: pan, material: water, mass: 20 lb, area: 2 ft^2 }, { name: ham, material: food, mass: 10 lb, area: 1 ft^2 }]';
    const trailer =
      'trailer: { mass: 600 lb, balance: 80 in, axle: 96 in, offset: 150 in, axleRating: 3500 lb, hitchRating: 500 lb }\n';
    const design = designOf(PLAIN.replace('length: 60 in', `length: 60 in\n  ${contents}`) + trailer);
    const [empty, loaded, after] = weightOf(design, geometryOf(design)).towing!.cases.map(
      ({ mass_kg }) => mass_kg / 0.45359237,
    );
    expect(loaded - empty).toBeCloseTo(30, 9);
    expect(loaded - after).toBeCloseTo(10, 9);
  });

  it('share a move where there is one, and say so where there is none', () => {
    const near = towingOf(TRAILER, weights);
    const { axle, cases } = near;
    for (const move of [axle!.from_m, axle!.to_m]) {
      for (const one of cases) {
        expect(move).toBeGreaterThanOrEqual(one.axle.from_m - 1e-12);
        expect(move).toBeLessThanOrEqual(one.axle.to_m + 1e-12);
      }
    }
    expect(towingWords(near)).toMatch(/in every case move the axle .* from the hitch, or the pit .* towards the hitch/);
    const far = towingOf(TRAILER, [FRAME, PIT, { ...wood, position_m: -3, mass_kg: 300 }]);
    expect(far.axle).toBeNull();
    expect(towingWords(far)).toMatch(/^No place .* Carry wood and food over the axle/);
  });

  it('tells both ends of a move alike, though one is a whole fraction of an inch', () => {
    const inch = 0.0254;
    expect(moveWords({ from_m: -1.8 * inch, to_m: 2.875 * inch })).toBe(
      'by no more than 1.8 in (46 mm) towards the hitch or 2.9 in (73 mm) away from it',
    );
    expect(moveWords({ from_m: 4 * inch, to_m: 9.3 * inch })).toBe(
      '4 in (100 mm) to 9.3 in (240 mm) away from the hitch',
    );
  });

  it('warn of the case that is off, though the loaded one is steady, with what to move', () => {
    const text = `${PLAIN}trailer: { mass: 600 lb, balance: 80 in, axle: 96 in, offset: 150 in, axleRating: 3500 lb, hitchRating: 500 lb }
loads: [{ name: splits, kind: wood, mass: 200 lb, position: 30 in }]
`;
    const design = designOf(text);
    const weight = weightOf(design, geometryOf(design));
    const off = weight.towing!.cases.filter(({ steady }) => !steady).map(({ name }) => name);
    expect(off).not.toEqual([]);
    const warning = weightWarnings(weight, design).find(({ code }) => code === 'tongue-load-out-of-band')!;
    const words = inWords(warning.message);
    for (const name of off) expect(words).toContain(name);
    expect(words).not.toMatch(/NaN|undefined|null|object/);
  });

  it('of the trailer example are all steady', () => {
    const design = exampleDesign('wind-cold.yaml');
    const towing: Towing = weightOf(design, geometryOf(design)).towing!;
    expect(towing.cases.map(({ steady }) => steady)).toEqual([true, true, true]);
    expect(towingWords(towing)).toContain('stand right');
  });
});
