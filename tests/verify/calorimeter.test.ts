import { describe, expect, test } from 'vitest';
import { AVERAGED_OVER, burnerBehind, HOOD_LAG, hoodAsIs } from '../../src/verify/validation/calorimeter.js';

/** What a hood shows of a burner of 400 kW between two moments: late, and as means. */
function shown(time: number, lit: number, shut: number): number {
  const [low, high] = [time - AVERAGED_OVER / 2 - HOOD_LAG, time + AVERAGED_OVER / 2 - HOOD_LAG];
  return (400e3 * Math.max(0, Math.min(high, shut) - Math.max(low, lit))) / AVERAGED_OVER;
}

describe('the burner behind a calorimeter', () => {
  const readings = [60, 120, 180, 300, 600, 900].map((time) => ({ time, heat: shown(time, 52, 832) }));

  test('is found again: when it was lit, its level, when it was shut', () => {
    const burner = burnerBehind(readings);
    expect(readings[1].heat).toBeGreaterThan(0);
    expect(readings[1].heat).toBeLessThan(400e3);
    expect(burner.ignition).toBeCloseTo(52, 6);
    expect(burner.shut).toBeCloseTo(832, 6);
    expect(burner.at(51)).toBe(0);
    expect(burner.at(60)).toBeCloseTo(400e3, 3);
    expect(burner.at(700)).toBeCloseTo(400e3, 3);
    expect(burner.at(833)).toBe(0);
    expect(burner.breaks).toEqual([burner.ignition, burner.ignition + 5, burner.shut]);
  });

  test('outlasts a table that ends while it burns', () => {
    const burner = burnerBehind(readings.slice(0, -1));
    expect(burner.shut).toBe(Infinity);
    expect(burner.at(5000)).toBeCloseTo(400e3, 3);
    expect(burner.breaks).toHaveLength(2);
  });

  test('can be lit at another moment, to see what it does', () => {
    const burner = burnerBehind(readings, 0);
    expect(burner.at(30)).toBeCloseTo(400e3, 3);
  });

  test('follows a level that changes, a lag earlier than shown', () => {
    const burner = burnerBehind([
      { time: 120, heat: 100e3 },
      { time: 180, heat: 200e3 },
      { time: 300, heat: 240e3 },
    ]);
    expect(burner.at(240 - HOOD_LAG)).toBeCloseTo(220e3, 3);
  });

  test('as it stands it is straight lines from nothing, never below zero', () => {
    const release = hoodAsIs([{ time: 60, heat: -20e3 }, ...readings.slice(1)]);
    expect(release.at(30)).toBe(0);
    expect(release.at(60)).toBe(0);
    expect(release.at(240)).toBeCloseTo(400e3, 3);
    expect(release.at(90)).toBeCloseTo(readings[1].heat / 2, 6);
  });
});
