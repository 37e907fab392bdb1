import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { deckArea, plateGaps } from '../../src/design/decks.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { placesOf } from '../../src/design/places.js';
import { buildNetwork } from '../../src/network/build.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { changed, designOf, faultsOf, inChamber, PLAIN, read } from './designFiles.js';

const INCH = 0.0254;
const STEEL = 7850;

/** PLAIN with a square chamber, 23.5 in wide and 59.5 in long inside, and a throat low in it. */
const withPlates = (plates: string): string =>
  changed(
    ['{ area: 90 in^2, centre: 34 in }', '{ area: 60 in^2, centre: 32 in }'],
    ['chamber:\n  shape: round\n  diameter: 24 in', `chamber:\n  plates: ${plates}\n  shape: square\n  width: 24 in`],
  );
const ROW = '{ height: 8 in, plate: 1/4 in, gaps: [4 in, 2 in, 2 in, 6 in] }';
const flowsOf = (design: Design) => {
  const state = estimate(design, { steadyOnly: true }).assumed!;
  return state.openings.filter(({ name }) => name.startsWith('gap ')).map((o) => o.flow_kg_per_s);
};

describe('a row of plates under the grate', () => {
  const design = designOf(withPlates(ROW));

  it('fills what the gaps leave with like plates, a gap behind each', () => {
    const gaps = plateGaps(design.chamber!);
    const plate = (59.5 - 14) / 4;
    expect(gaps.map(({ from }) => from * 59.5)).toEqual(
      [plate, 2 * plate + 4, 3 * plate + 6, 4 * plate + 8].map((at) => expect.closeTo(at, 6) as number),
    );
    expect(gaps.map(({ area }) => area / INCH ** 2)).toEqual(
      [4, 2, 2, 6].map((gap) => expect.closeTo(23.5 * gap, 6) as number),
    );
    expect(deckArea(design.chamber!) / INCH ** 2).toBeCloseTo(23.5 * (59.5 - 14), 6);
  });

  it('is weighed, and lifts the floor that food lies over', () => {
    const bare = designOf(withPlates(ROW).replace(`  plates: ${ROW}\n`, ''));
    const steel = 23.5 * 45.5 * 0.25 * INCH ** 3 * STEEL;
    const of = (each: Design) => [geometryOf(each).totalSteelMass, weightOf(each, geometryOf(each)).pit.mass_kg];
    of(design).forEach((mass, i) => expect(mass - of(bare)[i]).toBeCloseTo(steel, 6));
    const [grate] = placesOf(design).filter(({ kind }) => kind === 'grate');
    expect(grate.height).toBeGreaterThan((28.25 + 8) * INCH);
    expect(read(withPlates(ROW))).toMatchObject({ warnings: [{ code: 'plates-stirred' }] });
  });

  it('lets gas up through each gap by its area, over the cells that it reaches', () => {
    const { openings, zones } = buildNetwork(design, geometryOf(design)).network;
    const area = (gap: number) =>
      openings.filter(({ name }) => name === `gap ${gap} in the plates`).reduce((sum, each) => sum + each.area, 0) /
      INCH ** 2;
    expect([1, 2, 3, 4].map(area)).toEqual([4, 2, 2, 6].map((gap) => expect.closeTo(23.5 * gap, 6) as number));
    const last = openings.filter(({ name }) => name === 'gap 4 in the plates');
    expect(last.map(({ from, to }) => [zones[from].station, zones[to].station])).toEqual([
      ['plenumMiddle', 'stackEnd'],
    ]);
  });

  it('one gap at the far end is where all gas turns up', () => {
    const one = designOf(withPlates('{ height: 8 in, gaps: [6 in] }'));
    const state = estimate(one, { steadyOnly: true }).assumed!;
    const [flow] = flowsOf(one);
    const throat = state.openings.find(({ name }) => name === 'throat')!.flow_kg_per_s;
    expect(flow / throat).toBeCloseTo(1, 6);
    expect(state.converged).toBe(true);
  }, 30_000);

  it('gas rises through the gaps by their areas: a wider one carries more, the others less, and heat closes', () => {
    const [even, wide] = ['[4 in, 4 in, 4 in, 4 in]', '[8 in, 4 in, 4 in, 4 in]'].map((gaps) =>
      flowsOf(designOf(withPlates(ROW.replace('[4 in, 2 in, 2 in, 6 in]', gaps)))),
    );
    const sum = (flows: number[]) => flows.reduce((a, b) => a + b, 0);
    for (const flow of even) expect(flow / sum(even)).toBeGreaterThan(0.15);
    expect(wide[0] / sum(wide)).toBeGreaterThan(even[0] / sum(even) + 0.08);
    expect(wide[3]).toBeLessThan(even[3]);
    const result = estimate(design);
    expect(result.balance.energyError).toBeLessThan(1e-3);
    expect(result.steady!.converged).toBe(true);
  }, 60_000);
});

