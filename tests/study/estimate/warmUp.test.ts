import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { interpolate } from '../../../src/solve/interpolate.js';
import type { WarmUp } from '../../../src/study/estimate/result.js';
import { exampleDesign } from '../../support/examples.js';
import { pitOf, type PitName } from '../../support/randomPits.js';
import { estimated, expectHonestFire, expectSameWithout, expectSoakedAfter, offAtFirst } from './warmUps.js';
import { inWords } from '../../../src/units/index.js';

describe('the first reading', () => {
  const overs: PitName[] = ['overTwoStacks', 'overWrapped', 'overOneStack'];

  // the whole step that went past was taken: 18.7, 8.4 and 5.5 K over the target
  it.each(overs)('%s reads the target when it is said to', (name) => {
    const off = offAtFirst(estimated(name));
    expect(off).toBeGreaterThanOrEqual(0);
    expect(off).toBeLessThan(0.1);
  });
});

describe('the curves', () => {
  it('go between steps the way that shorter steps go', () => {
    const design = exampleDesign('plain-24.yaml');
    // settles far below its target, in steps of up to an hour
    design.fire.heat = 4000;
    const { series } = estimate(design).warmUp!;
    const fine = estimate(design, { tolerance: 0.01 }).warmUp!.series;
    const off = (own: number[], finer: number[]) =>
      Math.max(...own.map((value, i) => Math.abs(value - interpolate(fine.time_s, finer, series.time_s[i]))));
    expect(off(series.thermometer_K, fine.thermometer_K)).toBeLessThan(0.2);
    expect(off(series.steel_K, fine.steel_K)).toBeLessThan(0.2);
  });
});

describe('soaked', () => {
  const outdoors = (design: Design) => design.site.air;
  /** mean of the chamber's steel above outdoors, plates of one thickness, at each moment [K] */
  const steelOf = ({ series }: WarmUp, design: Design) =>
    series.time_s.map((_, i) => {
      const own = series.stations.filter(({ name }) => name !== 'firebox');
      return own.reduce((sum, { steel_K }) => sum + steel_K[i], 0) / own.length - outdoors(design);
    });

  it('is when the steel holds nine tenths of what it holds once settled, and it never holds less after', () => {
    const design = exampleDesign('plain-24.yaml');
    const { warmUp, steady } = estimate(design, { until: 3 * 3600 });
    const own = steady!.stations.filter(({ name }) => name !== 'firebox');
    const settled = own.reduce((sum, { steel_K }) => sum + steel_K, 0) / own.length - outdoors(design);
    const shares = steelOf(warmUp!, design).map((steel) => steel / settled);
    const { time_s } = warmUp!.series;
    const at = time_s.indexOf(warmUp!.soaked_s!);
    // the stations stand for the shell but for its ends, and steel takes up a little more heat the hotter it is
    expect(shares[at]).toBeGreaterThan(0.88);
    expect(shares[at]).toBeLessThan(0.92);
    expect(Math.min(...shares.slice(at))).toBeGreaterThan(0.88);
    expect(shares[at - 1]).toBeLessThan(shares[at]);
    expect(time_s[time_s.length - 1]).toBeCloseTo(3 * 3600, 6);
    expect(Math.abs(shares[shares.length - 1] - 1)).toBeLessThan(0.01);
  });

  it.each<PitName>(['overTwoStacks', 'reverseUprightLoaded'])(
    '%s: is never before the first reading, and carries the wood burned to then',
    expectSoakedAfter,
  );
});

describe('the fire after the first reading', () => {
  // the hold fire of the first went to -2.2 kW
  it.each<PitName>(['reverseUprightLoaded', 'overTwoStacks'])(
    '%s: is never less than none nor more than the full fire, and takes no wood back',
    expectHonestFire,
  );

  it('rests while the pit holds its target without, and is taken up again', () => {
    const { warmUp, design } = estimated('reverseUprightLoaded');
    const { fire_W, time_s, thermometer_K } = warmUp!.series;
    const after = time_s.map((time, i) => ({ time, fire: fire_W[i], reading: thermometer_K[i] }));
    const resting = after.filter(({ time, fire }) => time > warmUp!.gauge_s! && fire === 0);
    expect(resting.length).toBeGreaterThan(3);
    expect(Math.min(...resting.map(({ reading }) => reading))).toBeGreaterThan(design.fire.target - 1);
    expect(fire_W[fire_W.length - 1]).toBeGreaterThan(0);
  });
});

describe('a pit with two steady states', () => {
  // the second is held at the target by a fire 1.3 times as large as that of the state which a solver finds first; the
  // first shares its gas out otherwise between its stacks, on nearly the same fire
  it.each<PitName>(['twoStacks'])('%s: gives the one that it comes to, and tells the other', (name) => {
    const design = pitOf(name);
    const long = estimate(design, { until: 40 * 3600 });
    const { fire_W } = long.warmUp!.series;
    expect(Math.abs(fire_W[fire_W.length - 1] / long.steady!.fire_W - 1)).toBeLessThan(5e-3);
    const told = long.warnings.filter(({ code }) => code === 'another-state');
    const held = told.find(({ fire }) => fire === 'hold fire')!;
    expect(Math.abs((held.value as number) / long.steady!.fire_W - 1)).toBeGreaterThan(1e-3);
    expect(inWords(held.message)).toMatch(/gas goes the other way through the|the gas at the|carries .* instead of/);
    expect(long.warnings.map(({ message }) => inWords(message)).join()).not.toContain('only just large enough');
  });

  it.each<PitName>(['overOneStack'])('%s: is the same without a warm-up, and where events begin', expectSameWithout);

  it('one way through has one state, and nothing is told', () => {
    for (const name of ['plain-24.yaml', 'offset-with-upright.yaml']) {
      const { warnings } = estimate(exampleDesign(name));
      expect(warnings.filter(({ code }) => code === 'another-state')).toEqual([]);
    }
  });
});
