import { describe, expect, it } from 'vitest';
import { coldSmoke } from '../../../src/study/events/coldSmoke.js';
import { followCook } from '../../../src/study/events/cook.js';
import { exampleDesign } from '../../support/examples.js';
import { COOK, coldSmokeOnADayOf, expectBurntDown, upright, withCook } from './cooked.js';

describe('a cook', () => {
  it('is lit with more coals quicker, and on fewer splits', () => {
    const lit = (kilograms: number) => {
      const design = withCook(COOK);
      design.fire.coals = kilograms;
      return followCook(design)!;
    };
    const [few, many] = [lit(0.2), lit(1.5)];
    expect(many.reached_s).toBeLessThan(few.reached_s);
    expect(many.splitsToReach).toBeLessThan(few.splitsToReach);
  });

  it('cools and burns out at the same time whenever it is said that the last wood is on', () => {
    const ended = (minutes: number) => followCook(withCook(`\ncook: { tend: ${120 + minutes} min, dieDown: 6 h }\n`))!;
    const [early, late] = [0, 8].map(ended);
    expect(late.splits).toBe(early.splits);
    const at = (time: number | null, { lastWood_s }: typeof early) => time! + lastWood_s;
    for (const key of ['touch_s', 'out_s'] as const) {
      expect(Math.abs(at(early[key], early) - at(late[key], late)), key).toBeLessThan(60);
    }
    // coals outlast the heat of the steel
    expect(early.out_s!).toBeGreaterThan(early.touch_s!);
  });

  // looked at in whole steps, a pit whose doors are opened got its splits up to 3 min late, and fell 4 K lower
  it('comes to the same in finer steps', () => {
    const [usual, sharp] = [1, 0.25].map((tolerance) => followCook(exampleDesign('reverse-flow.yaml'), tolerance)!);
    expect(Math.abs(sharp.inBand_share - usual.inBand_share)).toBeLessThan(0.01);
    expect(Math.abs(sharp.lowest_K - usual.lowest_K)).toBeLessThan(0.5);
  });

  it.each([
    ['with much charcoal that glows long', { charcoal: 0.9, flame: 120, glow: 10_800 }],
    ['with none', { charcoal: 0, flame: 1200 }],
  ])('burns down after the last wood, and no heat is lost: %s', (_, splits) => expectBurntDown(splits));
});

describe('cold smoke', () => {
  it('names the hottest day, on which it has just nothing in hand, and its spread by the least fire', () => {
    const { hottestDay_K: day, open } = coldSmokeOnADayOf(283.15);
    expect(day.low!).toBeLessThan(day.likely!);
    expect(day.likely!).toBeLessThan(day.high!);
    const then = coldSmoke(upright((d) => void (d.site.air = d.site.surroundings = day.likely!)));
    expect(then.possible).toBe(false);
    expect(then.why).toBe('nothing-in-hand');
    expect(then.open).toBe(open);
    expect(then.inHand_K!).toBeLessThan(0.5);
  });

  it('warms with the day, and is impossible where the air is', () => {
    const readings = [270, 283, 296].map((air) => coldSmokeOnADayOf(air).stations[0].thermometer_K);
    expect(readings).toEqual([...readings].sort((a, b) => a - b));
    expect(coldSmokeOnADayOf(308)).toMatchObject({ possible: false, why: 'air-too-warm' });
    expect(coldSmokeOnADayOf(303)).toMatchObject({ possible: false, why: 'fire-too-warm' });
  });
});
