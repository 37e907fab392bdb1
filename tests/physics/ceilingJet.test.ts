import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jetCoefficient, jetShape, plumeExcess, plumeOrigin } from '../../src/physics/ceilingJet.js';
import { RUNS } from './joins.js';

const P = 101325;

test('the jet of no fire is none, and comes up without a jump', () => {
  expect(plumeExcess(0, 0.5, 0.5, 300, 293, P)).toBe(0);
  expect(jetCoefficient(0, 0.5, 300, P)).toBe(0);
  expect(plumeExcess(1e-3, 0.5, 0.5, 300, 293, P)).toBeLessThan(1e-3);
  expect(jetCoefficient(1e-3, 0.5, 300, P)).toBeLessThan(1e-3);
});

test('gas under a roof is never below what it rises in, and no hotter than 900 K above outdoors by more than a rounding', () => {
  const any = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(any(0, 1e6), any(0.05, 1), any(0.2, 3), any(280, 1500), (heat, across, height, gas) => {
      const rise = height - plumeOrigin(heat, across, 353 / gas, gas);
      const excess = plumeExcess(heat, rise, height, gas, 293, P);
      expect(excess).toBeGreaterThanOrEqual(0);
      expect(excess).toBeLessThan(Math.max(0, 1193 - gas) + 10.01);
    }),
    RUNS,
  );
});

test('a plume without a limit follows 25 Qc^(2/3) / z^(5/3) in kW and m, within 5 %', () => {
  // 2 kW at 1 m under a high roof: 39.7 K, far below the flame's 900 K
  expect(plumeExcess(2000, 1, 1.2, 293, 293, P) / (25 * 2 ** (2 / 3))).toBeCloseTo(1, 1);
});

test('along a roof that is small beside its height the jet is as hot as the axis, along a wide one colder', () => {
  expect(jetShape({ length: 0.2, width: 0.2, height: 1 }).excess).toBe(1);
  const [near, wide] = [1, 4].map((size) => jetShape({ length: size, width: size, height: 1 }));
  expect(wide.excess).toBeLessThan(near.excess);
  expect(wide.speed).toBeLessThan(near.speed);
});
