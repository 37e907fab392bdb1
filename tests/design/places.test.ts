import { describe, expect, it } from 'vitest';
import { dialsOf, gaugePlace, placesOf } from '../../src/design/places.js';
import { checkText } from '../../src/report/text/checkText.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { starterDesign } from '../../src/design/starter.js';
import { designOf, faultsOf, inChamber, PLAIN, read, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;
const withGrates = (grates: string, gauge = 'middle') =>
  inChamber('length: 60 in', `length: 60 in\n  grates: ${grates}`).replace(/gauge: .*|$/, `gauge: ${gauge}\n`);
const inUpright = (lines: string) => UPRIGHT.replace('height: 40 in\n', `height: 40 in\n  ${lines}\n`);

describe('where a cook looks', () => {
  it('has usual grates, racks and dials where the file names none', () => {
    // derived: 24 in round, 1/4 in plate, middle at 40 in: inside from 28.25 to 51.75 in; the upright's from 28.25 to
    // 67.75 in
    const design = designOf(UPRIGHT);
    expect(
      placesOf(design).map(({ name, station, height }) => [name, station, Number((height / INCH).toFixed(6))]),
    ).toEqual([
      ['grate', 'fireEnd', 38.825],
      ['grate', 'middle', 38.825],
      ['grate', 'stackEnd', 38.825],
      ['rack 1', 'uprightLower', 41.416667],
      ['rack 2', 'uprightUpper', 54.583333],
    ]);
    expect(dialsOf(design).map(({ name, height }) => [name, Number((height / INCH).toFixed(6))])).toEqual([
      ['fireEnd', 45.875],
      ['middle', 45.875],
      ['stackEnd', 45.875],
      ['uprightLower', 43.0625],
      ['uprightUpper', 62.8125],
    ]);
  });

  it('reads a grate in the middle of every station that it reaches over', () => {
    const { chamber } = designOf(
      withGrates('[{ name: main, height: 40 in }, { name: top, height: 46 in, from: 30 % }]'),
    );
    const places = placesOf(
      designOf(withGrates('[{ name: main, height: 40 in }, { name: top, height: 46 in, from: 30 % }]')),
    );
    expect(chamber!.grates.map(({ from, to, mass }) => [from, to, mass])).toEqual([
      [0, 1, 0],
      [0.3, 1, 0],
    ]);
    expect(places.map(({ name, station }) => `${name} ${station}`)).toEqual([
      'main fireEnd',
      'main middle',
      'main stackEnd',
      'top middle',
      'top stackEnd',
    ]);
    const short = placesOf(designOf(withGrates('[{ name: main, height: 40 in, from: 60 %, to: 80 % }]')));
    expect(short.map(({ along, station }) => [along, station])).toEqual([[expect.closeTo(0.7, 9), 'stackEnd']]);
  });

  it('counts racks from the lowest, however they are listed', () => {
    const racks = placesOf(designOf(inUpright('racks: [50 in, 34 in, 42 in]'))).filter(({ kind }) => kind === 'rack');
    expect(racks.map(({ name, height }) => [name, Math.round(height / INCH)])).toEqual([
      ['rack 1', 34],
      ['rack 2', 42],
      ['rack 3', 50],
    ]);
  });

  it('takes a thermometer of a station’s name for its dial', () => {
    const design = designOf(
      inChamber('length: 60 in', 'length: 60 in\n  thermometers: [{ name: middle, along: 40 %, height: 50 in }]'),
    );
    expect(dialsOf(design).find(({ name }) => name === 'middle')).toMatchObject({
      along: 0.4,
      height: expect.closeTo(50 * INCH, 9) as number,
    });
    expect(placesOf(design).every(({ kind }) => kind === 'grate')).toBe(true);
  });

  it.each([
    ['main', 'grate', 0.5],
    ['lid left', 'thermometer', 0.25],
    ['stackEnd', 'thermometer', 5 / 6],
  ])('gauge may name %s', (gauge, kind, along) => {
    const text = withGrates(
      '[{ name: main, height: 40 in }]\n  thermometers: [{ name: lid left, along: 25 %, height: 48 in }]',
      gauge,
    );
    expect(gaugePlace(designOf(text))).toMatchObject({ name: gauge, kind, along: expect.closeTo(along, 9) as number });
  });
});

describe('a place that can’t be', () => {
  it.each([
    [
      'a grate over the roof',
      withGrates('[{ name: main, height: 53 in }]'),
      'chamber.grates[0].height',
      /above the roof of the chamber/,
      /28\.25 in.*51\.75 in/,
      /40 in/,
    ],
    [
      'a rack under the floor',
      inUpright('racks: [34 in, 20 in]'),
      'upright.racks[1]',
      /below the floor of the upright/,
      /28\.25 in/,
      /48 in/,
    ],
    [
      'a thermometer over the roof',
      inUpright('thermometers: [{ name: top, height: 70 in }]'),
      'upright.thermometers[0].height',
      /above the roof/,
      /67\.75 in/,
      /48 in/,
    ],
    [
      'two grates of one name',
      withGrates('[{ name: main, height: 40 in }, { name: main, height: 45 in }]'),
      'chamber.grates[1].name',
      /already the name of a grate of the chamber/,
      /of its own/,
      /main 2/,
    ],
    [
      'a thermometer of a grate’s name',
      withGrates('[{ name: main, height: 40 in }]\n  thermometers: [{ name: main, height: 45 in }]'),
      'chamber.thermometers[0].name',
      /already the name of a grate/,
      /of its own/,
      /main 2/,
    ],
    [
      'a grate of a station’s name',
      withGrates('[{ name: middle, height: 40 in }]'),
      'chamber.grates[0].name',
      /name of a station/,
      /of its own/,
      /main/,
    ],
    [
      'a thermometer of another part’s station',
      inUpright('thermometers: [{ name: middle, height: 50 in }]'),
      'upright.thermometers[0].name',
      /station of the chamber/,
      /of its own/,
      /lid left/,
    ],
    [
      'a name of nothing',
      withGrates('[{ name: "", height: 40 in }]'),
      'chamber.grates[0].name',
      /is empty/,
      /gauge/,
      /main/,
    ],
    [
      'two racks of one height',
      inUpright('racks: [34 in, 34 in]'),
      'upright.racks[1]',
      /height of rack 1/,
      /once/,
      /^$/,
    ],
    [
      'a grate that ends where it begins',
      withGrates('[{ name: main, height: 40 in, from: 60 %, to: 60 % }]'),
      'chamber.grates[0].to',
      /not past where the grate begins/,
      /60 %/,
      /from: 0 %/,
    ],
  ])('%s: one clear message', (_, text, path, message, allowed, example) => {
    const [fault, ...others] = faultsOf(text);
    expect(others).toEqual([]);
    expect(fault.path).toBe(path);
    expect(fault.message).toMatch(message);
    expect(fault.allowed).toMatch(allowed);
    expect(fault.example ?? '').toMatch(example);
    expect(fault.line).toBeGreaterThan(1);
  });

  it('a gauge that names nothing: all that it may name, and the nearest', () => {
    const [fault, ...others] = faultsOf(withGrates('[{ name: main, height: 40 in }]', 'mian'));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({
      code: 'unknown-name',
      path: 'gauge',
      nearest: 'main',
      allowed: 'fireEnd, middle, stackEnd, main',
    });
  });

  it('names no place with a rack that lacks its unit', () => {
    expect(faultsOf(inUpright('racks: [34, 42 in]'))).toMatchObject([{ path: 'upright.racks[0]' }]);
  });
});

describe('what is said of places', () => {
  it('check lists them with their heights, and which the gauge is', () => {
    const text = withGrates(
      '[{ name: main, height: 40 in, to: 60 % }]\n  thermometers: [{ name: lid left, along: 25 %, height: 48 in }]',
      'main',
    );
    const design = designOf(text);
    const said = checkText({ design, defaults: [], warnings: [], geometry: geometryOf(design) }, 'shop');
    const section = said.slice(said.indexOf('PLACES'), said.indexOf('OPENINGS'));
    expect(section).toMatch(/main \(gauge\) +grate +0 % to 60 % +40 in/);
    expect(section).toMatch(/lid left +thermometer, chamber +25 % +48 in/);
    expect(section).toMatch(/middle +thermometer, chamber +50 % +45\.9 in/);
  });

  it('a grate’s steel is weighed once', () => {
    const [without, bare, heavy] = [
      PLAIN,
      withGrates('[{ name: main, height: 40 in }]'),
      withGrates('[{ name: main, height: 40 in, mass: 20 lb }]'),
    ].map((text) => geometryOf(designOf(text)).totalSteelMass);
    expect(bare).toBe(without);
    // exact: the pound
    expect(heavy - without).toBeCloseTo(20 * 0.45359237, 9);
  });

  it('a short stem is read and warned of, for what it conducts is left out', () => {
    const warned = (stem: string) => {
      const text = inChamber(
        'length: 60 in',
        `length: 60 in\n  thermometers: [{ name: lid left, along: 25 %, height: 48 in, stem: ${stem} }]`,
      );
      const { warnings } = read(text) as Extract<ReturnType<typeof read>, { warnings: unknown }>;
      return warnings.map(({ code, where }) => [code, where]);
    };
    expect(warned('2-1/2 in')).toEqual([['short-stem-reads-low', 'chamber.thermometers[0].stem']]);
    expect(warned('4 in')).toEqual([]);
    // exact: a fin with an insulated tip, mean over its inner half, at the limit of 3 in
    const [h, k, diameter, fill, length] = [25, 15, 0.00635, 0.4, 3 * INCH];
    const mL = Math.sqrt((4 * h) / (k * diameter * fill)) * length;
    expect(Math.sinh(mL / 2) / ((mL / 2) * Math.cosh(mL))).toBeCloseTo(0.07, 2);
  });

  it('new shows them, commented', () => {
    expect(starterDesign()).toMatch(/# grates:[^]*# thermometers:[^]*#   racks:/);
  });
});
