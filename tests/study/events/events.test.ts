import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { coolDown } from '../../../src/study/events/coolDown.js';
import { disturb, BACK_WITHIN } from '../../../src/study/events/disturb.js';
import { doorwayOf, openDoor } from '../../../src/study/events/door.js';
import { holdPit, type HeldPit } from '../../../src/study/events/heldPit.js';
import { splitSwing } from '../../../src/study/events/swing.js';
import { variantOf } from '../../../src/study/events/variant.js';
import { turnWeather } from '../../../src/study/events/weather.js';
import { exampleDesign } from '../../support/examples.js';
import { expectClosure } from './closure.js';
import { swingUnder } from './cyclicFire.js';

const INCH = 0.0254;
const FAHRENHEIT = 1.8;

const plain = (change?: (d: Design) => void): Design => {
  const design = exampleDesign('plain-24.yaml');
  change?.(design);
  return design;
};
const held = (design: Design): HeldPit => holdPit(design)!;
/** The plain pit, held; what happens to it leaves it as it is. */
const steady = held(plain());
const ofPlate = (inches: number) =>
  plain((d) => {
    d.firebox.plate = inches * INCH;
    d.chamber!.plate = inches * INCH;
  });

describe('an open door', () => {
  it('of no time changes nothing', () => {
    const none = disturb(steady, openDoor(plain()), 0)!;
    expect(none.dip_K).toBeLessThan(1e-3);
    expect(none.rise_K).toBeLessThan(1e-3);
    expect(none.recovery_s).toBe(0);
    for (const reading of none.curve.thermometer_K) expect(reading).toBeCloseTo(plain().fire.target, 3);
  });

  it('of a moment changes next to nothing, and the longer it is the deeper the dip', () => {
    const dips = [0.1, 10, 30, 60, 300].map((lasts) => disturb(steady, openDoor(plain()), lasts)!.dip_K);
    expect(dips[0]).toBeLessThan(0.1);
    expect(dips).toEqual([...dips].sort((a, b) => a - b));
    expect(dips[4]).toBeLessThan(plain().fire.target - plain().site.air);
  });

  it('dips as a stem of its lag must between the gas that it finds and the steel', () => {
    // derived: with gas and walls still, the reading runs from where it was towards where it would settle, and stays
    // between
    const { curve, lowest_K } = disturb(steady, openDoor(plain()), 60)!;
    const opened = curve.gas_K[curve.time_s.lastIndexOf(0)];
    expect(opened).toBeLessThan(lowest_K);
    expect(lowest_K).toBeLessThan(plain().fire.target);
  });

  it('tells a recovery that the time steps hardly move', () => {
    const [usual, fine] = [0.2, 0.02].map((tolerance) => disturb(steady, openDoor(plain()), 60, tolerance)!);
    expect(Math.abs(usual.recovery_s! / fine.recovery_s! - 1)).toBeLessThan(0.01);
    expect(Math.abs(usual.dip_K - fine.dip_K)).toBeLessThan(0.1);
  });

  it('is back when the thermometer is within 5 °F, and not before', () => {
    const { curve, recovery_s, lasts_s } = disturb(steady, openDoor(plain()), 60)!;
    curve.time_s.forEach((t, i) => {
      const off = Math.abs(curve.thermometer_K[i] - plain().fire.target);
      if (t > lasts_s + recovery_s! + 1) expect(off).toBeLessThanOrEqual(BACK_WITHIN);
      if (t > lasts_s && t < lasts_s + recovery_s! - 1) expect(off).toBeGreaterThan(BACK_WITHIN);
    });
  });

  it('shows gas and walls the outdoors over its hole, and turns as much of the shell there outwards (derived)', () => {
    const { pit } = steady;
    const open = variantOf(pit, openDoor(plain())).model.network;
    const { width, height } = doorwayOf(plain());
    const hole = ({ windows }: typeof open) => windows.reduce((sum, { b, area }) => sum + (b < 0 ? area : 0), 0);
    expect(hole(open) - hole(pit.model.network)).toBeCloseTo(width * height, 10);
    const side = ({ faces }: typeof open, out: boolean) =>
      faces.reduce((sum, { zone, area }) => sum + (zone < 0 === out ? area : 0), 0);
    expect(side(open, true) - side(pit.model.network, true)).toBeCloseTo(width * height, 10);
    expect(side(pit.model.network, false) - side(open, false)).toBeCloseTo(width * height, 10);
  });

  it('turns all of a leaf outwards that is a plate of its own', () => {
    const design = exampleDesign('insulated-upright.yaml', (text) =>
      text.replace('lap: 1 in }', 'lap: 1 in, insulation: none }'),
    );
    const { pit } = held(design);
    const { faces, nodes } = variantOf(pit, openDoor(design)).model.network;
    const leaf = faces.filter(({ node }) => nodes[node].name.startsWith('upright door'));
    const inside = pit.model.network.faces.filter(
      ({ node, zone }) => zone >= 0 && pit.model.network.nodes[node].name.startsWith('upright door'),
    );
    expect(inside.length).toBeGreaterThan(0);
    expect(leaf.reduce((sum, { zone, area }) => sum + (zone < 0 ? 0 : area), 0)).toBe(0);
  });

  it('of the firebox lets a part of the fire shine out, and the more air in the colder the firebox', () => {
    const { pit, x, fire } = steady;
    const open = variantOf(pit, openDoor(plain(), 'firebox'));
    const { width, height } = doorwayOf(plain(), 'firebox');
    const { network, fireOutShare } = open.model;
    const vents = pit.model.network.fire.outArea;
    expect(network.fire.outArea - vents).toBeCloseTo(width * height, 10);
    expect(fireOutShare).toBeGreaterThan(pit.model.fireOutShare);
    const at = x.slice();
    expect(open.solver.solve(at, { mode: 'release', heat: fire }).converged).toBe(true);
    expect(at[open.model.gas]).toBeLessThan(x[pit.model.gas] - 10);
    open.balances.evaluate(at, { mode: 'release', heat: fire });
    const { radiatedLoss } = open.balances;
    const { radiantShare } = open.model;
    expect(radiatedLoss).toBeGreaterThan(fire * radiantShare * fireOutShare);
    expect(Math.abs(open.balances.totalLoss() / fire - 1)).toBeLessThan(1e-6);
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
    const none = disturb(steady, turnWeather({}), 600)!;
    expect(none.dip_K).toBeLessThan(0.01);
    expect(none.recovery_s).toBe(0);
  });

  it('cools more the harder it blows and the wetter it gets', () => {
    const gusts = [3, 6, 12].map((wind) => disturb(steady, turnWeather({ wind }), 600)!.dip_K);
    const showers = [0.2, 0.5, 1].map((rain) => disturb(steady, turnWeather({ rain }), 600)!.dip_K);
    for (const dips of [gusts, showers]) expect(dips).toEqual([...dips].sort((a, b) => a - b));
    expect(gusts[0]).toBeGreaterThan(0);
    expect(showers[0]).toBeGreaterThan(0);
  });
});

