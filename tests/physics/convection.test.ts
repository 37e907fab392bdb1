import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airKinematicViscosity } from '../../src/physics/air.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../../src/physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
  rayleigh,
} from '../../src/physics/freeConvection.js';
import { expectJoin, RUNS } from './joins.js';

const PR = 0.7;
const anyRa = fc.double({ min: -1e14, max: 1e14, noNaN: true });
const logRa = fc.double({ min: -8, max: 14, noNaN: true }).map((e) => 10 ** e);
const logRe = fc.double({ min: -6, max: 8, noNaN: true }).map((e) => 10 ** e);
const ratio = fc.double({ min: 0, max: 3, noNaN: true });

const FREE: [string, (Ra: number) => number][] = [
  ['horizontal cylinder', (Ra) => nusseltHorizontalCylinder(Ra, PR)],
  ['vertical plate', (Ra) => nusseltVerticalPlate(Ra, PR)],
  ['plate facing up', nusseltPlateUp],
  ['plate facing down', nusseltPlateDown],
];

const FORCED: [string, (Re: number) => number][] = [
  ['flat plate', (Re) => nusseltFlatPlate(Re, PR)],
  ['cylinder in cross flow', (Re) => nusseltCrossCylinder(Re, PR)],
  ['long pipe', (Re) => nusseltPipe(Re, PR, 0)],
  ['short pipe', (Re) => nusseltPipe(Re, PR, 0.8)],
];

describe.each(FREE)('free convection, %s', (_, nusselt) => {
  test('finite for every Rayleigh number, zero and negative ones too, and even in its sign', () => {
    fc.assert(
      fc.property(anyRa, (Ra) => {
        expect(Number.isFinite(nusselt(Ra))).toBe(true);
        expect(nusselt(-Ra)).toBe(nusselt(Ra));
      }),
      RUNS,
    );
    expect(Number.isFinite(nusselt(0))).toBe(true);
  });

  test('rises with Rayleigh number, never faster than its cube root with a conduction share', () => {
    fc.assert(
      fc.property(logRa, fc.double({ min: 1e-9, max: 1, noNaN: true }), (Ra, step) => {
        const grown = nusselt(Ra * (1 + step)) / nusselt(Ra);
        expect(grown).toBeGreaterThanOrEqual(1);
        expect(grown).toBeLessThanOrEqual((1 + step) ** (1 / 3) * (1 + 1e-12));
      }),
      RUNS,
    );
  });
});

test('the two branches of a plate facing up meet at Ra 4.7e6', () => {
  const crossing = (0.54 / 0.15) ** 12;
  expect(crossing / 4.738e6).toBeCloseTo(1, 3);
  expectJoin(nusseltPlateUp, crossing);
});

test('no temperature difference, no Rayleigh number; length by its cube; hotter and colder alike', () => {
  const Ra = (deltaT: number, length: number, pressure = 101325) =>
    rayleigh(deltaT, 350, length, airKinematicViscosity(350, pressure), PR);
  expect(Ra(0, 0.5)).toBe(0);
  expect(Ra(40, 1) / Ra(40, 0.5)).toBeCloseTo(8, 10);
  expect(Ra(-40, 0.5)).toBe(Ra(40, 0.5));
  expect(Ra(40, 0.5, 80000) / Ra(40, 0.5)).toBeCloseTo((80000 / 101325) ** 2, 10);
});

describe.each(FORCED)('forced convection, %s', (_, nusselt) => {
  test('finite for every Reynolds number and even in its sign', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e8, max: 1e8, noNaN: true }), (Re) => {
        expect(Number.isFinite(nusselt(Re))).toBe(true);
        expect(nusselt(-Re)).toBe(nusselt(Re));
      }),
      RUNS,
    );
    expect(Number.isFinite(nusselt(0))).toBe(true);
  });

  test('never falls as the flow grows', () => {
    fc.assert(
      fc.property(logRe, fc.double({ min: 1e-9, max: 1, noNaN: true }), (Re, step) => {
        expect(nusselt(Re * (1 + step))).toBeGreaterThanOrEqual(nusselt(Re) * (1 - 1e-12));
      }),
      RUNS,
    );
  });
});

test('the flat plate meets itself at transition', () => {
  expectJoin((Re) => nusseltFlatPlate(Re, PR), 5e5, 1e-8);
});

test('the pipe meets itself at 2300 and 4000, for any entrance', () => {
  fc.assert(
    fc.property(ratio, fc.double({ min: 0.5, max: 2, noNaN: true }), (entrance, Pr) => {
      for (const Re of [2300, 4000]) expectJoin((x) => nusseltPipe(x, Pr, entrance), Re, 1e-7);
    }),
    RUNS,
  );
});

test('a long pipe with no flow has the Graetz value, and an entrance only adds', () => {
  // published: classical solution, 3.66
  expect(nusseltPipe(0, PR, 0)).toBeCloseTo(3.66, 12);
  expect(nusseltPipe(1500, PR, 0)).toBeCloseTo(3.66, 12);
  expect(nusseltPipe(1500, PR, 0.5)).toBeGreaterThan(3.66);
  expect(nusseltPipe(2e4, PR, 0.5)).toBeGreaterThan(nusseltPipe(2e4, PR, 0));
});

test('the turbulent pipe lies between two other respected relations at Re 1e5', () => {
  // derived: Dittus-Boelter and Colburn at Pr 0.7; Gnielinski is known to run lower for gases
  const gnielinski = nusseltPipe(1e5, PR, 0);
  const dittusBoelter = 0.023 * 1e5 ** 0.8 * PR ** 0.4;
  expect(Math.abs(gnielinski / dittusBoelter - 1)).toBeLessThan(0.15);
});
