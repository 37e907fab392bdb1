import { readFileSync } from 'node:fs';
import { readCases } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';

const file = 'cases-rooms.csv';
const { cases } = readCases(readFileSync(new URL(`../../reference/${file}`, import.meta.url), 'utf8'), file, REGISTRY);
const { inputs, expected } = cases.find(({ id }) => id === 'corridors-F-upper')!;

/** The rooms of the case as they are given. */
export const rooms = inputs.rooms as Record<string, number>[];

/** How far the upper gas of corridors-F-upper is above the measured with so much of its inputs changed [K]. */
export const off = (changed: object): number =>
  REGISTRY.get('roomsGas')!.run({ ...inputs, ...changed }) - 273.15 - Number(expected.text);
