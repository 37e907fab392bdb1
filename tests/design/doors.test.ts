import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { doorsOf } from '../../src/design/doors.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { platesOf } from '../../src/design/plates.js';
import { changeTree } from '../../src/design/vary.js';
import { buildNetwork } from '../../src/network/build.js';
import { doorwayOf } from '../../src/study/events/door.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { changed, designOf, faultsOf, inChamber, read, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;

const withDoors = (doors: string, gap = '  doorGap: 2.0 in^2\n') =>
  inChamber('  doorGap: 2.0 in^2\n', `${gap}  doors: ${doors}\n`);
const gapsOf = (design: Design) => {
  const { openings } = buildNetwork(design, geometryOf(design)).network;
  return openings.filter(({ role, name }) => role === 'gap' && name.startsWith('chamber'));
};
const TWO =
  '[{ name: left, width: 30 in, height: 16 in, along: 25 % }, { name: right, width: 30 in, height: 16 in, along: 75 % }]';

describe('several doors', () => {
  it('two doors of half a gap side by side leak as one of the whole over the same place', () => {
    const one = designOf(withDoors('[{ name: lid, width: 60 in, height: 16 in, gap: 2 in^2 }]', ''));
    const two = designOf(withDoors(TWO.replaceAll(' %', ' %, gap: 1 in^2'), ''));
    const by = (design: Design) => {
      const out = new Map<string, number>();
      for (const { from, centre, area } of gapsOf(design)) {
        const key = `${from} ${centre.toFixed(6)}`;
        out.set(key, (out.get(key) ?? 0) + area);
      }
      return out;
    };
    const [a, b] = [by(one), by(two)];
    expect([...b.keys()].sort()).toEqual([...a.keys()].sort());
    for (const [key, area] of a) expect(b.get(key)).toBeCloseTo(area, 12);
    expect(two.chamber!.doorGap).toBeCloseTo(one.chamber!.doorGap, 12);
    const [first, second] = [one, two].map((design) => estimate(design).steady!);
    expect(second.fire_W).toBeCloseTo(first.fire_W, 0);
    expect(second.heatLoss_W.leaks).toBeCloseTo(first.heatLoss_W.leaks, 1);
  }, 20_000);

  it('each leaks where it is, by its own gap', () => {
    const design = designOf(
      withDoors(TWO.replace('25 %', '25 %, gap: 0.5 in^2').replace('75 %', '75 %, gap: 1.5 in^2'), ''),
    );
    const area = (door: string, station: string) =>
      gapsOf(design)
        .filter(({ name }) => name.includes(door) && name.endsWith(station))
        .reduce((sum, each) => sum + each.area, 0) /
      INCH ** 2;
    expect(area('left', 'fireEnd')).toBeCloseTo((0.5 * 2) / 3, 6);
    expect(area('left', 'stackEnd')).toBe(0);
    expect(area('right', 'stackEnd')).toBeCloseTo((1.5 * 2) / 3, 6);
    // at the door's own edges: 16 in round a 12 in radius stand 14.84 in high
    const heights = [...new Set(gapsOf(design).map(({ centre }) => (centre / INCH).toFixed(2)))];
    expect(heights).toEqual(['32.58', '47.42']);
  });

  it('share the gap of the part by their rims where they have none', () => {
    const { chamber } = designOf(
      withDoors(
        '[{ name: big, width: 30 in, height: 20 in, along: 30 % }, { name: small, width: 15 in, height: 10 in, along: 80 % }]',
      ),
    );
    const [big, small] = chamber!.doors!;
    expect(big.gap / small.gap).toBeCloseTo(2, 9);
    expect(chamber!.doorGap / INCH ** 2).toBeCloseTo(2, 9);
  });

  it('a wider estimate of the part’s gap widens each in proportion', () => {
    const design = designOf(withDoors(TWO));
    const before = doorsOf(design, 'chamber').map(({ gap }) => gap);
    design.chamber!.doorGap *= 2;
    expect(doorsOf(design, 'chamber').map(({ gap }) => gap)).toEqual(before.map((gap) => 2 * gap));
  });

  it('each has its hole, its leaf and its lap', () => {
    const steel = (text: string) => geometryOf(designOf(text)).parts[1].steelMass;
    const bare = steel(withDoors('[]'));
    const one = steel(
      inChamber('  doorGap: 2.0 in^2\n', '  doorGap: 2.0 in^2\n  door: { width: 30 in, height: 16 in }\n'),
    );
    expect(steel(withDoors(TWO)) - bare).toBeCloseTo(2 * (one - bare), 9);
    expect(platesOf(designOf(withDoors(TWO))).map(({ name }) => name)).toContain('chamber door right');
  });

  it('the one nearest to the gauge is opened, and told', () => {
    const at = (gauge: string) => doorwayOf(designOf(withDoors(TWO).replace('gauge: middle', `gauge: ${gauge}`)));
    expect(at('fireEnd')).toMatchObject({ name: 'left', along: 0.25 });
    expect(at('stackEnd')).toMatchObject({ name: 'right', along: 0.75 });
    const stacked = UPRIGHT.replace(
      'doorGap: 1.5 in^2',
      'doors: [{ name: lower, width: 20 in, height: 18 in }, { name: upper, width: 20 in, height: 18 in }]',
    );
    expect(doorwayOf(designOf(stacked.replace('gauge: middle', 'gauge: uprightUpper')))).toMatchObject({
      name: 'upper',
    });
  });

  it('a plate of the part goes with those doors that have it', () => {
    const tree = { chamber: { plate: '1/4 in', doors: [{ plate: '1/4 in' }, { plate: '1/2 in' }] } };
    const made = changeTree(tree, { path: 'chamber.plate', value: '3/8 in' });
    expect(made).toMatchObject({
      tree: { chamber: { doors: [{ plate: '3/8 in' }, { plate: '1/2 in' }] } },
      also: [{ path: 'chamber.doors[0].plate' }],
    });
  });
});

