import { describe, expect, it } from 'vitest';
import { Bed } from '../../../src/study/events/bed.js';

const LAW = { flame: 1200, charcoal: 1 / 3, glow: 2400 };
const MEGA = 1e6;
/** The splits are all alight by then [s]. */
const CAUGHT = 180;

/** Burn on in short steps. @returns power at the end of each [W] */
function burnOn(bed: Bed, until: number, step = 5): number[] {
  const powers: number[] = [];
  for (let t = 0; t < until; t += step) {
    const gave = (step * (bed.power(0) + 4 * bed.power(step / 2) + bed.power(step))) / 6;
    bed.burn(step, gave);
    powers.push(bed.power(0));
  }
  return powers;
}

describe('a bed', () => {
  it('keeps account: what was laid on was released, or is left', () => {
    const bed = new Bed(LAW);
    bed.lightCoals(10 * MEGA);
    bed.lay(15 * MEGA);
    for (let i = 0; i < 20; i++) {
      burnOn(bed, 600);
      if (i % 3 === 0) bed.lay(9 * MEGA);
      const { wood, charcoal } = bed.left;
      expect((bed.released + wood + charcoal) / bed.laid).toBeCloseTo(1, 12);
      expect(wood).toBeGreaterThanOrEqual(0);
      expect(charcoal).toBeGreaterThanOrEqual(0);
    }
    burnOn(bed, 24 * 3600, 60);
    expect(bed.released / bed.laid).toBeCloseTo(1, 6);
  });

  it('flames of a split fall evenly to nothing, their mean time a third of the way', () => {
    // derived: a cylinder eaten evenly gives 2 (1 - t/T) / T of its heat, all of it by T
    const bed = new Bed({ ...LAW, charcoal: 0 });
    bed.lay(15 * MEGA);
    burnOn(bed, CAUGHT);
    const through = 3 * LAW.flame;
    for (const share of [0.25, 0.5, 0.75]) {
      const at = share * through - CAUGHT / 2;
      expect(bed.power(at) / ((2 * 15 * MEGA * (1 - share)) / through)).toBeCloseTo(1, 1);
    }
    burnOn(bed, through);
    expect(bed.left.wood).toBe(0);
  });

  it('radiates as the steady fire does over a cycle that repeats, coals more and flames less', () => {
    const bed = new Bed(LAW);
    const [steady, every, step] = [0.3, 1800, 5];
    let [radiated, gave] = [0, 0];
    for (let cycle = 0; cycle < 24; cycle++) {
      bed.lay(9 * MEGA);
      for (let t = 0; t < every; t += step) {
        const demand = bed.demand(step / 2, steady);
        if (demand.mode !== 'release') throw new Error('a bed holds nothing');
        expect(demand.radiant).toBeLessThanOrEqual(0.5);
        if (cycle === 23) {
          radiated += step * demand.radiant! * demand.heat;
          gave += step * demand.heat;
        }
        bed.burn(step, step * demand.heat);
      }
    }
    expect(radiated / gave).toBeCloseTo(steady, 3);
    burnOn(bed, 3 * LAW.flame + CAUGHT);
    expect(bed.demand(0, steady)).toMatchObject({ radiant: 0.5 });
    const fresh = new Bed(LAW);
    fresh.lay(9 * MEGA);
    expect(fresh.demand(60, steady)).toMatchObject({ radiant: expect.closeTo((0.3 - 0.5 / 3) / (2 / 3), 2) });
  });

  it('gives two thirds of a split as flame, the rest as coals that die away by their own time', () => {
    const bed = new Bed(LAW);
    bed.lay(15 * MEGA);
    burnOn(bed, 3 * LAW.flame + CAUGHT);
    expect(bed.left.wood).toBe(0);
    const { charcoal } = bed.left;
    burnOn(bed, LAW.glow);
    expect(bed.left.charcoal / charcoal).toBeCloseTo(Math.exp(-1), 3);
  });

  it('fed thinly and often tends to the steady fire that it is fed', () => {
    const bed = new Bed({ ...LAW, flame: 120 });
    const wanted = 6000;
    let last: number[] = [];
    for (let i = 0; i < 600; i++) {
      bed.lay(wanted * 30);
      last = burnOn(bed, 30);
    }
    for (const power of last) expect(Math.abs(power / wanted - 1)).toBeLessThan(0.01);
  });

  it('keeps all it has without air', () => {
    const bed = new Bed(LAW);
    bed.layCoals(5 * MEGA);
    bed.lay(15 * MEGA);
    Object.assign(bed, { flaming: 0, glowing: 0 });
    expect(burnOn(bed, 3600, 60).every((power) => power === 0)).toBe(true);
    expect(bed.left.wood + bed.left.charcoal).toBeCloseTo(20 * MEGA, 3);
  });

  it('never jumps, but where coals are thrown on', () => {
    const bed = new Bed(LAW);
    let before = 0;
    for (let i = 0; i < 40; i++) {
      if (i % 10 === 0) bed.lay(15 * MEGA);
      for (const power of burnOn(bed, 300, 1)) {
        expect(Math.abs(power - before)).toBeLessThan(100);
        expect(power).toBeGreaterThanOrEqual(0);
        before = power;
      }
    }
  });
});
