/** Whole-model checks: the measured corridor behind its burn room, as a chamber behind its firebox. */
import { choice, defineCheck, optional, quantity, type Check, type Values } from '../check.js';
import { BASE } from '../validation/assumptions.js';
import { corridorUnder, LAYERED, type CorridorMoment } from '../validation/corridor.js';

const corridor = {
  power: quantity('power', 'of the methane burner, from time 0 on'),
  time: quantity('time', 'from everything at outdoor temperature'),
  outdoors: quantity('temperature', 'air and surroundings'),
  cells: optional('number', "cells along the corridor; as a pit's chamber when left out"),
  levels: optional('number', "level slices of its gas, 1 for mixed; as a pit's chamber when left out"),
  burnRoomLevels: optional('number', "level slices of the burn room's gas; 1, mixed as a firebox is, when left out"),
} as const;

function at(v: Values<typeof corridor>): CorridorMoment {
  const { cells = LAYERED.cells, levels = LAYERED.levels, burnRoomLevels = 1 } = v;
  for (const [name, count] of Object.entries({ cells, levels, burnRoomLevels })) {
    if (!Number.isInteger(count) || count < 1 || count > 50) {
      throw new RangeError(`${name} must be a whole number from 1 to 50, not ${count}`);
    }
  }
  const [moment] = corridorUnder(
    { power: v.power, outdoors: v.outdoors, times: [v.time] },
    { ...BASE, levels: burnRoomLevels },
    { cells, levels },
  );
  return moment;
}

export const corridorChecks: Record<string, Check> = {
  corridorLayerHeight: defineCheck(
    'height of the join between hot and cold gas at the far end of the corridor of NBSIR 88-3752, test 100A',
    corridor,
    'length',
    (v) => at(v).farEnd.height,
  ),
  corridorRise: defineCheck(
    'rise of the gas above outdoors at the far end of the same corridor',
    { ...corridor, layer: choice(['upper', 'lower'], 'above or below the join') },
    'temperatureDifference',
    (v) => at(v).farEnd[v.layer],
  ),
};
