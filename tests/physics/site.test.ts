import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  geopotentialAltitude,
  humidityRatio,
  moistureFraction,
  pressureAtGeopotential,
  saturationPressure,
  standardPressure,
} from '../../src/physics/atmosphere.js';
import { BURN_MARKS, burnThreshold, longestContact } from '../../src/physics/burn.js';
import { wetBulb } from '../../src/verify/relations/atmosphere.js';
import { standardFurnace } from '../../src/verify/relations/furnaceCurve.js';
import { windProfile } from '../../src/physics/windProfile.js';
import { cloudFactor, swinbankSky } from '../../src/verify/relations/sky.js';
import { expectJoin, RUNS } from './joins.js';

describe('outdoor air', () => {
  test('pressure is one atmosphere at the sea and falls with altitude', () => {
    expect(standardPressure(0)).toBe(101325);
    fc.assert(
      fc.property(fc.double({ min: -400, max: 5000, noNaN: true }), (z) => {
        expect(standardPressure(z + 1)).toBeLessThan(standardPressure(z));
        expect(Math.abs(geopotentialAltitude(z) - z)).toBeLessThan(4);
      }),
      RUNS,
    );
  });

  test('pressure stays finite where the formula ends', () => {
    expect(pressureAtGeopotential(1e6)).toBe(0);
  });

  test('saturation over ice and water meet at 0 °C within 0.02 %', () => {
    expectJoin(saturationPressure, 273.15, 2e-4);
  });

  test('saturated air is at its wet bulb, drier air above it', () => {
    const air = { temperature: 300, pressure: 101325 };
    expect(wetBulb({ ...air, relativeHumidity: 1 })).toBeCloseTo(300, 2);
    let last = 300.01;
    for (const relativeHumidity of [0.8, 0.6, 0.4, 0.2]) {
      const wet = wetBulb({ ...air, relativeHumidity });
      expect(wet).toBeLessThan(last);
      last = wet;
    }
  });

  test('dry air holds no water, and more vapour than air is refused', () => {
    const air = { temperature: 300, relativeHumidity: 0, pressure: 101325 };
    expect(humidityRatio(air)).toBe(0);
    expect(moistureFraction(0)).toBe(0);
    expect(() => humidityRatio({ temperature: 380, relativeHumidity: 1, pressure: 101325 })).toThrow(/must stay below/);
  });
});

describe('sky and wind', () => {
  test('a clear sky is colder than air, cloud warms it', () => {
    for (const T of [260, 280, 300]) expect(swinbankSky(T)).toBeLessThan(T);
    expect(cloudFactor(0)).toBe(1);
    expect(cloudFactor(10)).toBeGreaterThan(cloudFactor(5));
  });

  test('the station itself measures its own wind', () => {
    expect(windProfile(10, 'open')).toBeCloseTo(1, 12);
    expect(windProfile(2, 'city')).toBeLessThan(windProfile(2, 'open'));
  });
});

describe('contact burns', () => {
  test('the threshold never rises with contact and passes through the marks', () => {
    for (const { contact, low } of BURN_MARKS) expect(burnThreshold(contact)).toBeCloseTo(low, 9);
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (log, more) => {
          expect(burnThreshold(10 ** (log + more))).toBeLessThanOrEqual(burnThreshold(10 ** log) + 1e-9);
        },
      ),
      RUNS,
    );
  });

  test('longest contact takes the way back, with no safe touch above and no limit below', () => {
    for (const contact of [2, 10, 45, 600, 7200]) {
      expect(longestContact(burnThreshold(contact)) / contact).toBeCloseTo(1, 9);
    }
    expect(longestContact(350)).toBe(0);
    expect(longestContact(310)).toBe(Infinity);
  });
});

test('the furnace starts at 20 °C and only rises', () => {
  expect(standardFurnace(0)).toBeCloseTo(293.15, 12);
  expect(standardFurnace(-5)).toBe(standardFurnace(0));
  expect(standardFurnace(61)).toBeGreaterThan(standardFurnace(60));
});
