import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  stainlessConductivity,
  stainlessEnthalpy,
  stainlessSpecificHeat,
  steelConductivity,
  steelEnthalpy,
  steelSpecificHeat,
} from '../../src/physics/steel.js';
import { expectJoin, RUNS, slope } from './joins.js';

const celsius = (t: number) => t + 273.15;
const temperature = fc.double({ min: 150, max: 2000, noNaN: true });
const STEELS = [
  { name: 'carbon', enthalpy: steelEnthalpy, heat: steelSpecificHeat },
  { name: 'stainless', enthalpy: stainlessEnthalpy, heat: stainlessSpecificHeat },
];
const JOINS = [20, 600, 735, 900, 1200];

describe.each(STEELS)('$name steel', ({ enthalpy, heat }) => {
  test('enthalpy is continuous at every join, the peak at 735 °C among them', () => {
    for (const t of JOINS) expectJoin((T) => enthalpy(T) + 1e6, celsius(t), 1e-7);
  });

  test('the slope of enthalpy is the specific heat', () => {
    fc.assert(
      fc.property(temperature, (T) => {
        fc.pre(JOINS.every((t) => Math.abs(T - celsius(t)) > 0.05));
        const difference = slope(enthalpy, T, 1e-3);
        expect(Math.abs(difference / heat(T) - 1)).toBeLessThan(1e-4);
      }),
      RUNS,
    );
  });

  test('is zero at 20 °C and falls below it with the specific heat of 20 °C', () => {
    expect(enthalpy(celsius(20))).toBeCloseTo(0, 9);
    expect(enthalpy(celsius(-40))).toBeCloseTo(-60 * heat(celsius(20)), 6);
    expect(heat(celsius(-40))).toBe(heat(celsius(20)));
  });
});

test('heat to cross the peak from 700 to 780 °C agrees with a sum over fine steps', () => {
  // derived: EN 1993-1-2 specific heat summed by the midpoint rule in steps of 0.001 K
  let sum = 0;
  const step = 1e-3;
  for (let t = 700 + step / 2; t < 780; t += step) sum += steelSpecificHeat(celsius(t)) * step;
  expect(steelEnthalpy(celsius(780)) - steelEnthalpy(celsius(700))).toBeCloseTo(sum, 0);
});

test('the specific heat steps no more than the standard itself does', () => {
  // published: EN 1993-1-2:2005, 3.4.1.2 has 759.9 and 760.2 at 600 °C, 650.4 and 650 at 900 °C
  expectJoin(steelSpecificHeat, celsius(600), 5e-4);
  expectJoin(steelSpecificHeat, celsius(735), 1e-6);
  expectJoin(steelSpecificHeat, celsius(900), 7e-4);
});

test('conductivities are continuous and hold their ends', () => {
  for (const t of [20, 800, 801.8018018018018, 1200]) expectJoin(steelConductivity, celsius(t), 1e-9);
  for (const t of [20, 1200]) expectJoin(stainlessConductivity, celsius(t), 1e-9);
  // published: EN 1993-1-2:2005, 3.4.1.3: 27.3 from 800 °C; Annex C: 14.6 + 0.0127 t
  expect(steelConductivity(celsius(1000))).toBe(27.3);
  expect(stainlessConductivity(celsius(500))).toBeCloseTo(20.95, 10);
  expect(steelConductivity(celsius(-30))).toBe(steelConductivity(celsius(20)));
});
