import { describe, expect, test } from 'vitest';
import { steelEnthalpy, steelSpecificHeat } from '../../src/physics/steel.js';
import { heatBody, type Body } from '../../src/verify/heatBody.js';

const plain: Body = { content: (T) => 2e4 * T, capacity: () => 2e4, uptake: (_, T) => 20 * (450 - T) };

describe('a body stepped by the integrator of the pit', () => {
  test('follows the exact exponential', () => {
    // derived: 450 - 150 exp(-t/1000)
    for (const time of [10, 500, 5000]) {
      const exact = 450 - 150 * Math.exp(-time / 1000);
      expect(heatBody(plain, { time: 0, temperature: 300 }, { time }).temperature).toBeCloseTo(exact, 2);
    }
  });

  test('passes a temperature when the exact answer does', () => {
    const { time } = heatBody(plain, { time: 0, temperature: 300 }, { time: 1e5, temperature: 400 });
    expect(time).toBeCloseTo(1000 * Math.log(150 / 50), 1);
    const cooled = heatBody(plain, { time: 0, temperature: 600 }, { time: 1e5, temperature: 500 });
    expect(cooled.time).toBeCloseTo(1000 * Math.log(150 / 50), 1);
  });

  test('takes up through the steel peak just the heat that it was given', () => {
    const steel: Body = { content: steelEnthalpy, capacity: steelSpecificHeat, uptake: () => 1000 };
    const from = { time: 0, temperature: 950 };
    const end = heatBody(steel, from, { time: 300 });
    expect(steelEnthalpy(end.temperature) - steelEnthalpy(950)).toBeCloseTo(3e5, 1);
  });

  test('says what it came to when a temperature is never passed', () => {
    expect(() => heatBody(plain, { time: 0, temperature: 300 }, { time: 1e5, temperature: 460 })).toThrow(
      /460 K is not reached within 100000 s; the body comes to 4(49\.9|50)/,
    );
  });
});
