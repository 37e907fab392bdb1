import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dryAir } from '../../src/physics/gasMixture.js';
import {
  combustionYields,
  netHeatAsFired,
  stoichiometricAir,
  stoichiometricOxygen,
  type WoodComposition,
} from '../../src/physics/wood.js';
import { adiabaticFlameTemperature, flueGas, netFromGrossHeat } from '../../src/verify/relations/combustion.js';
import { RUNS } from './joins.js';

const wood: fc.Arbitrary<WoodComposition> = fc
  .tuple(
    fc.double({ min: 0.45, max: 0.55, noNaN: true }),
    fc.double({ min: 0.05, max: 0.07, noNaN: true }),
    fc.double({ min: 0, max: 0.01, noNaN: true }),
    fc.double({ min: 0, max: 0.02, noNaN: true }),
  )
  .map(([carbon, hydrogen, nitrogen, ash]) => ({
    carbon,
    hydrogen,
    nitrogen,
    ash,
    oxygen: 1 - carbon - hydrogen - nitrogen - ash,
  }));
const moisture = fc.double({ min: 0, max: 0.6, noNaN: true });
const generic = { carbon: 0.5, hydrogen: 0.06, oxygen: 0.44, nitrogen: 0, ash: 0 };

test('burning neither makes nor loses mass', () => {
  fc.assert(
    fc.property(wood, moisture, (c, M) => {
      const y = combustionYields(c, M);
      expect(y.CO2 + y.H2O + y.N2 + y.O2 + y.ash).toBeCloseTo(1, 12);
      expect(y.O2).toBeLessThan(0);
    }),
    RUNS,
  );
});

test('flue gas is wood plus air less ash, and with just the air needed holds no oxygen', () => {
  fc.assert(
    fc.property(wood, moisture, fc.double({ min: 1, max: 10, noNaN: true }), (c, M, excess) => {
      const air = excess * (1 - M) * stoichiometricAir(c);
      expect(flueGas({ composition: c, moisture: M, excessAir: excess }).total).toBeCloseTo(
        1 + air - (1 - M) * c.ash,
        10,
      );
      expect(flueGas({ composition: c, moisture: M, excessAir: 1 }).O2).toBeCloseTo(0, 12);
    }),
    RUNS,
  );
});

test('too little air is refused, not burnt', () => {
  expect(() => flueGas({ composition: generic, moisture: 0, excessAir: 0.9 })).toThrow(/0.9 must be 1 or more/);
});

test('carbon alone needs 32/12 of oxygen', () => {
  const carbon = { carbon: 1, hydrogen: 0, oxygen: 0, nitrogen: 0, ash: 0 };
  expect(stoichiometricOxygen(carbon)).toBeCloseTo(31.9988 / 12.0107, 10);
  expect(stoichiometricAir(carbon)).toBeCloseTo(31.9988 / 12.0107 / dryAir.O2, 10);
});

test('net heat falls in a straight line with moisture', () => {
  expect(netHeatAsFired(0)).toBe(19e6);
  expect(netHeatAsFired(0.5)).toBeCloseTo((19e6 - 2.44e6) / 2, 6);
  expect(netFromGrossHeat(20e6, 0)).toBe(20e6);
});

test('a flame cools with more air and more water, and warms with hotter air', () => {
  const flame = (M: number, excessAir: number, inletTemperature?: number) =>
    adiabaticFlameTemperature({
      composition: generic,
      moisture: M,
      excessAir,
      netHeat: netHeatAsFired(M),
      inletTemperature,
    });
  expect(flame(0.2, 2)).toBeLessThan(flame(0.2, 1.5));
  expect(flame(0.4, 2)).toBeLessThan(flame(0.2, 2));
  expect(flame(0.2, 2, 350)).toBeGreaterThan(flame(0.2, 2));
  // with endless air the gas stays as it came in
  expect(flame(0.2, 1e6)).toBeCloseTo(298.15, 1);
});