describe('the swing of a pit', () => {
  it('under a sine: the steel as bodies that store heat do, the thermometer more than the steel', () => {
    const period = 2700;
    const swings = [1 / 8, 1 / 4, 1 / 2].map((plate) => {
      const pit = held(ofPlate(plate));
      const swing = swingUnder(pit, period, (t) => pit.fire * (1 + 0.5 * Math.sin((2 * Math.PI * t) / period)));
      return { ...swing, perWatt: swing.steel_K / pit.fire };
    });
    swings.slice(1).forEach((thick, i) => {
      const thin = swings[i];
      // derived: a body swings by 1/sqrt(G^2 + (w C)^2) a watt, which with twice the C is less, but half at least; the
      // firebox stands before the chamber, so that each may halve it
      const less = thick.perWatt / thin.perWatt;
      expect(less).toBeGreaterThan(0.25);
      expect(less).toBeLessThan(1);
      // gas follows the fire at once, so that the reading owes only a part of its swing to the steel
      expect(thick.thermometer_K / thin.thermometer_K).toBeGreaterThan(less);
      expect(thick.thermometer_K / thin.thermometer_K).toBeLessThan(1);
      expect(thick.thermometer_K).toBeGreaterThan(thick.steel_K);
    });
  });

  it('repeats under splits by the clock: the cycle ends as it began', () => {
    const { curve, repeats } = splitSwing(held(plain((d) => void (d.fire.splits.every = 2700))))!;
    const last = curve.time_s.length - 1;
    expect(repeats).toBe(true);
    expect(curve.time_s[last]).toBeCloseTo(2700, 3);
    for (const key of ['thermometer_K', 'steel_K'] as const) {
      expect(Math.abs(curve[key][last] - curve[key][0])).toBeLessThan(0.6);
    }
  });

  it('weighs the splits: what burns by the clock in an hour holds the pit', () => {
    const pit = held(plain((d) => void (d.fire.splits.every = 2700)));
    const { wood_kg, period_s } = splitSwing(pit)!;
    expect((wood_kg! / period_s) * plain().wood.heat).toBeCloseTo(pit.fire, 6);
  });
});

