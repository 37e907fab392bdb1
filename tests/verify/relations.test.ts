import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { biot } from '../../src/physics/lumped.js';
import { finEfficiency, finHeat, finParameter, infiniteFinHeat } from '../../src/verify/relations/fin.js';
import { annulusConductivity } from '../../src/physics/airGap.js';
import { roundLayerHeat } from '../../src/verify/relations/layers.js';
import { lumpedTime, lumpedTimeConstant } from '../../src/verify/relations/lumped.js';
import { RUNS } from '../physics/joins.js';

const rod = { perimeter: Math.PI * 0.01, section: (Math.PI * 0.01 ** 2) / 4, conductivity: 50, coefficient: 20 };

describe('fins', () => {
  test('a short fin gives its whole surface, a long one what an infinite one gives', () => {
    expect(finHeat(rod, 1e-4, 100)).toBeCloseTo(20 * rod.perimeter * 1e-4 * 100, 6);
    expect(finHeat(rod, 10, 100)).toBeCloseTo(infiniteFinHeat(rod, 100), 9);
    expect(finHeat(rod, 0.1, 0)).toBe(0);
  });

  test('efficiency falls from 1 with length and meets heat over surface', () => {
    expect(finEfficiency(finParameter(rod), 0)).toBe(1);
    const length = 0.2;
    const whole = rod.coefficient * rod.perimeter * length * 100;
    expect(finEfficiency(finParameter(rod), length)).toBeCloseTo(finHeat(rod, length, 100) / whole, 12);
  });
});

describe('layers', () => {
  test('a thin round layer conducts as a plane one', () => {
    const layer = { innerRadius: 10, outerRadius: 10.01, conductivity: 0.04 };
    // derived: k A dT/t of a plane one
    const plane = (0.04 * 2 * Math.PI * 10.005 * 50) / 0.01;
    expect(roundLayerHeat(layer, 50) / plane).toBeCloseTo(1, 6);
    expect(roundLayerHeat(layer, 0)).toBe(0);
  });

  test('air in a narrow gap conducts at least as still air', () => {
    const gas = { temperature: 350, kinematicViscosity: 20.9e-6, diffusivity: 29.9e-6, conductivity: 0.03 };
    expect(annulusConductivity({ innerRadius: 0.05, outerRadius: 0.051 }, gas, 10)).toBe(0.03);
    expect(annulusConductivity({ innerRadius: 0.05, outerRadius: 0.08 }, gas, 50)).toBeGreaterThan(0.03);
    expect(annulusConductivity({ innerRadius: 0.05, outerRadius: 0.08 }, gas, 0)).toBe(0.03);
  });
});

describe('lumped bodies', () => {
  test('time takes the exponential back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), (share) => {
        const change = { timeConstant: 600, start: 290, fluid: 450 };
        expect(lumpedTime(450 - 160 * Math.exp(-share), change)).toBeCloseTo(600 * share, 6);
      }),
      RUNS,
    );
  });

  test('a temperature that is never reached is refused with both limits named', () => {
    const change = { timeConstant: 600, start: 290, fluid: 450 };
    for (const T of [280, 450, 460]) expect(() => lumpedTime(T, change)).toThrow(/290 K and the fluid 450 K/);
  });

  test('a quarter-inch plate at 15 W/(m2 K) is thin', () => {
    // derived: h t/k = 15 x 0.00635/50; time constant rho c t/h
    expect(biot(15, 0.00635, 50)).toBeCloseTo(0.001905, 9);
    expect(
      lumpedTimeConstant({ density: 7850, specificHeat: 460, volumePerArea: 0.00635, coefficient: 15 }),
    ).toBeCloseTo(1528.7, 0);
  });
});
