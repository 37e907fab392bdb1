import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { MIXED } from '../../../src/network/build.js';
import { coolDown } from '../../../src/study/events/coolDown.js';
import { disturb, BACK_WITHIN } from '../../../src/study/events/disturb.js';
import { doorwayOf, openDoor } from '../../../src/study/events/door.js';
import { holdPit, type HeldPit } from '../../../src/study/events/heldPit.js';
import { splitFire } from '../../../src/physics/splits.js';
import { splitSwing, swingUnder } from '../../../src/study/events/swing.js';
import { turnWeather } from '../../../src/study/events/weather.js';
import { exampleDesign, exampleNames } from '../../support/examples.js';

const INCH = 0.0254;
const FAHRENHEIT = 1.8;

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

describe('an open door', () => {
  it('of no time changes nothing', () => {
    const none = disturb(held(plain()), openDoor(plain()), 0)!;
    expect(none.dip_K).toBeLessThan(1e-3);
    expect(none.rise_K).toBeLessThan(1e-3);
    expect(none.recovery_s).toBe(0);
    for (const reading of none.curve.thermometer_K) expect(reading).toBeCloseTo(plain().fire.target, 3);
  });

  it('of a moment changes next to nothing, and the longer it is the deeper the dip', () => {
    const pit = held(plain());
    const dips = [0.1, 10, 30, 60, 300].map((lasts) => disturb(pit, openDoor(plain()), lasts)!.dip_K);
    expect(dips[0]).toBeLessThan(0.1);
    expect(dips).toEqual([...dips].sort((a, b) => a - b));
    expect(dips[4]).toBeLessThan(plain().fire.target - plain().site.air);
  });

  it('dips as a stem of its lag must between the gas that it finds and the steel', () => {
    // derived: with gas and walls still, the reading runs from where it was towards where it would settle, and stays between
    const { curve, lowest_K } = disturb(held(plain()), openDoor(plain()), 60)!;
    const opened = curve.gas_K[curve.time_s.lastIndexOf(0)];
    expect(opened).toBeLessThan(lowest_K);
    expect(lowest_K).toBeLessThan(plain().fire.target);
  });

  it('tells a recovery that the time steps hardly move', () => {
    const pit = held(plain());
    const [usual, fine] = [0.2, 0.02].map((tolerance) => disturb(pit, openDoor(plain()), 60, tolerance)!);
    expect(Math.abs(usual.recovery_s! / fine.recovery_s! - 1)).toBeLessThan(0.01);
    expect(Math.abs(usual.dip_K - fine.dip_K)).toBeLessThan(0.1);
  });

  it('is back when the thermometer is within 5 °F, and not before', () => {
    const { curve, recovery_s, lasts_s } = disturb(held(plain()), openDoor(plain()), 60)!;
    curve.time_s.forEach((t, i) => {
      const off = Math.abs(curve.thermometer_K[i] - plain().fire.target);
      if (t > lasts_s + recovery_s! + 1) expect(off).toBeLessThanOrEqual(BACK_WITHIN);
      if (t > lasts_s && t < lasts_s + recovery_s! - 1) expect(off).toBeGreaterThan(BACK_WITHIN);
    });
  });

  it('takes the door of the gauge’s part, as given or of a usual size', () => {
    expect(doorwayOf(plain())).toMatchObject({ part: 'chamber', assumed: true, centre: plain().chamber!.centre });
    const given = exampleDesign('boxed-22.yaml');
    const { width, height } = given.chamber!.door!;
    const r = given.chamber!.width / 2;
    const doorway = doorwayOf(given);
    expect(doorway).toMatchObject({ part: 'chamber', assumed: false, width });
    // derived: a chord is shorter than its arc, and as long as twice the radius at most
    expect(doorway.height).toBeLessThan(height);
    expect(doorway.height).toBeCloseTo(2 * r * Math.sin(height / (2 * r)), 12);
    expect(doorwayOf(exampleDesign('insulated-upright.yaml'))).toMatchObject({ part: 'upright', assumed: false });
  });
});

describe('weather', () => {
  it('that stays as it is changes nothing', () => {
    const none = disturb(held(plain()), turnWeather({}), 600)!;
    expect(none.dip_K).toBeLessThan(0.01);
    expect(none.recovery_s).toBe(0);
  });

  it('cools more the harder it blows and the wetter it gets', () => {
    const pit = held(plain());
    const gusts = [3, 6, 12].map((wind) => disturb(pit, turnWeather({ wind }), 600)!.dip_K);
    const showers = [0.2, 0.5, 1].map((rain) => disturb(pit, turnWeather({ rain }), 600)!.dip_K);
    for (const dips of [gusts, showers]) expect(dips).toEqual([...dips].sort((a, b) => a - b));
    expect(gusts[0]).toBeGreaterThan(0);
    expect(showers[0]).toBeGreaterThan(0);
  });
});

