import { describe, expect, it } from 'vitest';
import { fireGrateOf } from '../../src/design/fireGrate.js';
import type { Design } from '../../src/design/design.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { buildNetwork } from '../../src/network/build.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { holdPit } from '../../src/study/events/heldPit.js';
import { panelsOf } from '../../src/study/plate/panels.js';
import { studyPlate } from '../../src/study/plate/plateStudy.js';
import { changed, designOf, faultsOf, PLAIN } from './designFiles.js';

const INCH = 0.0254;
const STEEL = 7850;

/** PLAIN with its vents 4 in lower and a square firebox, so that the sums are plain ones. */
const BOX: [string, string][] = [
  ['  shape: round\n  diameter: 24 in\n  length: 24 in', '  shape: square\n  width: 24 in\n  length: 24 in'],
  ['centre: 26 in', 'centre: 21 in'],
];
const withGrate = (grate: string, more = ''): string =>
  changed(...BOX, ['doorGap: 1.0 in^2', `doorGap: 1.0 in^2\n  grate: ${grate}${more}`]);
const vents = (design: Design) =>
  buildNetwork(design, geometryOf(design)).network.openings.filter(({ to, from }) => to === -1 && from === 0);

describe('a grate that the wood burns on', () => {
  const bare = designOf(changed(...BOX));
  const design = designOf(withGrate('{ height: 6 in, bars: 1/2 in, apart: 1/2 in }'));

  it('weighs what its bars do, and stands over the floor', () => {
    const grate = fireGrateOf(design.firebox)!;
    // half of 23.5 by 23.5 in are bars, half an inch thick
    expect(grate.mass).toBeCloseTo(0.5 * (23.5 * INCH) ** 2 * 0.5 * INCH * STEEL, 6);
    expect(grate.free).toBeCloseTo(0.5 * (23.5 * INCH) ** 2, 9);
    expect(grate.height / INCH).toBeCloseTo(30 - 11.75 + 6, 9);
    const steel = (each: Design) => geometryOf(each).totalSteelMass;
    expect(steel(design) - steel(bare)).toBeCloseTo(grate.mass, 6);
    const weigh = (each: Design) => weightOf(each, geometryOf(each)).pit.mass_kg;
    expect(weigh(design) - weigh(bare)).toBeCloseTo(grate.mass, 6);
    const heavy = designOf(withGrate('{ height: 6 in, mass: 40 lb }'));
    expect(fireGrateOf(heavy.firebox)!.mass).toBeCloseTo(40 * 0.45359237, 6);
  });

  it('is where the air under it meets the fire: less height draws it, and the bars are in its way', () => {
    const [under] = vents(design).filter(({ role }) => role === 'intake');
    const [open] = vents(bare).filter(({ role }) => role === 'intake');
    expect(open.centre / INCH).toBeCloseTo(21, 9);
    expect(under.centre).toBeCloseTo(fireGrateOf(design.firebox)!.height, 9);
    const free = fireGrateOf(design.firebox)!.free;
    // two orifices in series: 1/(Cd A)2 adds up
    const series = 1 / Math.sqrt(1 / (0.62 * open.area) ** 2 + 1 / (0.62 * free) ** 2);
    expect(under.discharge * under.area).toBeCloseTo(series, 9);
    const air = (each: Design) => estimate(each).assumed!.air_kg_per_s;
    expect(air(design)).toBeLessThan(air(bare));
  }, 20_000);

  it('leaves vents over it as they are, and a grate of wide gaps takes hardly any draft', () => {
    const above = designOf(withGrate('{ height: 1 in, bars: 1/8 in, apart: 4 in }'));
    expect(vents(above)[0]).toEqual(vents(bare)[0]);
  });

  it('keeps coals off the floor: its scale is that of the steel as the model has it', () => {
    const study = (each: Design) => studyPlate(holdPit(each)!).scale!;
    const [on, off] = [study(design), study(bare)];
    expect(off).toMatchObject({ grate: false, steel_K: bare.use.coals });
    expect(on.grate).toBe(true);
    expect(on.steel_K).toBeLessThan(bare.use.coals);
    expect(on.halfGone_years.likely).toBeGreaterThan(10 * off.halfGone_years.likely);
    const fire = (each: Design, name: string) =>
      panelsOf(each).find((p) => p.part === 'firebox' && p.name === name)!.fire;
    expect([fire(design, 'floor'), fire(design, 'roof')]).toEqual([undefined, expect.closeTo(18 * INCH, 9)]);
    expect(fire(bare, 'floor')).toBeCloseTo(12 * INCH, 9);
  }, 30_000);
});

