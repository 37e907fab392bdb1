import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gasEmissivity, meanBeamLength, sootEmissivity } from '../../src/physics/gasRadiation.js';
import { netGreyFlux, surfaceLoss } from '../../src/physics/radiation.js';
import { enclosureHeat } from '../../src/verify/relations/enclosure.js';
import { greyGasEmissivity } from '../../src/verify/relations/greyGases.js';
import { gasAbsorptivity, shieldedExchange, twoSurfaceExchange } from '../../src/verify/relations/radiation.js';
import {
  coefficientForTemperature,
  equilibriumTemperature,
  trueGasTemperature,
  type SurfaceSetting,
} from '../../src/verify/relations/surfaceBalance.js';
import { cornerViewFactor } from '../../src/verify/relations/viewFactor.js';
import { expectJoin, RUNS } from './joins.js';

const temperature = fc.double({ min: 150, max: 3000, noNaN: true });
const partial = fc.double({ min: 0, max: 0.3, noNaN: true });
const beam = fc.double({ min: 1e-3, max: 3, noNaN: true });
const grey = fc.double({ min: 0.05, max: 1, noNaN: true });

describe('emissivity of combustion gas', () => {
  test('lies from 0 to 1 for any gas, temperature and beam', () => {
    fc.assert(
      fc.property(temperature, partial, partial, beam, (T, c, w, L) => {
        const e = gasEmissivity(T, c, w, L);
        expect(e).toBeGreaterThanOrEqual(0);
        expect(e).toBeLessThan(1);
      }),
      RUNS,
    );
  });

  test('is nothing without radiating gas or path, and negative traces count as none', () => {
    expect(gasEmissivity(1000, 0, 0, 1)).toBe(0);
    expect(gasEmissivity(1000, 0.1, 0.1, 0)).toBe(0);
    expect(gasEmissivity(1000, -1e-9, -1e-9, 1)).toBe(0);
    expect(gasEmissivity(1000, 1e-9, 1e-9, 1)).toBeLessThan(1e-6);
  });

  test('grows with the path', () => {
    fc.assert(
      fc.property(temperature, partial, partial, beam, (T, c, w, L) => {
        expect(gasEmissivity(T, c, w, 2 * L)).toBeGreaterThanOrEqual(gasEmissivity(T, c, w, L));
      }),
      RUNS,
    );
  });

  test('is continuous where temperatures are held, curves change over and the overlap begins', () => {
    for (const T of [400, 700, 750, 2400]) expectJoin((x) => gasEmissivity(x, 0.05, 0.07, 0.5), T, 1e-8);
    // derived: 1 bar cm of both together
    expectJoin((w) => gasEmissivity(900, 0.01, w, 0.5), 1 / 50 / 1.01325 - 0.01, 1e-8);
  });

  test('in gas as thick as charts are drawn for, from 800 K on, agrees with a sum of grey gases within a tenth', () => {
    // derived: Smith, Shen & Friedman (1982), independent of Leckner's sums; charts themselves differ by 15-20 %
    for (const T of [800, 1000, 1200]) {
      for (const [c, w, L] of [
        [0.1, 0.1, 0.35],
        [0.08, 0.1, 0.5],
        [0.1, 0.15, 1],
      ]) {
        const other = greyGasEmissivity(T, c, w, L);
        expect(Math.abs(gasEmissivity(T, c, w, L) / other - 1), `${T} K, ${c}, ${w} atm, ${L} m`).toBeLessThan(0.1);
      }
    }
  });

  test('absorptivity equals emissivity when the surface is as hot as the gas', () => {
    expect(gasAbsorptivity(900, 900, 0.08, 0.1, 0.5)).toBeCloseTo(gasEmissivity(900, 0.08, 0.1, 0.5), 12);
    expect(gasAbsorptivity(900, 500, 0, 0, 0.5)).toBe(0);
  });

  test('soot adds to the gas and fills the view in the end', () => {
    expect(sootEmissivity(0.2, 0, 0.5)).toBeCloseTo(0.2, 12);
    expect(sootEmissivity(0.2, 0.5, 0.5)).toBeCloseTo(1 - 0.8 * Math.exp(-0.25), 12);
    expect(sootEmissivity(0.2, 1e3, 1)).toBeCloseTo(1, 12);
  });

  test('mean beam length of a sphere is 0.6 D', () => {
    // published: Hottel; 3.6 V/A of a sphere = 0.6 D
    expect(meanBeamLength(Math.PI / 6, Math.PI)).toBeCloseTo(0.6, 12);
  });
});