describe('doors that cannot be', () => {
  it.each([
    [
      'beside one door',
      'cannot-be-built',
      'chamber.door',
      `${TWO}\n  door: { width: 20 in, height: 12 in }`,
      undefined,
    ],
    [
      'two ways to give their gaps',
      'cannot-be-built',
      'chamber.doorGap',
      TWO.replaceAll(' %', ' %, gap: 1 in^2'),
      undefined,
    ],
    ['in one place', 'cannot-be-built', 'chamber.doors[1]', TWO.replace('75 %', '30 %'), undefined],
    ['past the end', 'cannot-be-built', 'chamber.doors[0].along', TWO.replace('25 %', '10 %'), undefined],
    [
      'over the roof',
      'cannot-be-built',
      'chamber.doors[0].centre',
      TWO.replace('25 %', '25 %, centre: 50 in'),
      undefined,
    ],
    ['of one name', 'cannot-be-built', 'chamber.doors[1].name', TWO.replace('right', 'left'), undefined],
    ['of the wrong form', 'wrong-type', 'chamber.doors', '2', 'left'],
  ])('%s: %s at %s', (_, code, path, doors, example) => {
    const [fault] = faultsOf(withDoors(doors));
    expect(fault).toMatchObject({ code, path });
    if (example !== undefined) expect(fault.example).toContain(example);
  });

  it('by another word: a lid is a door, and doors are doors', () => {
    expect(faultsOf(inChamber('length: 60 in', 'length: 60 in\n  lid: 20 in'))).toMatchObject([{ nearest: 'door' }]);
    expect(faultsOf(changed(['doorGap: 1.0 in^2', 'doorGap: 1.0 in^2\n  ashdoor: 20 in']))[0].code).toBe('unknown-key');
    expect(read(withDoors(TWO)).faults).toBeUndefined();
  });
});