describe('the fire of splits', () => {
  const splits = fc.record({
    every: fc.double({ min: 60, max: 6 * 3600, noNaN: true }),
    flame: fc.double({ min: 60, max: 7200, noNaN: true }),
    charcoal: fc.double({ min: 0, max: 0.9, noNaN: true }),
    glow: fc.double({ min: 60, max: 7200, noNaN: true }),
  });

  it('has the mean that it is given', () => {
    fc.assert(
      fc.property(splits, (each) => {
        const steps = 20_000;
        let sum = 0;
        for (let i = 0; i < steps; i++) sum += splitFire(each, 1000, ((i + 0.5) / steps) * each.every);
        expect(Math.abs(sum / steps / 1000 - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 50, seed: 1 },
    );
  });

  it('is the sum of all splits laid on before, one by one', () => {
    // derived: the gamma law of shape 2, summed over 400 splits
    const each = { every: 2700, flame: 900, charcoal: 0.3, glow: 2700 };
    const gamma = (t: number, a: number) => (t / (a * a)) * Math.exp(-t / a);
    for (const t of [0, 300, 1500, 2699]) {
      let sum = 0;
      for (let k = 0; k < 400; k++) sum += 0.7 * gamma(t + k * 2700, 450) + 0.3 * gamma(t + k * 2700, 1350);
      expect(splitFire(each, 1000, t)).toBeCloseTo(1000 * 2700 * sum, 6);
    }
  });

  it('of no interval is the steady fire', () => {
    expect(splitFire({ every: 0, flame: 900, charcoal: 0.3, glow: 2700 }, 1234, 0)).toBe(1234);
  });
});

describe('the swing of a pit', () => {
  // derived, independent coding of the same model, gas mixed over its height: a fire that goes 50 % up and down as a sine of 45 min moves the
  // thermometer 95, 78 and 71 °F and the steel 37, 20 and 10 °F in 1/8, 1/4 and 1/2 in plate
  it.each([
    [1 / 8, 95, 37],
    [1 / 4, 78, 20],
    [1 / 2, 71, 10],
  ])('%f in plate under a sine: as an independent coding has it', (plate, thermometer, steel) => {
    const pit = holdPit(ofPlate(plate), MIXED)!;
    const period = 2700;
    const heatAt = (t: number) => pit.fire * (1 + 0.5 * Math.sin((2 * Math.PI * t) / period));
    const swing = swingUnder(pit, { period, heatAt })!;
    expect(Math.abs((swing.thermometer_K * FAHRENHEIT) / thermometer - 1)).toBeLessThan(0.15);
    expect(Math.abs((swing.steel_K * FAHRENHEIT) / steel - 1)).toBeLessThan(0.25);
  });

  it('falls with the plate under a square wave too, the steel’s most', () => {
    const period = 2700;
    const swings = [1 / 8, 1 / 4, 1 / 2].map((plate) => {
      const pit = held(ofPlate(plate));
      return swingUnder(pit, {
        period,
        heatAt: (t) => (t < period / 2 ? 1.5 : 0.5) * pit.fire,
        breaks: [period / 2],
      })!;
    });
    for (let i = 1; i < swings.length; i++) {
      expect(swings[i].thermometer_K).toBeLessThan(swings[i - 1].thermometer_K);
      expect(swings[i].steel_K).toBeLessThan(0.7 * swings[i - 1].steel_K);
    }
  });

  it('is none under splits of no interval, and tends to none', () => {
    const every = (seconds: number) => splitSwing(held(plain((d) => void (d.fire.splits.every = seconds))))!;
    expect(every(0)).toMatchObject({ thermometer_K: 0, steel_K: 0 });
    expect(every(0).mean_K).toBeCloseTo(plain().fire.target, 3);
    const swings = [1, 60, 600, 2700].map((seconds) => every(seconds).thermometer_K);
    expect(swings[0]).toBeLessThan(0.01);
    expect(swings).toEqual([...swings].sort((a, b) => a - b));
  });

  it('repeats: the cycle ends as it began', () => {
    const { curve } = splitSwing(held(plain()))!;
    const last = curve.time_s.length - 1;
    expect(curve.time_s[last]).toBeCloseTo(2700, 3);
    for (const key of ['thermometer_K', 'steel_K'] as const) {
      expect(Math.abs(curve[key][last] - curve[key][0])).toBeLessThan(0.3);
    }
  });

  it('weighs the splits: what burns in an hour holds the pit', () => {
    const pit = held(plain());
    const { wood_kg, period_s } = splitSwing(pit)!;
    expect((wood_kg! / period_s) * plain().wood.heat).toBeCloseTo(pit.fire, 6);
  });

  it('says when air holds down the flames of a fresh split', () => {
    const tight = plain((d) => {
      d.firebox.intakes[0].open = 0.06;
      // through a leaky chamber air would reach the fire by the throat
      d.chamber!.doorGap = 0;
    });
    expect(splitSwing(held(tight))!.limitedByAir).toBe(true);
    expect(splitSwing(held(plain()))!.limitedByAir).toBe(false);
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

  it('ends with both of its times known, the reading half down at one of them', () => {
    const { curve, half_s } = coolDown(held(plain()))!;
    const half = 0.5 * (plain().fire.target + plain().site.air);
    const after = curve.time_s.findIndex((t) => t >= half_s!);
    expect(curve.thermometer_K[after]).toBeLessThanOrEqual(half + 0.5);
    expect(curve.thermometer_K[after - 1]).toBeGreaterThanOrEqual(half - 0.5);
  });
});

describe('closure', () => {
  it.each(exampleNames)('%s: heat and air add up through every event', (name) => {
    const design = exampleDesign(name);
    const pit = held(design);
    const all = [
      disturb(pit, openDoor(design), 60),
      disturb(pit, turnWeather({ wind: 9 }), 600),
      disturb(pit, turnWeather({ rain: 1 }), 1200),
      splitSwing(pit),
      coolDown(pit),
    ];
    for (const each of all) {
      expect(each).not.toBeNull();
      expect(each!.energyError).toBeLessThan(1e-3);
      expect(each!.massError_kg_per_s).toBeLessThan(1e-9);
    }
  });
});