describe('exchange between surfaces', () => {
  test('vanishes between equal temperatures', () => {
    expect(netGreyFlux(0.8, 500, 500)).toBe(0);
    const plate = { area: 1, emissivity: 0.5, temperature: 600 };
    expect(twoSurfaceExchange(plate, plate, 1)).toBe(0);
  });

  test('of two surfaces is the same by the enclosure and by the closed form', () => {
    fc.assert(
      fc.property(grey, grey, temperature, temperature, (e1, e2, T1, T2) => {
        const closed = twoSurfaceExchange(
          { area: 1, emissivity: e1, temperature: T1 },
          { area: 2, emissivity: e2, temperature: T2 },
          1,
        );
        const [first, second] = enclosureHeat({
          areas: [1, 2],
          emissivities: [e1, e2],
          temperatures: [T1, T2],
          viewFactors: [
            [0, 1],
            [0.5, 0.5],
          ],
        });
        const scale = 1e-9 * (1 + Math.abs(closed)) + 1e-6;
        expect(Math.abs(first - closed)).toBeLessThan(scale);
        expect(Math.abs(first + second)).toBeLessThan(scale);
      }),
      RUNS,
    );
  });

  test('is halved by one shield as black as black plates', () => {
    const hot = { area: 1, emissivity: 1, temperature: 700 };
    const cold = { area: 1, emissivity: 1, temperature: 400 };
    const plain = shieldedExchange(hot, cold, []);
    expect(shieldedExchange(hot, cold, [{ area: 1, emissivities: [1, 1] }])).toBeCloseTo(plain / 2, 9);
  });

  test('an enclosure says which list or row of view factors is wrong', () => {
    const two = { areas: [1, 1], emissivities: [0.5, 0.5], temperatures: [400, 300] };
    expect(() =>
      enclosureHeat({
        ...two,
        viewFactors: [
          [0, 0.5],
          [1, 0],
        ],
      }),
    ).toThrow(/surface 1 must be 2 and add up to 1/);
    expect(() =>
      enclosureHeat({
        ...two,
        temperatures: [400],
        viewFactors: [
          [0, 1],
          [1, 0],
        ],
      }),
    ).toThrow(/as many/);
  });

  test('view factor of a plate close by is a quarter in the corner, and fades with distance', () => {
    expect(cornerViewFactor({ width: 1e4, height: 1e4, distance: 1 })).toBeCloseTo(0.25, 4);
    expect(cornerViewFactor({ width: 1, height: 1, distance: 1e4 })).toBeLessThan(1e-8);
  });
});

describe('balance of a surface', () => {
  const lost = (T: number, { coefficient, air, emissivity, surroundings }: SurfaceSetting) =>
    surfaceLoss(coefficient, T, air, emissivity, surroundings);
  const anySetting = fc.record({
    air: temperature,
    surroundings: temperature,
    coefficient: fc.double({ min: 0.5, max: 500, noNaN: true }),
    emissivity: grey,
  });

  test('loses just what it absorbs at its equilibrium', () => {
    fc.assert(
      fc.property(anySetting, fc.double({ min: 0, max: 5e4, noNaN: true }), (setting, absorbed) => {
        const T = equilibriumTemperature(setting, absorbed);
        const scale = 1 + absorbed + setting.coefficient * setting.air + 6e-8 * Math.max(T, setting.surroundings) ** 4;
        expect(Math.abs(lost(T, setting) - absorbed)).toBeLessThan(1e-9 * scale);
      }),
      RUNS,
    );
  });

  test('lies between air and surroundings when nothing else is absorbed', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const T = equilibriumTemperature(setting);
        expect(T).toBeGreaterThanOrEqual(Math.min(setting.air, setting.surroundings) - 1e-6);
        expect(T).toBeLessThanOrEqual(Math.max(setting.air, setting.surroundings) + 1e-6);
      }),
      RUNS,
    );
  });

  test('without convection is held by radiation alone', () => {
    const still = { air: 280, surroundings: 290, coefficient: 0, emissivity: 0.8 };
    expect(equilibriumTemperature(still)).toBeCloseTo(290, 6);
    expect(lost(equilibriumTemperature(still, 500), still)).toBeCloseTo(500, 6);
  });

  test('the two inversions take the way back', () => {
    const setting = { air: 300, surroundings: 320, coefficient: 12, emissivity: 0.7 };
    const T = equilibriumTemperature(setting, 900);
    expect(coefficientForTemperature(T, setting, 900)).toBeCloseTo(12, 6);
    const reading = equilibriumTemperature(setting);
    expect(trueGasTemperature(reading, setting)).toBeCloseTo(300, 6);
  });
});