describe('the door of the ash space', () => {
  const DOOR = '\n  ashDoor: { width: 10 in, height: 4 in, open: 25 %, gap: 0.4 in^2 }';
  const design = designOf(withGrate('{ height: 6 in }', DOOR));

  it('is a vent under the grate as far as it is open, and leaks when it is shut', () => {
    const [open] = vents(design).filter(({ name }) => name === 'ash door');
    expect(open.area / INCH ** 2).toBeCloseTo(10, 9);
    expect(open.centre).toBeCloseTo(fireGrateOf(design.firebox)!.height, 9);
    const shut = designOf(withGrate('{ height: 6 in }', DOOR.replace('25 %', '0 %')));
    expect(vents(shut).map(({ name }) => name)).not.toContain('ash door');
    expect(vents(shut).find(({ name }) => name === 'ash door gap')!.area / INCH ** 2).toBeCloseTo(0.4, 9);
    const air = (each: Design) => estimate(each).assumed!.air_kg_per_s;
    expect(air(design)).toBeGreaterThan(air(shut));
  }, 20_000);

  it('has a leaf that laps over its hole', () => {
    const steel = (each: Design) => geometryOf(each).parts[0].steelMass;
    const without = designOf(withGrate('{ height: 6 in }'));
    expect((steel(design) - steel(without)) / (INCH ** 3 * STEEL)).toBeCloseTo(0.25 * (11 * 5 - 10 * 4), 6);
  });
});

describe('a grate that cannot be', () => {
  it.each([
    ['too high', 'cannot-be-built', 'firebox.grate.height', '{ height: 20 in }', ''],
    ['of the wrong form', 'wrong-type', 'firebox.grate', '6 in', ''],
    [
      'with a door over it',
      'cannot-be-built',
      'firebox.ashDoor.centre',
      '{ height: 6 in }',
      '\n  ashDoor: { width: 8 in, height: 4 in, centre: 26 in }',
    ],
    [
      'with a door too high',
      'cannot-be-built',
      'firebox.ashDoor.height',
      '{ height: 6 in }',
      '\n  ashDoor: { width: 8 in, height: 8 in }',
    ],
    [
      'with a door too wide',
      'cannot-be-built',
      'firebox.ashDoor.width',
      '{ height: 6 in }',
      '\n  ashDoor: { width: 30 in, height: 4 in }',
    ],
  ])('%s: %s at %s', (_, code, path, grate, more) => {
    expect(faultsOf(withGrate(grate, more))).toMatchObject([{ code, path }]);
  });

  it('an ash door needs a grate, and words of the trade lead to both', () => {
    const inBox = (field: string) => changed(['doorGap: 1.0 in^2', `doorGap: 1.0 in^2\n  ${field}`]);
    expect(faultsOf(inBox('ashDoor: { width: 8 in, height: 4 in }'))).toMatchObject([
      { code: 'cannot-be-built', path: 'firebox.ashDoor', example: 'grate: { height: 6 in }' },
    ]);
    expect(faultsOf(inBox('logRack: 6 in'))).toMatchObject([{ code: 'unknown-key', nearest: 'grate' }]);
    expect(faultsOf(inBox('ash_pan: 6 in'))).toMatchObject([{ code: 'unknown-key', nearest: 'ashDoor' }]);
    expect(designOf(PLAIN).firebox.grate).toBeUndefined();
  });
});
