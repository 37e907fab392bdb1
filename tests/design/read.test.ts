import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { designJsonSchema } from '../../src/design/jsonSchema.js';
import { readDesignAnyUnit } from '../../src/design/read.js';
import { starterDesign } from '../../src/design/starter.js';
import { changed, designOf, OVER, PLAIN, read, UPRIGHT } from './designFiles.js';

const EXAMPLES = new URL('../../examples/', import.meta.url);

describe('a design file', () => {
  it('reads into SI', () => {
    const design = designOf(UPRIGHT);
    // derived: the file's own numbers times the exact factors of NIST SP 811
    expect(design.site.air).toBeCloseTo(294.2611, 4);
    expect(design.site.wind).toBeCloseTo(2.2352, 9);
    expect(design.site.altitude).toBeCloseTo(152.4, 9);
    expect(design.fire).toMatchObject({ heat: 20514.9749121, rise: 600, target: 394.261111111 });
    expect(design.firebox).toMatchObject({
      shape: 'round',
      width: 0.6096,
      height: 0.6096,
      plate: 0.00635,
      centre: 0.762,
    });
    expect(design.firebox.intakes[0].area).toBeCloseTo((Math.PI / 4) * 0.1016 ** 2, 12);
    expect(design.throat.area).toBeCloseTo(0.0580644, 12);
    expect(design.upright).toMatchObject({ width: 0.6096, depth: 0.6096, height: 1.016, opening: { discharge: 0.62 } });
    expect(design.stacks[0].wall).toBeCloseTo(0.1196 * 0.0254, 9);
  });

  it('takes the wood’s net heat from its moisture', () => {
    // published: AIEL, Wood Fuels Handbook, 14.72 MJ/kg at 20 % and 12.58 at 30 % of the wet mass
    expect(designOf(PLAIN).wood.heat / 1e6).toBeCloseTo(14.72, 1);
    expect(designOf(changed(['moisture: 20 %', 'moisture: 30 %'])).wood.heat / 1e6).toBeCloseTo(12.58, 1);
    expect(designOf(changed(['moisture: 20 %', 'heat: 6,300 BTU/lb'])).wood.heat).toBeCloseTo(6300 * 2326, 3);
  });

  it('turns wood per hour into heat by that wood', () => {
    const design = designOf(changed(['heat: 70,000 BTU/h', 'heat: 10 lb wood/h']));
    // derived: 10 lb/h x 0.45359237 kg/lb / 3600 s/h x 14.712 MJ/kg
    expect(design.fire.heat).toBeCloseTo((4.5359237 / 3600) * 14.712e6, 3);
  });

  it('lists every default that it took', () => {
    const result = read(OVER);
    expect(result.faults).toBeUndefined();
    expect(result.faults ? [] : result.defaults).toEqual(
      expect.arrayContaining([
        'site.air',
        'site.wind',
        'site.altitude',
        'wood.kind',
        'wood.moisture',
        'fire.rise',
        'fire.radiant',
        'firebox.doorGap',
        'firebox.intakes[0].open',
        'stacks[0].part',
        'gauge',
        'innerConvection',
      ]),
    );
    const design = designOf(OVER);
    expect(design.gauge).toBe('uprightUpper');
    expect(design.stacks[0].part).toBe('upright');
    expect(design.site.surroundings).toBe(design.site.air);
    const full = read(UPRIGHT);
    expect(full.faults ? [] : full.defaults).not.toContain('site.air');
  });

  it('is the same as JSON', () => {
    expect(designOf(JSON.stringify(parse(UPRIGHT)))).toEqual(designOf(UPRIGHT));
    expect(designOf(JSON.stringify(parse(UPRIGHT), null, '\t'))).toEqual(designOf(UPRIGHT));
  });

  it('gives the same bytes for the same quantities in other units', () => {
    const metric = changed(
      ['air: 70 °F', 'air: 21.1111111111111 °C'],
      ['wind: 5 mph', 'wind: 2.2352 m/s'],
      ['altitude: 500 ft', 'altitude: 152.4 m'],
      ['moisture: 20 %', 'moisture: 0.2'],
      ['heat: 70,000 BTU/h', 'heat: 20.5149749121 kW'],
      ['rise: 10 min', 'rise: 600 s'],
      ['target: 250 °F', 'target: 121.1111111111111 °C'],
      ['diameter: 24 in', "diameter: 2'"],
      ['length: 24 in', 'length: 609.6 mm'],
      ['plate: 1/4 in', 'plate: 6.35 mm'],
      ['centre: 30 in', 'centre: 2 ft 6 in'],
      ['diameter: 4 in', 'diameter: 10.16 cm'],
      ['doorGap: 1.0 in^2', 'doorGap: 6.4516 cm²'],
      ['length: 60 in', 'length: 5 ft'],
      ['area: 90 in^2', 'area: 0.625 ft^2'],
      ['wall: 11 ga', 'wall: 0.1196 in'],
    );
    expect(JSON.stringify(designOf(metric))).toBe(JSON.stringify(designOf(PLAIN)));
  });

  it('takes diameter and wall from a pipe', () => {
    const design = designOf(
      changed(['diameter: 24 in', 'diameter: 24 in pipe, standard wall'], ['  plate: 1/4 in\n', '']),
    );
    expect(design.firebox).toMatchObject({ width: 0.6096, plate: 0.009525 });
    const own = designOf(changed(['diameter: 24 in', 'diameter: 24 in pipe, standard wall']));
    expect(own.firebox.plate).toBe(0.00635);
    const stack = designOf(
      changed(['diameter: 6 in, height: 36 in, wall: 11 ga', 'diameter: "6 in pipe, standard wall", height: 36 in']),
    );
    expect(stack.stacks[0]).toMatchObject({ diameter: 0.168275, wall: 0.007112 });
  });

  it('reads a gauge by the part’s own steel', () => {
    const steel = designOf(
      changed(['plate: 1/4 in\n  centre: 30 in', 'plate: 11 ga\n  steel: stainless\n  centre: 30 in']),
    );
    expect(steel.firebox).toMatchObject({ steel: 'stainless', plate: 0.003175 });
  });

  it('takes vents by diameter, by width and height, or by area', () => {
    const slide = designOf(changed(['diameter: 4 in', 'width: 5 in, height: 3 in']));
    expect(slide.firebox.intakes[0].area).toBeCloseTo(15 * 0.0254 ** 2, 12);
    const area = designOf(changed(['diameter: 4 in', 'area: 12 in^2']));
    expect(area.firebox.intakes[0].area).toBeCloseTo(12 * 0.0254 ** 2, 12);
    const pipe = designOf(changed(['diameter: 4 in,', 'diameter: "4 in pipe, standard wall",']));
    // published: NPS 4 is 114.3 mm outside with a wall of 6.02 mm (ASME B36.10M)
    expect(pipe.firebox.intakes[0].area).toBeCloseTo((Math.PI / 4) * (0.1143 - 2 * 0.00602) ** 2, 5);
  });

  it('reads insulation, finish, contents and a door', () => {
    const text = changed([
      'doorGap: 2.0 in^2',
      `doorGap: 2.0 in^2
  insulation: { material: ceramic fiber, thickness: 2 in, skin: 16 ga }
  finish: stainless
  contents: [{ name: racks, mass: 30 lb, area: 12 ft^2, station: middle }]
  door: { width: 40 in, height: 20 in }`,
    ]);
    const { chamber } = designOf(text);
    expect(chamber).toMatchObject({
      insulation: { material: 'ceramic fibre', thickness: 0.0508 },
      finish: 'stainless',
      emissivity: 0.6,
      door: { plate: 0.00635, lap: 0.0127 },
    });
    expect(chamber?.contents[0]).toMatchObject({ material: 'steel', station: 'middle' });
  });

  it('warns where hot insulation values are an estimate', () => {
    const result = read(changed(['doorGap: 2.0 in^2', 'insulation: { material: mineral wool, thickness: 2 in }']));
    expect(result.faults ? [] : result.warnings.map((each) => each.code)).toEqual(['insulation-hot-values-estimated']);
  });

  it('makes a wood of shares that add up to one', () => {
    const text = changed(['moisture: 20 %', 'composition: { carbon: 50 %, hydrogen: 6 %, oxygen: 43.5 % }']);
    const { composition } = designOf(text).wood;
    expect(Object.values(composition).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(composition.ash).toBeCloseTo(0.005, 9);
  });

  it('reads any legal unit, mathjs being loaded for it', async () => {
    const text = changed(['heat: 70,000 BTU/h', 'heat: 72000 kJ/h'], ['length: 60 in', 'length: 1 rod']);
    expect(read(text).faults?.map((each) => each.code)).toEqual(['unknown-unit', 'unknown-unit']);
    const result = await readDesignAnyUnit(text, { fileName: 'pit.yaml' });
    expect(result.faults).toBeUndefined();
    expect(result.design?.fire.heat).toBeCloseTo(20000, 6);
  });
});

describe('the files we ship', () => {
  const names = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml'));

  it('are at least one of each layout', () => {
    expect(names.length).toBeGreaterThanOrEqual(6);
  });

  it.each(names)('%s reads without a fault and names its schema', (name) => {
    const text = readFileSync(new URL(name, EXAMPLES), 'utf8');
    expect(read(text).faults ?? []).toEqual([]);
    expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=./pitwright.schema.json');
  });

  it('has a starter that reads as it stands', () => {
    expect(read(starterDesign()).faults ?? []).toEqual([]);
  });

  it('has a starter whose commented lines read too', () => {
    const wholeLines = starterDesign().replace(
      /^( *)# ((?:shop|job|sun|rain|heat|- |insulation|door|doors|grate|ashDoor|heads|flange|grates|thermometers|contents|innerConvection|upright|splits|cook|prices|size|options| {4}changes| {4}- | {6}firebox\.(?:plate|insulation)| {2}(?:width|depth|height|plate|centre|doorGap|racks|opening|load|tend|events|dieDown|keep|stack|onHand|- ))[: {\w].*)$/gm,
      '$1$2',
    );
    expect(wholeLines).toContain('\nupright:\n  width');
    expect(wholeLines).toMatch(/\ncook: .*\n {2}load/);
    expect(wholeLines).toContain('\n  splits: {');
    expect(wholeLines).toMatch(/\n {2}heads: dished .*\n {2}flange: /);
    expect(wholeLines).toMatch(/\n {2}grate: .*\n {2}ashDoor: /);
    expect(wholeLines).toMatch(
      /\nprices: .*\nsize: .*\n {2}keep: .*\n(?: {2}.*\n)+options: .*\n(?: {2}.*\n){2} {4}changes: .*\n {6}firebox/,
    );
    expect(read(wholeLines).faults ?? []).toEqual([]);
  });

  it('has a JSON Schema that is up to date (npm run schema writes it)', () => {
    const written: unknown = JSON.parse(readFileSync(new URL('pitwright.schema.json', EXAMPLES), 'utf8'));
    expect(written).toEqual(JSON.parse(JSON.stringify(designJsonSchema())));
  });
});
