/** Quantities in every form a builder, or a slip of his hand, may give them: read right, or refused with field, range and form. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { formatFault } from '../../src/design/faults.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { pathText } from '../../src/design/source.js';
import { parseQuantity, type Kind } from '../../src/units/index.js';
import { changed, designOf, faultsOf, inChamber, PLAIN, read, UPRIGHT } from './designFiles.js';

const INCH = 0.0254;

/** Everything that takes a quantity, in one design. */
const FULL = `${UPRIGHT.replace(
  'rise: 10 min',
  'rise: 10 min\n  radiant: 30 %\n  soot: 0.5 per m\n  splits: { every: 45 min, flame: 15 min, charcoal: 30 %, glow: 45 min }',
)
  .replace(
    'doorGap: 1.0 in^2',
    `doorGap: 1.0 in^2
  insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }
  door: { width: 14 in, height: 12 in, plate: 3/16 in, lap: 1/2 in }
  contents: [{ name: grate, mass: 20 lb, area: 4 ft^2 }]`,
  )
  .replace('humidity', '')}cook:
  soak: 10 min
  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]
  loading: 60 s
  tend: 4 h
  events: [{ at: 1 h, lasts: 30 s, door: true }, { at: 2 h, lasts: 20 min, wind: 20 mph, rain: 40 % }]
  dieDown: 1 h
  band: 15 °F
handles: [{ name: lid, part: chamber, diameter: 1/2 in, length: 6 in, standoff: 2 in }]
trailer: { mass: 600 lb, balance: 80 in, axle: 96 in, offset: 150 in, axleRating: 3500 lb, hitchRating: 500 lb }
loads: [{ name: wood, mass: 100 lb, position: 20 in }]
`;

type Place = (string | number)[];

/** Places of all texts that hold a quantity. */
function quantities(tree: unknown, at: Place = []): Place[] {
  if (typeof tree === 'string') return /^\d/.test(tree) ? [at] : [];
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) =>
    quantities(value, [...at, Array.isArray(tree) ? Number(key) : key]),
  );
}

const TREE: unknown = parse(FULL);
const PLACES = quantities(TREE);

/** The full design as JSON with another value at a place, one field a line so that lines can be told apart. */
function withValue(place: Place, value: unknown): string {
  const copy = structuredClone(TREE) as Record<string | number, unknown>;
  let block = copy;
  for (const part of place.slice(0, -1)) block = block[part] as Record<string | number, unknown>;
  block[place[place.length - 1]] = value;
  return JSON.stringify(copy, null, 1);
}

/** A design of sound numbers, or faults that say where and what: the faults at the place. */
function stand(place: Place, value: unknown) {
  const text = withValue(place, value);
  const result = read(text);
  if (!result.faults) {
    const finite = (each: unknown): boolean =>
      typeof each === 'number'
        ? Number.isFinite(each)
        : typeof each !== 'object' || each === null || Object.values(each).every(finite);
    expect(finite(result.design)).toBe(true);
    const { parts, shared, stacks, totalSteelMass } = geometryOf(result.design);
    for (const each of [...parts.map((part) => part.steelMass), ...shared.map((plate) => plate.mass), totalSteelMass]) {
      expect(each).toBeGreaterThan(0);
    }
    for (const { bore, mass } of stacks) expect(Math.min(bore, mass)).toBeGreaterThan(0);
    for (const { area } of result.design.firebox.intakes) expect(area).toBeGreaterThan(0);
    return [];
  }
  for (const fault of result.faults) {
    expect(fault.message).not.toBe('');
    expect(formatFault(fault)).toMatch(/^pit\.yaml:\d+:\d+: /);
    expect(`${fault.message} ${fault.allowed ?? ''} ${fault.nearest ?? ''}`).not.toMatch(
      /NaN|Infinity|undefined|\[object/,
    );
  }
  return result.faults.filter(({ path }) => path === pathText(place));
}

const anyNumber = fc.oneof(
  fc.constantFrom(
    '0',
    '-0',
    '-1',
    '1/4',
    '-1/4',
    '1-1/4',
    '1 1/4',
    '.25',
    '-.25',
    '1e3',
    '1e-3',
    '1e400',
    '-1e400',
    '5e-324',
  ),
  fc.constantFrom(
    '0,5',
    '0,25',
    '0,640',
    '12,5',
    '1,250',
    '70,000',
    '1.234,5',
    '1,2,3',
    '1.2.3',
    '70 000',
    '007',
    '+5',
    '½',
    '1¼',
  ),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => String(Number(value.toPrecision(4)))),
);
const anyUnit = fc.constantFrom(
  '', ' in', '"', ' ft', "'", " 6\"", ' mm', ' m', ' ga', ' in pipe', ' in pipe, standard wall', ' in pipe, -1/4 in wall', ' in pipe, 0 in wall',
  ' in pipe, 11 ga wall', ' in pipe, 1e9 in wall', ' in^2', ' ft²', ' °F', ' °C', ' K', ' lb', ' kg', ' BTU/h', ' kW', ' lb wood/h', ' min', ' h', ':30', ':30:00',
  ' s', ' %', ' mph', ' m/s', ' per m', ' W/m2', ' BTU/lb', ' bananas', ' in in', '/0 in',
); // prettier-ignore

/** The unit in which the full design gives the field. */
function ownUnit(place: Place): string {
  const written = place.reduce((node: unknown, part) => (node as Record<string | number, unknown>)[part], TREE);
  return String(written).replace(/^[\d.,/-]+/, '');
}

describe('any number with any unit in any field', () => {
  it('is read into a sound design, or refused at its line with what is allowed', () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(fc.constantFrom(...PLACES), anyNumber, fc.option(anyUnit, { freq: 2 }), (place, number, unit) => {
        const faults = stand(place, number + (unit ?? ownUnit(place)));
        for (const fault of faults) {
          expect(fault.value).not.toBeNull();
          expect(fault.allowed).not.toBeNull();
        }
        seen[faults.length > 0 ? 'refused' : 'read']++;
      }),
      { seed: 61, numRuns: 1000 },
    );
    expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(50);
  }, 120_000);

  it('says in a refusal which range is allowed, in the form in which it is written', () => {
    for (const place of PLACES) {
      const [fault, ...others] = stand(place, '-1e9 bananas');
      expect(others).toEqual([]);
      expect(fault.code).toBe('unknown-unit');
      expect(fault.allowed).toMatch(/\d.* to .*\d/);
    }
  });

  it('is refused when blank, null or no text at all', () => {
    for (const place of PLACES) {
      for (const value of ['', ' ', null, true, [], {}, ['1 in']]) expect(stand(place, value)).toHaveLength(1);
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
