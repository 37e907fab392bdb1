import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { nusseltPlateUp } from '../../src/physics/freeConvection.js';
import { stoichiometricAir } from '../../src/physics/wood.js';
import { readMisses } from '../../src/verify/misses.js';
import { REGISTRY } from '../../src/verify/registry.js';
import { BASE, BURNING_IN_LAYERS } from '../../src/verify/validation/assumptions.js';
import { corridorUnder, LAYERED } from '../../src/verify/validation/corridor.js';
import { layeredOpeningFlow } from '../../src/verify/validation/layers.js';
import { airByRule } from '../../src/verify/relations/combustion.js';

// Each reason in reference/misses.csv rests on numbers; here they are computed again, those of corridors-F-upper in the
// long tests.

const text = readFileSync(new URL('../../reference/misses.csv', import.meta.url), 'utf8');
const explained = [...readMisses(text, 'misses.csv', new Set()).misses.keys()].sort();
const check = (name: string, values: Record<string, number | string>) => REGISTRY.get(name)!.run(values);

test('every listed miss has its reason computed again', () => {
  expect(explained).toEqual(
    [
      'air-steam:tool',
      'cen-9.2-u',
      ...['300', '600', '865'].map((time) => `corridor-height-${time}`),
      'corridors-F-upper',
      'en15544-co2',
      'singh-1',
    ].sort(),
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

test("corridor-height: the measured layers let less out than the model does, and no stream's rise explains that", () => {
  // layer height, lower and upper temperature of nbs-100A-5 at 300, 600 and 865 s
  const measured = [
    [1.23, 25.0, 86.7],
    [1.19, 27.0, 95.1],
    [1.17, 27.5, 98.8],
  ];
  const door = { width: 0.8, height: 2, sill: 0, discharge: BASE.discharge, outdoors: 296.15 };
  const fire = { power: 110e3, outdoors: 296.15, times: [300, 600, 865] };
  const modelled = corridorUnder(fire, BASE, LAYERED);
  const layered = corridorUnder(fire, BURNING_IN_LAYERS, LAYERED);
  const alone = corridorUnder(fire, { ...BASE, entrainment: 0 }, LAYERED);
  measured.forEach(([join, lower, upper], n) => {
    const { outflow } = layeredOpeningFlow({ ...door, join, lower: lower + 273.15, upper: upper + 273.15 });
    expect(outflow).toBeGreaterThan(0.44);
    expect(outflow).toBeLessThan(0.54);
    expect(modelled[n].state.outflow).toBeGreaterThan(0.555);
    expect(modelled[n].state.outflow).toBeLessThan(0.6);
    expect(alone[n].farEnd.height - modelled[n].farEnd.height).toBeLessThan(0.025);
    expect(Math.abs(layered[n].farEnd.height - join)).toBeLessThan(0.055);
    expect(join - modelled[n].farEnd.height).toBeGreaterThan(0.165);
    expect(join - modelled[n].farEnd.height).toBeLessThan(0.225);
  });
});
