import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { gatherOf } from '../../src/design/gather.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { buildNetwork } from '../../src/network/build.js';
import { ENTRANCE_LOSS, expansionLoss } from '../../src/physics/friction.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { pitLayout } from '../../src/draw/pit/pitLayout.js';
import { changed, designOf, faultsOf, inChamber, PLAIN } from './designFiles.js';

const INCH = 0.0254;
const STEEL = 7850;

const withGather = (gather: string, base = '48 in'): string =>
  changed(['base: 42 in', `base: ${base}, gather: ${gather}`]);
const BOX = '{ width: 14 in, depth: 8 in, height: 12 in, plate: 1/4 in, mouth: 60 in^2 }';
const networkOf = (design: Design) => buildNetwork(design, geometryOf(design)).network;

describe('a box that gathers gas before the stack', () => {
  const design = designOf(withGather(BOX));
  const box = geometryOf(design).stacks[0].gather!;

  it('has the volume, walls and steel of its sizes, and takes them from its part where it stands', () => {
    expect(box.onRoof).toBe(false);
    expect([box.low / INCH, box.high / INCH]).toEqual([expect.closeTo(36, 9), expect.closeTo(48, 9)]);
    expect(box.volume / INCH ** 3).toBeCloseTo(13.5 * 7.75 * 11.5, 6);
    // front and two sides, roof and floor, less the tube's foot
    expect(box.outsideArea / INCH ** 2).toBeCloseTo((14 + 16) * 12 + 2 * 14 * 8 - Math.PI * 9, 6);
    expect(box.contact / INCH ** 2).toBeCloseTo(14 * 12 - 60, 6);
    // by the outside less the inside, open at the back; the tube's foot is cut out of the roof
    const hollow = 14 * 8 * 12 - 13.5 * 7.75 * 11.5 - Math.PI * 9 * 0.25;
    expect(box.mass / (INCH ** 3 * STEEL * hollow)).toBeGreaterThan(0.97);
    expect(box.mass / (INCH ** 3 * STEEL * hollow)).toBeLessThan(1.03);
    const plain = designOf(PLAIN.replace('base: 42 in', 'base: 48 in'));
    const steel = (each: Design) => geometryOf(each).totalSteelMass;
    // its own plate, less the mouth, and the foot that is no longer cut out of the shell
    const cut = (Math.PI * 9 - 60) * INCH ** 2 * 0.25 * INCH * STEEL;
    expect(steel(design) - steel(plain)).toBeCloseTo(box.mass + cut, 6);
    const weigh = (each: Design) => weightOf(each, geometryOf(each)).pit.mass_kg;
    expect(weigh(design) - weigh(plain)).toBeCloseTo(box.mass + cut, 6);
  });

  it('is drawn on its part, however wide it is', () => {
    for (const width of ['8 in', '14 in', '30 in']) {
      const { chamber, gathers } = pitLayout(designOf(withGather(BOX.replace('14 in', width))));
      expect(gathers[0]!.right).toBeLessThanOrEqual(chamber!.right + 1e-9);
      expect(gathers[0]!.left).toBeGreaterThanOrEqual(chamber!.left);
    }
  });

  it('loses head at its mouth as a sharp entrance and a jet that spreads, at the foot as a contraction', () => {
    const section = 13.5 * 7.75;
    const bore = Math.PI * (3 - 0.1196) ** 2;
    expect(box.mouthLoss).toBeCloseTo(ENTRANCE_LOSS + expansionLoss(60 / section), 9);
    expect(box.footLoss).toBeCloseTo(0.5 * (1 - bore / section), 3);
    expect(
      gatherOf(designOf(withGather(BOX.replace('60 in^2', '60 in^2, loss: 3'))), {
        ...design.stacks[0],
        gather: { ...design.stacks[0].gather!, loss: 3 },
      })!.mouthLoss,
    ).toBe(3);
    const { openings, zones } = networkOf(design);
    const mouth = openings.filter(({ role }) => role === 'stackEntry');
    expect(mouth.reduce((sum, { area }) => sum + area, 0) / INCH ** 2).toBeCloseTo(60, 6);
    expect(new Set(mouth.map(({ to }) => zones[to].name))).toEqual(new Set(['stack 1 gather box']));
  });

  it('is as no box at all where it is as wide as tube and mouth and hardly high', () => {
    const bare = estimate(designOf(PLAIN.replace('base: 42 in', 'base: 51.6 in'))).assumed!;
    // a tube's section, 2 in high, on the roof, with the loss of the tube's entry at its mouth
    const thin = estimate(
      designOf(
        withGather('{ width: 6 in, depth: 6 in, height: 2 in, plate: 11 ga, mouth: 27 in^2, loss: 0.5 }', '53.6 in'),
      ),
    ).assumed!;
    expect(thin.air_kg_per_s / bare.air_kg_per_s).toBeGreaterThan(0.96);
    expect(thin.air_kg_per_s / bare.air_kg_per_s).toBeLessThan(1.04);
  }, 20_000);

  it('loses heat by its walls, and a narrow mouth takes draft', () => {
    const state = (mouth: string) => estimate(designOf(withGather(BOX.replace('60 in^2', mouth)))).assumed!;
    const plain = estimate(designOf(PLAIN.replace('base: 42 in', 'base: 48 in'))).assumed!;
    const [wide, narrow] = [state('60 in^2'), state('12 in^2')];
    expect(wide.heatLoss_W.stackWall).toBeGreaterThan(1.3 * plain.heatLoss_W.stackWall);
    expect(narrow.air_kg_per_s).toBeLessThan(0.9 * wide.air_kg_per_s);
    expect(Math.abs(wide.heatLoss_W.total - wide.fire_W) / wide.fire_W).toBeLessThan(1e-3);
  }, 30_000);

  it('stands on a roof, too, with its floor there', () => {
    const over = designOf(withGather(BOX, '64 in'));
    const { onRoof, low, mouthCentre } = geometryOf(over).stacks[0].gather!;
    expect(onRoof).toBe(true);
    expect([low / INCH, mouthCentre / INCH]).toEqual([expect.closeTo(52, 9), expect.closeTo(52, 9)]);
    expect(estimate(over).assumed!.converged).toBe(true);
  }, 20_000);
});

