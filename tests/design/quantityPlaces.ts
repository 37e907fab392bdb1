import fc from 'fast-check';
import { expect } from 'vitest';
import { parse } from 'yaml';
import { formatFault } from '../../src/design/faults.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { pathText } from '../../src/design/path.js';
import { read, UPRIGHT } from './designFiles.js';

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

export type Place = (string | number)[];

/** Places of all texts that hold a quantity. */
function quantities(tree: unknown, at: Place = []): Place[] {
  if (typeof tree === 'string') return /^\d/.test(tree) ? [at] : [];
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) =>
    quantities(value, [...at, Array.isArray(tree) ? Number(key) : key]),
  );
}

const TREE: unknown = parse(FULL);
export const PLACES = quantities(TREE);

/** The full design as JSON with another value at a place, one field a line so that lines can be told apart. */
function withValue(place: Place, value: unknown): string {
  const copy = structuredClone(TREE) as Record<string | number, unknown>;
  let block = copy;
  for (const part of place.slice(0, -1)) block = block[part] as Record<string | number, unknown>;
  block[place[place.length - 1]] = value;
  return JSON.stringify(copy, null, 1);
}

/** A design of sound numbers, or faults that say where and what: the faults at the place. */
export function stand(place: Place, value: unknown) {
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

/** Any number with any unit in any field is read into a sound design, or refused at its line with what is allowed. */
export function readAnyQuantity(runs: number): void {
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
    { seed: 61, numRuns: runs },
  );
  expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(runs / 20);
}