describe('a cook who lays on splits by the thermometer', () => {
  const minded = (change?: (fire: Design['fire']) => void) => splitSwing(held(plain((d) => change?.(d.fire))))!;
  const usual = minded();

  it('keeps it about the target, with a split of a size that is done in 20 to 40 min', () => {
    const { target } = plain().fire;
    expect(usual.period_s).toBeGreaterThan(20 * 60);
    expect(usual.period_s).toBeLessThan(40 * 60);
    expect(usual.lowest_K).toBeLessThan(target - 15 / FAHRENHEIT);
    expect(usual.highest_K).toBeGreaterThan(target);
    // a fire that burns as much as it is fed
    const rate = (usual.wood_kg! * plain().wood.heat) / usual.period_s;
    const burned = usual.curve.fire_W.reduce(
      (sum, fire, i, all) =>
        sum + (i && 0.5 * (fire + all[i - 1]) * (usual.curve.time_s[i] - usual.curve.time_s[i - 1])),
      0,
    );
    const lasts = usual.curve.time_s[usual.curve.time_s.length - 1];
    expect(Math.abs(burned / lasts / rate - 1)).toBeLessThan(0.02);
  });

  it('loses no heat of what is laid on', () => {
    expect(usual.woodError).toBeLessThan(1e-9);
    expect(usual.energyError).toBeLessThan(1e-5);
  });

  it('swings less with smaller splits, more often', () => {
    const small = minded((fire) => void (fire.splits.mass = usual.wood_kg! / 2));
    expect(small.thermometer_K).toBeLessThan(0.7 * usual.thermometer_K);
    expect(small.period_s).toBeLessThan(0.75 * usual.period_s);
  });

  it('swings less in a throttled pit, whose flames burn what air they get', () => {
    const throttled = splitSwing(held(plain((d) => void (d.firebox.intakes[0].open = 0.12))))!;
    expect(throttled.thermometer_K).toBeLessThan(0.7 * usual.thermometer_K);
  });

  it('turns the intakes between his limits only', () => {
    const { open } = minded((fire) => void (fire.cook.intakes = [0.1, 0.6]));
    expect(open).toBeGreaterThanOrEqual(0.1);
    expect(open).toBeLessThanOrEqual(0.6);
  });
});

describe('cooling down', () => {
  it('ends with both of its times known, the reading half down at one of them', () => {
    const { curve, half_s } = coolDown(steady)!;
    const half = 0.5 * (plain().fire.target + plain().site.air);
    const after = curve.time_s.findIndex((t) => t >= half_s!);
    expect(curve.thermometer_K[after]).toBeLessThanOrEqual(half + 0.5);
    expect(curve.thermometer_K[after - 1]).toBeGreaterThanOrEqual(half - 0.5);
  });
});

describe('closure', () => it('heat and air add up through every event', () => expectClosure('plain-24.yaml')));
