import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { nusseltPlateUp } from '../../src/physics/freeConvection.js';
import { stoichiometricAir } from '../../src/physics/wood.js';
import { readMisses } from '../../src/verify/misses.js';
import { REGISTRY } from '../../src/verify/registry.js';
import { airByRule } from '../../src/verify/relations/combustion.js';

// Each reason in reference/misses.csv rests on numbers; here they are computed again.

const text = readFileSync(new URL('../../reference/misses.csv', import.meta.url), 'utf8');
const explained = [...readMisses(text, 'misses.csv', new Set()).misses.keys()].sort();
const check = (name: string, values: Record<string, number | string>) => REGISTRY.get(name)!.run(values);

test('every listed miss has its reason computed again here', () => {
  expect(explained).toEqual(
    ['air-steam:tool', 'cen-9.2-u', 'en15544-co2', 'singh-1'].sort(),
  );
});

test('singh-1: the ratio turned over gives the printed temperature, the relation as written does not', () => {
  const gasTemperature = (ratio: number) => ratio / (1 / 300 - 12 / (353 * 30));
  expect(gasTemperature(20 / 21)).toBeCloseTo(432.9, 0);
  expect(gasTemperature(21 / 20)).toBeCloseTo(477.2, 0);
});

test('cen-9.2-u: the lower branch gives the printed heat, and Ra lies past its range', () => {
  const example = { relation: 'plateUp', surface: 363.15, air: 303.15, length: 0.15 };
  const Ra = check('freeRayleigh', example);
  expect(Ra / 1.16e7).toBeCloseTo(1, 2);
  expect(Ra).toBeGreaterThan(1e7);
  const heat = check('freeHeat', { ...example, area: 0.36 });
  expect((heat * 0.54 * Ra ** 0.25) / nusseltPlateUp(Ra)).toBeCloseTo(131.2, 0);
});

test('en15544-co2: another usual analysis is inside the tolerance', () => {
  const share = (oxygen: number, excessAir: number) =>
    check('flueFraction', { carbon: 0.5, hydrogen: 0.06, oxygen, moistureDryBasis: 0, excessAir, of: 'CO2', basis: 'dry' });
  expect(share(0.44, 2.95)).toBeCloseTo(0.0693, 4);
  expect(Math.abs(share(0.44, 2.95) / 0.0705 - 1)).toBeLessThan(0.02);
  expect(share(0.435, 1)).toBeCloseTo(0.2045, 4);
  expect(0.0705 * 2.95).toBeCloseTo(0.208, 3);
});

test('air-steam:tool: the rule is 0.4 % above the balance of the elements', () => {
  const wood = { carbon: 0.5, hydrogen: 0.06, oxygen: 0.435, nitrogen: 0, ash: 0.005 };
  expect(airByRule(wood)).toBeCloseTo(5.954, 3);
  expect(airByRule(wood) / stoichiometricAir(wood) - 1).toBeCloseTo(0.004, 3);
});
