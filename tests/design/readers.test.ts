/**
 * Quantities in every form a builder, or a slip of his hand, may give them: read right, or refused with field, range
 * and form.
 */
import { describe, expect, it } from 'vitest';
import { pathText } from '../../src/design/path.js';
import { parseQuantity, type Kind } from '../../src/units/index.js';
import { changed, designOf, faultsOf, inChamber, PLAIN, read } from './designFiles.js';
import { PLACES, readAnyQuantity, stand, type Place } from './quantityPlaces.js';

const INCH = 0.0254;

describe('any number with any unit in any field', () => {
  it('is read into a sound design, or refused at its line with what is allowed', () => readAnyQuantity(120));

  it('says in a refusal which range is allowed, in the form in which it is written', () => {
    for (const place of PLACES) {
      const [fault, ...others] = stand(place, '-1e9 bananas');
      expect(others).toEqual([]);
      expect(fault.code).toBe('unknown-unit');
      expect(fault.allowed).toMatch(/\d.* to .*\d/);
    }
  });

  it('is no pipe but where something round has a diameter, and no gauge but where sheet has a thickness', () => {
    const takers = (value: string) =>
      PLACES.filter((place) =>
        stand(place, value).every(({ code }) => code !== 'not-a-quantity' && code !== 'unknown-unit'),
      );
    const named = (places: Place[]) => places.map(pathText).sort();
    expect(named(takers('6 in pipe, standard wall'))).toEqual([
      'chamber.diameter',
      'firebox.diameter',
      'firebox.intakes[0].diameter',
      'stacks[0].diameter',
    ]);
    expect(named(takers('16 ga'))).toEqual([
      'chamber.plate',
      'firebox.door.plate',
      'firebox.insulation.skin',
      'firebox.plate',
      'stacks[0].wall',
      'upright.plate',
    ]);
  });
});

describe('a comma', () => {
  it.each([
    ['mass', '0,640 kg', '0.640 kg'],
    ['mass', '00,640 kg', '00.640 kg'],
    ['mass', '-0,640 kg', '-0.640 kg'],
    ['length', '0,25 in', '0.25 in'],
    ['length', '2,5 in', '2.5 in'],
    ['length', ',5 in', '0.5 in'],
    ['length', '1.234,5 mm', '1,234.5 mm'],
    ['plate', '0,250 in', '0.250 in'],
    ['area', '0,090 m^2', '0.090 m^2'],
    ['power', '0,640 lb wood/h', '0.640 lb wood/h'],
    ['temperature', '250,5 °F', '250.5 °F'],
    ['share', '0,200', '0.200'],
    ['time', '0,500 h', '0.500 h'],
    ['number', '0,620', '0.620'],
  ] as [Kind, string, string][])(
    'that parts no thousands is refused with the right form: %s %s',
    (kind, written, right) => {
      const refused = parseQuantity(kind, written);
      expect(refused).toMatchObject({ ok: false, nearest: right });
      expect(parseQuantity(kind, right).ok).toBe(true);
    },
  );

  it('parts thousands where a number begins with another digit than 0', () => {
    expect(parseQuantity('power', '70,000 W')).toEqual({ ok: true, si: 70_000 });
    expect(parseQuantity('mass', '1,640 kg')).toEqual({ ok: true, si: 1640 });
    expect(parseQuantity('mass', '1,234,567 kg')).toEqual({ ok: true, si: 1_234_567 });
  });

  it('or a point that makes a number a thousand times too large or small is met with the other', () => {
    const nearest = (text: string) => faultsOf(text).map(({ code, nearest: right }) => [code, right]);
    expect(nearest(changed(['diameter: 6 in', 'diameter: "152,400 mm"']))).toEqual([['out-of-range', '152.400 mm']]);
    expect(nearest(changed(['70,000 BTU/h', '70.000 BTU/h']))).toEqual([['out-of-range', '70,000 BTU/h']]);
    expect(nearest(changed(['70,000 BTU/h', '70 000 BTU/h']))).toEqual([['not-a-quantity', '70,000 BTU/h']]);
  });

  it.each([
    ['area: 90 in^2', 'area: 0,064 m^2', '0.064 m^2'],
    ['area: 90 in^2', 'area: 0,06 m^2', '0.06 m^2'],
    ['area: 90 in^2', 'area: 90,5 in^2', '90.5 in^2'],
    ['area: 90 in^2', 'area: 58,064 mm^2', '"58,064 mm^2"'],
    ['diameter: 6 in', 'diameter: 6 in pipe, standard wall', '"6 in pipe, standard wall"'],
  ])('inside braces is one fault, with the right form: %s as %s', (from, to, right) => {
    const faults = faultsOf(changed([from, to]));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ code: 'comma-in-braces', nearest: right });
  });
});

