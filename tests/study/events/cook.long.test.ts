import { describe, expect, it } from 'vitest';
import { coldSmokeOnADayOf, expectBurntDown } from './cooked.js';

describe('a cook', () => {
  it.each([
    ['with much charcoal that glows long', { charcoal: 0.9, flame: 120, glow: 10_800 }],
    ['with none', { charcoal: 0, flame: 1200 }],
  ])('burns down after the last wood, and no heat is lost: %s', (_, splits) => expectBurntDown(splits));
});

describe('cold smoke', () => {
  it('warms with the day, and is impossible where the air is', () => {
    const readings = [270, 283, 296].map((air) => coldSmokeOnADayOf(air).stations[0].thermometer_K);
    expect(readings).toEqual([...readings].sort((a, b) => a - b));
    expect(coldSmokeOnADayOf(308)).toMatchObject({ possible: false, why: 'air-too-warm' });
    expect(coldSmokeOnADayOf(303)).toMatchObject({ possible: false, why: 'fire-too-warm' });
  });
});
