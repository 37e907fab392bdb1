import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { coolDown } from '../../../src/study/events/coolDown.js';
import { disturb } from '../../../src/study/events/disturb.js';
import { openDoor } from '../../../src/study/events/door.js';
import { holdPit, type HeldPit } from '../../../src/study/events/heldPit.js';
import { splitSwing } from '../../../src/study/events/swing.js';
import { readDesign } from '../../../src/design/read.js';
import { randomDesign } from '../../design/randomDesign.js';
import { exampleDesign, exampleNames } from '../../support/examples.js';
import { expectClosure } from './closure.js';
import { swingUnder } from './cyclicFire.js';

const INCH = 0.0254;

const plain = (change?: (d: Design) => void): Design => {
  const design = exampleDesign('plain-24.yaml');
  change?.(design);
  return design;
};
const held = (design: Design): HeldPit => holdPit(design)!;
const ofPlate = (inches: number) =>
  plain((d) => {
    d.firebox.plate = inches * INCH;
    d.chamber!.plate = inches * INCH;
  });

describe('the swing of a pit', () => {
  it('falls with the plate under a square wave too, the steel’s most', () => {
    const period = 2700;
    const swings = [1 / 8, 1 / 4, 1 / 2].map((plate) => {
      const pit = held(ofPlate(plate));
      return swingUnder(pit, period, (t) => (t < period / 2 ? 1.5 : 0.5) * pit.fire, [period / 2]);
    });
    for (let i = 1; i < swings.length; i++) {
      expect(swings[i].thermometer_K).toBeLessThan(swings[i - 1].thermometer_K);
      expect(swings[i].steel_K).toBeLessThan(0.7 * swings[i - 1].steel_K);
    }
  });

  it('is none under a steady fire, and tends to none under small thin splits laid on often', () => {
    const every = (seconds: number, flame: number) =>
      // the door would stand open for a third of every minute
      splitSwing(held(plain((d) => void Object.assign(d.fire.splits, { every: seconds, flame, door: 0 }))))!;
    expect(every(0, 900)).toMatchObject({ thermometer_K: 0, steel_K: 0 });
    expect(every(0, 900).mean_K).toBeCloseTo(plain().fire.target, 3);
    const swings = [60, 600, 2700].map((seconds) => every(seconds, 1200));
    expect(swings[0].thermometer_K).toBeLessThan(1);
    // as much wood as holds it, so that it reads the target
    expect(Math.abs(swings[0].mean_K - plain().fire.target)).toBeLessThan(1);
    const all = swings.map(({ thermometer_K }) => thermometer_K);
    expect(all).toEqual([...all].sort((a, b) => a - b));
  });

  it('says when flames smoulder for want of air', () => {
    const tight = plain((d) => {
      d.firebox.intakes[0].open = 0.05;
      // through a leaky chamber air would reach the fire by the throat
      d.chamber!.doorGap = 0;
    });
    expect(splitSwing(held(tight))!.limitedByAir).toBe(true);
    expect(splitSwing(held(plain()))!.limitedByAir).toBe(false);
  });
});

describe('a cook who lays on splits by the thermometer', () => {
  const minded = (change?: (fire: Design['fire']) => void) => splitSwing(held(plain((d) => change?.(d.fire))))!;
  const usual = minded();

  it('lets it fall further the later he is, and once more so where he forgets one', () => {
    const late = minded((fire) => void (fire.cook.late = 1200));
    expect(late.lowest_K).toBeLessThan(usual.lowest_K - 5);
    expect(usual.late_K!).toBeLessThan(usual.lowest_K - 5);
    const thick = splitSwing(held(ofPlate(1 / 2)))!;
    const thin = splitSwing(held(ofPlate(1 / 8)))!;
    expect(thick.late_K!).toBeGreaterThan(thin.late_K!);
    expect(thick.steel_K).toBeLessThan(0.5 * thin.steel_K);
  });

  it('opens the firebox door for each split, which lets the thermometer dip as that door does by itself', () => {
    const doorOf = (door: number) => minded(({ splits }) => void (splits.door = door));
    const [shut, usual, long] = [0, 20, 60].map(doorOf);
    const alone = disturb(held(plain()), openDoor(plain(), 'firebox'), 20)!;
    expect((shut.lowest_K - usual.lowest_K) / alone.dip_K).toBeCloseTo(1, 0);
    expect(long.lowest_K).toBeLessThan(usual.lowest_K - 1);
    // gas falls at once and is back once it is shut
    const { time_s: time, gas_K: gas } = usual.curve;
    const first = time.findIndex((t) => t >= 20);
    expect(gas[0] - Math.min(...gas.slice(0, first + 1))).toBeGreaterThan(10);
    expect(gas[first + 1]).toBeGreaterThan(gas[0]);
    const rate = ({ wood_kg, period_s }: typeof usual) => wood_kg! / period_s;
    expect(rate(long)).toBeGreaterThan(rate(shut));
    expect(usual.woodError).toBeLessThan(1e-9);
  });
});

describe('cooling down', () => {
  it('takes longer with thicker plate, and longest with insulation', () => {
    const times = [ofPlate(1 / 8), ofPlate(1 / 4), ofPlate(1 / 2)].map((design) => coolDown(held(design))!);
    expect(times[0].touch_s!).toBeLessThan(times[1].touch_s!);
    expect(times[1].touch_s!).toBeLessThan(times[2].touch_s!);
    const wrapped = ofPlate(1 / 4);
    for (const part of [wrapped.firebox, wrapped.chamber!]) {
      part.insulation = { material: 'ceramic fibre', thickness: 2 * INCH, skin: 0.0015 };
    }
    expect(coolDown(held(wrapped))!.half_s!).toBeGreaterThan(2 * times[1].half_s!);
  });
});

describe('a firebox door whose leaf is a plate of its own', () => {
  it('leaves none of its inside in the pit when it stands open, and the gas still settles', () => {
    const design = exampleDesign('tank-on-trailer.yaml');
    const opened = disturb(holdPit(design)!, openDoor(design, 'firebox'), 20);
    expect(opened!.dip_K).toBeGreaterThan(0);
    expect(opened!.energyError).toBeLessThan(1e-3);
  });
});

describe('closure', () => {
  const others = exampleNames.filter((name) => name !== 'plain-24.yaml');
  it.each(others)('%s: heat and air add up through every event', expectClosure);
});

describe('a bed whose air depends on what it burned', () => {
  it('comes to rest between choking and flaring up, in steps that are not those of a flutter', () => {
    const { design } = readDesign(JSON.stringify(randomDesign(21)), { fileName: 'random 21' });
    const { curve, cycles, energyError } = splitSwing(held(design!))!;
    expect(cycles).toBeGreaterThan(2);
    expect(energyError).toBeLessThan(1e-3);
    const { time_s, fire_W } = curve;
    const last = time_s.at(-1)!;
    // points lie at most a minute apart, at each step one: short steps would crowd them
    expect(last / time_s.length).toBeGreaterThan(40);
    // over a look it falls or rises, and is not thrown to and fro
    const flips = fire_W.filter(
      (fire, i) =>
        i > 1 &&
        (fire - fire_W[i - 1]) * (fire_W[i - 1] - fire_W[i - 2]) < 0 &&
        Math.abs(fire - fire_W[i - 1]) > 0.1 * fire,
    );
    expect(flips.length).toBeLessThan(0.1 * fire_W.length);
  });
});
