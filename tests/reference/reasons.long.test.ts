import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCases } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';

test('corridors-F-upper: with walls for its stairs, or with 25 % radiated, it is within', () => {
  const file = 'cases-rooms.csv';
  const rows = readFileSync(new URL(`../../reference/${file}`, import.meta.url), 'utf8');
  const { cases } = readCases(rows, file, REGISTRY);
  const { inputs, expected } = cases.find(({ id }) => id === 'corridors-F-upper')!;
  const [lower, stairs, upper] = inputs.rooms as Record<string, number>[];
  const wider = { ...stairs, width: 8 };
  const more = 2 * (wider.width - stairs.width) * (stairs.height + stairs.length);
  expect(more).toBeGreaterThan(18);
  expect(more).toBeLessThan(32);
  const off = (changed: object) => REGISTRY.get('roomsGas')!.run({ ...inputs, ...changed }) - 273.15 - Number(expected.text);
  expect(off({})).toBeGreaterThan(8);
  expect(off({ rooms: [lower, wider, upper] })).toBeLessThan(8);
  expect(off({ radiantShare: 0.25 })).toBeLessThan(8);
});