describe('a deflector over the throat', () => {
  const withDeflector = (deflector: string) => withPlates(ROW).replace(`plates: ${ROW}`, `deflector: ${deflector}`);
  const design = designOf(withDeflector('{ height: 8 in, plate: 1/4 in, length: 29.5 in }'));

  it('is a row of one plate, and all past its edge is gap', () => {
    const row = designOf(withPlates('{ height: 8 in, plate: 1/4 in, gaps: [30 in] }'));
    expect(deckArea(design.chamber!)).toBeCloseTo(deckArea(row.chamber!), 12);
    expect(geometryOf(design).totalSteelMass).toBeCloseTo(geometryOf(row).totalSteelMass, 9);
    const [holds, rowHolds] = [design, row].map((each) => estimate(each, { steadyOnly: true }).steady!.fire_W);
    expect(holds / rowHolds).toBeCloseTo(1, 9);
    expect(read(withDeflector('{ height: 8 in, length: 14 in }'))).toMatchObject({
      warnings: [{ code: 'plates-stirred', where: 'chamber.deflector' }],
    });
  });

  it('pressures are told along the way that the gas goes: on past it, back over a reverse-flow plate', () => {
    const way = (each: Design) =>
      estimate(each, { steadyOnly: true })
        .assumed!.pressurePath.map(({ where }) => where)
        .filter((where) => /^(plenum|fireEnd|middle|stackEnd)/.test(where));
    expect(way(design)).toEqual(['plenumMiddle', 'fireEnd', 'middle', 'stackEnd']);
    const back = designOf(withPlates(ROW).replace(`plates: ${ROW}`, 'reverse: { height: 8 in, turn: 60 in^2 }'));
    expect(way(back).slice(-3)).toEqual(['stackEnd', 'middle', 'fireEnd']);
  });

  it('a longer one sends more of the gas to the far end', () => {
    const apart = [10, 20, 40].map((long) => {
      const { places } = estimate(designOf(withDeflector(`{ height: 8 in, length: ${long} in }`)), {
        steadyOnly: true,
      }).steady!;
      const grate = places.filter(({ kind }) => kind === 'grate').sort((a, b) => a.along - b.along);
      return grate.at(-1)!.thermometer_K - grate[0].thermometer_K;
    });
    expect(apart[1]).toBeGreaterThan(apart[0]);
    expect(apart[2]).toBeGreaterThan(apart[1]);
  });

  it.each([
    ['over most of the chamber', 'cannot-be-built', 'chamber.deflector.length', '{ height: 8 in, length: 50 in }'],
    ['under the throat', 'cannot-be-built', 'throat.centre', '{ height: 3 in, length: 14 in }'],
    ['beside plates', 'cannot-be-built', 'chamber.deflector', `{ height: 8 in, length: 14 in }\n  plates: ${ROW}`],
  ])('%s: %s at %s', (_, code, path, deflector) => {
    expect(faultsOf(withDeflector(deflector))).toMatchObject([{ code, path }]);
  });
});

describe('plates that cannot be', () => {
  it.each([
    ['over the throat', 'cannot-be-built', 'throat.centre', '{ height: 3 in, gaps: [4 in] }'],
    ['outside', 'cannot-be-built', 'chamber.plates.height', '{ height: 24 in, gaps: [4 in] }'],
    ['all gap', 'cannot-be-built', 'chamber.plates.gaps', '{ height: 8 in, gaps: [30 in, 20 in] }'],
    ['without a gap', 'missing', 'chamber.plates.gaps', '{ height: 8 in }'],
    ['with an empty list', 'missing', 'chamber.plates.gaps', '{ height: 8 in, gaps: [] }'],
    ['with a gap without a unit', 'no-unit', 'chamber.plates.gaps[1]', '{ height: 8 in, gaps: [4 in, 2] }'],
    ['of the wrong form', 'wrong-type', 'chamber.plates', '4'],
    [
      'beside a reverse-flow plate',
      'cannot-be-built',
      'chamber.plates',
      `${ROW}\n  reverse: { height: 8 in, turn: 60 in^2 }`,
    ],
  ])('%s: %s at %s', (_, code, path, plates) => {
    expect(faultsOf(withPlates(plates))).toMatchObject([{ code, path }]);
  });

  it('are found by the words of the trade', () => {
    expect(faultsOf(inChamber('length: 60 in', 'length: 60 in\n  tuningPlates: 4'))).toMatchObject([
      { nearest: 'plates' },
    ]);
    expect(designOf(PLAIN).chamber!.plates).toBeUndefined();
  });
});