describe('a pipe', () => {
  const firebox = (diameter: string) =>
    PLAIN.replace('diameter: 24 in\n  length: 24 in\n  plate: 1/4 in', `diameter: ${diameter}\n  length: 24 in`);

  it.each(['-1/4 in', '0 in', '-0 in', '1/128 in', '2-1/16 in', '12 in', '13 in', '1e6 in', '1e-9 m'])(
    'has a wall within the limits of plate: not %s',
    (wall) => {
      for (const [text, path] of [
        [firebox(`24 in pipe, ${wall} wall`), 'firebox.diameter'],
        [
          changed(['diameter: 6 in, height: 36 in, wall: 11 ga', `diameter: "6 in pipe, ${wall} wall", height: 36 in`]),
          'stacks[0].diameter',
        ],
        [changed(['diameter: 4 in', `diameter: "4 in pipe, ${wall} wall"`]), 'firebox.intakes[0].diameter'],
      ]) {
        expect(faultsOf(text)).toMatchObject([
          { code: 'out-of-range', path, allowed: expect.stringMatching(/0\.5 mm to 2 in/) },
        ]);
      }
    },
  );

  it('leaves a bore', () => {
    const text = changed(['diameter: 4 in', 'diameter: "3 in pipe, 1.7 in wall"']);
    expect(faultsOf(text)).toMatchObject([{ code: 'out-of-range', path: 'firebox.intakes[0].diameter' }]);
    const without = changed(['diameter: 4 in', 'diameter: 4 in pipe']);
    expect(faultsOf(without)).toMatchObject([
      { path: 'firebox.intakes[0].diameter', allowed: '4 in pipe, standard wall' },
    ]);
  });

  it('beside plate of another thickness is told, and the plate is taken', () => {
    const told = (text: string) => {
      const result = read(text);
      return result.faults ?? result.warnings.filter(({ code }) => code === 'wall-not-of-pipe');
    };
    const beside = inChamber('diameter: 24 in', 'diameter: 24 in pipe, standard wall');
    expect(told(beside)).toMatchObject([
      { where: 'chamber.plate', value: 0.25 * INCH, limits: { low: 0.009525, high: 0.009525, unit: 'm' } },
    ]);
    expect(designOf(beside).chamber!.plate).toBe(0.25 * INCH);
    const stack = changed(['diameter: 6 in', 'diameter: "6 in pipe, standard wall"']);
    expect(told(stack)).toMatchObject([{ where: 'stacks[0].wall' }]);
    for (const same of ['3/8 in', '0.375 in', '9.53 mm']) {
      expect(told(beside.replace(/(chamber:[^]*?plate: )1\/4 in/, `$1${same}`))).toEqual([]);
    }
    expect(told(inChamber('diameter: 24 in', 'diameter: 24 in pipe'))).toEqual([]);
  });

  it('is no part that is square', () => {
    const text = PLAIN.replace(
      'shape: round\n  diameter: 24 in\n  length: 24 in',
      'shape: square\n  width: 24 in pipe\n  length: 24 in',
    );
    expect(faultsOf(text)).toMatchObject([{ code: 'not-a-quantity', path: 'firebox.width' }]);
  });
});

describe('numbers in other people’s ways', () => {
  it.each([
    ['1:30', '1 h 30 min'],
    ['0:10', '0 h 10 min'],
    ['1:30:00', '1 h 30 min'],
    ['90:00', null],
  ])('a clock is refused as a time: %s', (written, right) => {
    const [fault, ...others] = faultsOf(changed(['rise: 10 min', `rise: ${written}`]));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: 'not-a-quantity', path: 'fire.rise', value: written, nearest: right });
  });

  it.each([
    ['24 in', 24],
    ['24. in', 24],
    ['2e1 in', 20],
    ['1-1/4 ft', 15],
    ['2\' 6"', 30],
    ['2\'-6"', 30],
    ['2ft6in', 30],
    ['2 ft 6½ in', 30.5],
  ])('%s', (written, inches) => {
    expect(parseQuantity('length', written)).toMatchObject({ ok: true, si: expect.closeTo(inches * INCH, 9) });
  });

  it.each([
    '1 -1/4 in',
    '1--1/4 in',
    '1-4 in',
    '24 in 6 ft',
    '2 ft 6',
    '1/4/2 in',
    '1.2.3 in',
    '5, in',
    '--5 in',
    '0x18 in',
    '1_000 in',
    '∞ in',
  ])('what could be read in two ways, or none, is refused: %s', (written) => {
    expect(parseQuantity('length', written).ok).toBe(false);
  });

  it('a bare altitude is met with metres, a bare diameter with inches', () => {
    expect(faultsOf(changed(['500 ft', '500']))).toMatchObject([{ code: 'no-unit', nearest: '500 m' }]);
    expect(faultsOf(changed(['diameter: 6 in', 'diameter: 6']))).toMatchObject([{ code: 'no-unit', nearest: '6 in' }]);
  });
});
