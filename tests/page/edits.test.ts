import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readDesign } from '../../src/design/read.js';
import { starterDesign } from '../../src/design/starter.js';
import { drawingTitle } from '../../src/page/drawingView.js';
import { fileName } from '../../src/page/files.js';
import { leastDifference, ofResult, type Quantity } from '../../src/study/quantities.js';
import { toldBeside, type NumberRow } from '../../src/page/numbers.js';
import { MOST_OPTIONS, Workbench } from '../../src/page/workbench.js';
import { sampleResult } from '../support/sampleResult.js';
import { edit, textOf } from './support/bench.js';
import { expectPlacesReadBack, expectShownAsIs } from './support/controls.js';

const benchOf = (name: string) => new Workbench(textOf(name));

describe('controls', () => {
  it.each(['plain-24', 'offset-with-upright'])(
    'every place of every slider of %s writes a text that reads back to that place',
    expectPlacesReadBack,
  );

  it.each(['plain-24', 'offset-with-upright'])(
    'shows %s as it is: setting each field to its own text changes nothing',
    expectShownAsIs,
  );
});

describe('the drawing', () => {
  const { design } = sampleResult;
  const { assumed, warmUp } = sampleResult;
  const small = { ...assumed!, stations: assumed!.stations.map((each) => ({ ...each, thermometer_K: 350 })) };
  const never = { ...warmUp!, gauge_s: null, soaked_s: null };

  it.each([
    ['holds', {}, /while it holds 250 °F$/],
    ['can hold by no fire', { steady: null, warmUp: never }, /under the full fire, which does not hold 250 °F$/],
    ['would hold by a larger fire', { assumed: small, warmUp: never }, /under the full fire, which does not hold/],
    ['settles at nothing', { steady: null, assumed: null, warmUp: null }, /^Drawing to scale$/],
  ])('of a pit that %s is headed by the fire that it shows', (_, change, title) => {
    expect(drawingTitle(design, { ...sampleResult, ...change })).toMatch(title);
  });
});

describe('edits', () => {
  it("keeps a pipe's wall when its diameter becomes a plain one", () => {
    const bench = benchOf('boxed-22');
    expect(edit(bench, 'chamber.diameter', '24 in')).toBe(true);
    expect(bench.current.text.text()).toContain('plate: 3/8 in');
    expect(bench.current.design.chamber).toMatchObject({ width: 0.6096, plate: 0.009525 });
    expect(edit(bench, 'chamber.diameter', '22 in pipe, extra strong')).toBe(true);
    expect(bench.current.design.chamber?.plate).toBeCloseTo(0.009525, 9);
  });

  it("takes a door along with its part's plate, unless the design makes it of another", () => {
    const doors = textOf('plain-24').replace(
      /plate: 1\/4 in/g,
      'plate: 1/4 in\n  door: { width: 16 in, height: 12 in, plate: 0.25 in }',
    );
    const bench = new Workbench(doors.replace('plate: 0.25 in', 'plate: 3/8 in'));
    expect(edit(bench, 'firebox.plate', '3/16 in')).toBe(true);
    expect(edit(bench, 'chamber.plate', '3/16 in')).toBe(true);
    const { firebox, chamber } = bench.current.design;
    expect([firebox, chamber].map((part) => part?.plate)).toEqual([0.0047625, 0.0047625]);
    expect([firebox, chamber].map((part) => part?.door?.plate)).toEqual([0.009525, 0.0047625]);
  });

  it('takes several doors and a face along as a comparison does, but for those of another plate', () => {
    const walls = [
      'doors: [{ name: left, width: 16 in, height: 12 in, plate: 0.25 in }, { name: right, width: 16 in, height: 12 in, plate: 3/8 in }]',
      'fireEnd: { plate: 1/4 in }',
      'stackEnd: { plate: 3/8 in }',
    ];
    const bench = new Workbench(textOf('plain-24').replace(/^chamber:/m, `$&\n  ${walls.join('\n  ')}`));
    expect(edit(bench, 'chamber.plate', '3/16 in')).toBe(true);
    const { doors = [], fireEnd, stackEnd } = bench.current.design.chamber!;
    const plates = [...doors, fireEnd, stackEnd].map((each) => each?.plate);
    expect(plates).toEqual([0.0047625, 0.009525, 0.0047625, 0.009525]);
  });

  it('turns a pipe into a shell of its outside diameter where it gets a plate of its own', () => {
    const bench = benchOf('boxed-22');
    const { width } = bench.current.design.chamber!;
    expect(edit(bench, 'chamber.plate', '1/4 in')).toBe(true);
    expect(bench.current.text.text()).not.toContain('pipe, standard wall');
    expect(bench.current.design.chamber).toMatchObject({ width, plate: 0.00635 });
  });

  it('turns a pipe into a square of its size and plate, and back', () => {
    const bench = benchOf('wind-cold');
    const { plate, width } = bench.current.design.firebox;
    expect(edit(bench, 'firebox.shape', 'square')).toBe(true);
    expect(bench.current.design.firebox).toMatchObject({ shape: 'square', width, height: width, plate });
    expect(edit(bench, 'firebox.shape', 'round')).toBe(true);
    expect(bench.current.design.firebox).toMatchObject({ shape: 'round', width, plate });
  });

  it('wraps a bare part and unwraps it', () => {
    const bench = benchOf('plain-24');
    expect(edit(bench, 'chamber.insulation.thickness', '2 in')).toBe(true);
    expect(bench.current.design.chamber?.insulation).toMatchObject({ material: 'ceramic fibre', thickness: 0.0508 });
    expect(edit(bench, 'chamber.insulation.thickness', '0 in')).toBe(true);
    expect(bench.current.design.chamber?.insulation?.thickness).toBe(0);
  });

  it('writes a large heat so that a brace does not split it', () => {
    const bench = new Workbench(
      starterDesign().replace(/^fire:\n(?: {2}.*\n)+/m, 'fire: { heat: 20 kW, target: 250 °F }\n'),
    );
    expect(edit(bench, 'fire.heat', '70,000 BTU/h')).toBe(true);
    expect(bench.current.design.fire.heat).toBeCloseTo(20515, 0);
    expect(readDesign(bench.current.text.text(), { fileName: 'x' }).faults).toBeUndefined();
  });

  it('leaves the last good design where it was, and tells the fault in the words of the reader', () => {
    const bench = benchOf('plain-24');
    const before = bench.current.text.text();
    expect(edit(bench, 'site.wind', '5 parsecs')).toBe(false);
    expect(bench.current.text.text()).toBe(before);
    expect(bench.current.refused.get('site.wind')?.message).toMatch(/^'5 parsecs' has a unit that does not fit here/);
    expect(edit(bench, 'site.air', '60 °F')).toBe(true);
    expect(bench.current.refused.has('site.wind')).toBe(true);
    expect(edit(bench, 'site.wind', '6 mph')).toBe(true);
    expect(bench.current.refused.size).toBe(0);
  });

  it('keeps what aliases share apart', () => {
    const shared = textOf('plain-24')
      .replace('  plate: 1/4 in\n', '  plate: &p 1/4 in\n')
      .replace(/(chamber:[^]*?)plate: 1\/4 in/, '$1plate: *p');
    const bench = new Workbench(shared);
    expect(edit(bench, 'firebox.plate', '1/2 in')).toBe(true);
    expect(bench.current.design.firebox.plate).toBeCloseTo(0.0127, 9);
    expect(bench.current.design.chamber?.plate).toBeCloseTo(0.00635, 9);
  });

  it('reads and saves JSON too', () => {
    const { design } = benchOf('plain-24').current;
    const bench = new Workbench(JSON.stringify(parse(textOf('plain-24'))));
    expect(bench.current.design).toEqual(design);
    expect(edit(bench, 'chamber.length', '4 ft')).toBe(true);
    expect(readDesign(bench.current.text.text(), { fileName: 'x' }).faults).toBeUndefined();
  });
});