describe('a gather box that cannot be', () => {
  it.each([
    ['mouth too large', 'cannot-be-built', 'stacks[0].gather.mouth', BOX.replace('60 in^2', '200 in^2'), '48 in'],
    ['too wide', 'cannot-be-built', 'stacks[0].gather.width', BOX.replace('14 in', '70 in'), '48 in'],
    ['smaller than its tube', 'cannot-be-built', 'stacks[0].gather.depth', BOX.replace('8 in', '4 in'), '48 in'],
    [
      'mouth elsewhere',
      'cannot-be-built',
      'stacks[0].gather.centre',
      BOX.replace('60 in^2', '60 in^2, centre: 30 in'),
      '48 in',
    ],
    ['floating over its part', 'cannot-be-built', 'stacks[0].base', BOX, '70 in'],
    ['hanging below it', 'cannot-be-built', 'stacks[0].gather.height', BOX.replace('12 in', '25 in'), '48 in'],
    [
      'all plate',
      'cannot-be-built',
      'stacks[0].gather.plate',
      BOX.replace('8 in', '3 in').replace('1/4 in', '1-3/4 in'),
      '48 in',
    ],
    ['without a mouth', 'missing', 'stacks[0].gather.mouth', BOX.replace(', mouth: 60 in^2', ''), '48 in'],
    ['of the wrong form', 'wrong-type', 'stacks[0].gather', '12 in', '48 in'],
  ])('%s: %s at %s', (_, code, path, gather, base) => {
    expect(faultsOf(withGather(gather, base))).toMatchObject([{ code, path }]);
  });

  it('is found by other words', () => {
    expect(faultsOf(changed(['base: 42 in', 'base: 42 in, plenumBox: 12 in']))[0]).toMatchObject({
      code: 'unknown-key',
      nearest: 'gather',
    });
    expect(faultsOf(inChamber('length: 60 in', 'length: 60 in\n  collector: 12 in'))[0].nearest).toBe('stacks.gather');
  });
});