describe('options', () => {
  it('are as many as fit, each apart, and one always stays', () => {
    const bench = benchOf('plain-24');
    for (let i = 1; i < MOST_OPTIONS; i++) expect(bench.add()).not.toBeNull();
    expect(bench.add()).toBeNull();
    expect(edit(bench, 'chamber.plate', '1/2 in')).toBe(true);
    expect(bench.baseline.design.chamber?.plate).toBeCloseTo(0.00635, 9);
    expect(new Set(bench.options.map(({ label }) => label)).size).toBe(MOST_OPTIONS);
    for (let i = 0; i < 9; i++) bench.remove(bench.current);
    expect(bench.options).toHaveLength(1);
    expect(bench.current).toBe(bench.options[0]);
  });

  it('tell differences with their sign, and none where there is none to tell', () => {
    const row = (kind: Quantity['kind'], si: number | null): NumberRow => ({
      quantity: {
        ...ofResult(kind === 'time' ? 'soaked_s' : 'steel_kg'),
        kind,
        none: (value) => leastDifference(kind, value),
      },
      label: 'x',
      group: 'x',
      text: String(si),
      si,
    });
    const told = (kind: Quantity['kind'], base: number | null, own: number | null) => {
      const [first, second] = toldBeside([row(kind, base), row(kind, own)]);
      return [first!.text, second!.text, second!.difference];
    };
    expect(told('time', 1800, 2400)).toEqual(['30 min', '40 min', '+10 min']);
    expect(told('temperature', 390, 380)).toEqual(['242 °F', '224 °F', '−18 °F']);
    expect(told('temperature', 380, 380.5)[2]).toBe('same');
    expect(told('mass', 255.8, 200)).toEqual(['564 lb', '441 lb', '−123 lb']);
    expect(told('time', 1800, null)).toEqual(['30 min', 'never', '']);
    // times that read the same are the same
    expect(told('time', 45 * 60 + 20, 44 * 60 + 40)).toEqual(['45 min', '45 min', 'same']);
    expect(toldBeside([undefined, row('time', 1800)])).toEqual([null, { text: '30 min', difference: '' }]);
  });

  it('are saved under names that every file system takes', () => {
    expect(fileName('Backyard 24: 1/4" <plate> As drawn')).toBe('backyard-24-1-4-plate-as-drawn');
    expect(fileName('\u202e///')).toBe('pit');
    expect(fileName('CON'.repeat(60)).length).toBeLessThanOrEqual(60);
  });
});
