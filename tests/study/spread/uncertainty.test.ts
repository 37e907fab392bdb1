import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { cooked } from '../../../src/study/events/cooked.js';
import { rankRegression, ranks } from '../../../src/study/spread/rankRegression.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { latinHypercube, quantile, triangularQuantile } from '../../../src/study/spread/sampling.js';
import { causesOf, planSpread, runSpreadCases, summariseSpread } from '../../../src/study/spread/uncertainty.js';
import { movedDesign, pathsOf, unknownsOf } from '../../../src/study/spread/unknowns.js';
import { designOf, PLAIN, UPRIGHT } from '../../design/designFiles.js';
import { expectSpreadInOrder } from './spreadInOrder.js';
import { estimateText } from '../../../src/report/text/estimateText.js';
import { expectHowSure } from '../../report/howSure.js';
import { exampleDesign } from '../../support/examples.js';

const plain = designOf(PLAIN);

describe('drawing samples', () => {
  it('a Latin hypercube has one point in each slice of each dimension (McKay, Beckman & Conover 1979: its definition)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 8 }), fc.nat(), (count, dims, seed) => {
        const rows = latinHypercube(count, dims, seededRandom(seed));
        for (let d = 0; d < dims; d++) {
          const slices = rows.map((row) => Math.floor(row[d] * count)).sort((a, b) => a - b);
          expect(slices).toEqual(Array.from({ length: count }, (_, i) => i));
        }
      }),
    );
  });

  it('the same seed gives the same points, another seed others', () => {
    const draw = (seed: number) => latinHypercube(20, 3, seededRandom(seed));
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('a triangular spread: its ends, the probability of its mode, and its median in closed form', () => {
    const triangle = { low: 1, mode: 2, high: 5 };
    const at = (p: number) => triangularQuantile('triangular', triangle, p);
    expect([at(0), at(1)]).toEqual([1, 5]);
    // cumulated probability at the mode: (mode - low)/(high - low)
    expect(at(0.25)).toBeCloseTo(2, 12);
    // median above the mode: high - sqrt((high - low)(high - mode)/2)
    expect(at(0.5)).toBeCloseTo(5 - Math.sqrt((4 * 3) / 2), 12);
  });

  it('the logarithmic one: even odds for a factor and its inverse', () => {
    const triangle = { low: 0.5, mode: 1, high: 2 };
    for (const p of [0.05, 0.3, 0.5]) {
      const product =
        triangularQuantile('log-triangular', triangle, p) * triangularQuantile('log-triangular', triangle, 1 - p);
      expect(product).toBeCloseTo(1, 12);
    }
  });

  it('quantiles run straight between order statistics; never stands at the end', () => {
    expect(quantile([1, 2, 3, 4, 5], 0.1)).toBeCloseTo(1.4, 12);
    expect(quantile([1, 2, 3, 4, 5], 0.5)).toBe(3);
    expect(quantile([1, 2, Infinity], 0.5)).toBe(2);
    expect(quantile([1, 2, Infinity], 0.9)).toBeNull();
    expect(quantile([], 0.5)).toBeNull();
  });
});

describe('telling what moves a number', () => {
  it('shares ranks among equals', () => {
    expect(ranks([10, 30, 20, 20])).toEqual([0, 3, 1.5, 1.5]);
  });

  it('a number that follows one input alone owes it all, however bent the curve', () => {
    const rows = latinHypercube(100, 3, seededRandom(1));
    const inputs = [0, 1, 2].map((d) => rows.map((row) => row[d]));
    const [first, second, third] = rankRegression(
      inputs,
      inputs[1].map((x) => -Math.exp(5 * x)),
    );
    expect(second).toBeCloseTo(-1, 9);
    expect(Math.abs(first) + Math.abs(third)).toBeLessThan(1e-9);
  });

  it('a sum of two inputs, one with twice the weight, owes them 4 to 1', () => {
    const rows = latinHypercube(2000, 2, seededRandom(3));
    const inputs = [0, 1].map((d) => rows.map((row) => row[d]));
    const values = rows.map(([a, b]) => 2 * a + b);
    const [a, b] = rankRegression(inputs, values).map((c) => c * c);
    expect(a / b).toBeGreaterThan(3.5);
    expect(a / b).toBeLessThan(4.5);
    expect(a + b).toBeGreaterThan(0.97);
    expect(a + b).toBeLessThan(1.03);
  });

  it('says nothing with too few cases, and of a number that stands still', () => {
    const samples = latinHypercube(5, 3, seededRandom(1));
    expect(causesOf([1, 2, 3, 4, 5], ['a', 'b', 'c'], samples)).toEqual([]);
    const many = latinHypercube(30, 3, seededRandom(1));
    const still = many.map(() => 400);
    expect(causesOf(still, ['a', 'b', 'c'], many)).toEqual([]);
  });

  it('reads the effect off the lowest and the highest fifth', () => {
    const samples = latinHypercube(50, 1, seededRandom(1));
    const [cause] = causesOf(
      samples.map(([x]) => 100 * x),
      ['a'],
      samples,
    );
    expect(cause.share).toBeCloseTo(1, 9);
    expect(cause.atLow).toBeCloseTo(10, 0);
    expect(cause.atHigh).toBeCloseTo(90, 0);
  });
});

describe('the unknowns of a design', () => {
  it('are those of model and issue, each likeliest at the design’s own value', () => {
    const paths = pathsOf([designOf(UPRIGHT)]);
    for (const path of ['fire.heat', 'fire.radiant', 'fire.soot', 'innerConvection', 'wood.moisture', 'site.wind']) {
      expect(paths).toContain(path);
    }
    for (const { value, low, high, source } of unknownsOf(plain)) {
      expect(low).toBeLessThanOrEqual(value);
      expect(high).toBeGreaterThanOrEqual(value);
      expect(source).not.toBe('');
    }
    expect(unknownsOf(plain).find(({ path }) => path === 'fire.heat')?.value).toBe(plain.fire.heat);
  });

  it('leave out what has no room: no wind, no gap', () => {
    const still: Design = structuredClone(plain);
    still.site.wind = 0;
    still.chamber!.doorGap = 0;
    const paths = pathsOf([still]);
    expect(paths).not.toContain('site.wind');
    expect(paths).not.toContain('chamber.doorGap');
  });

  it('hold how air cools level plates only where a pit has some', () => {
    const level = (design: Design) => unknownsOf(design).some(({ path }) => path === 'estimates.levelConvection');
    expect(level(plain)).toBe(false);
    expect(level(designOf(UPRIGHT))).toBe(true);
  });

  it('move what they are named for: air that cools better takes more wood to hold, level plates or the rest (derived)', () => {
    const box = exampleDesign('boxed-22.yaml');
    const hold = (change: Partial<Design['estimates']>) =>
      estimate({ ...box, estimates: { ...box.estimates, ...change } }, { steadyOnly: true }).steady!.fire_W;
    const usual = hold({});
    expect(hold({ outsideConvection: 1.2 })).toBeGreaterThan(usual * 1.005);
    expect(hold({ outsideConvection: 0.85 })).toBeLessThan(usual * 0.995);
    expect(hold({ levelConvection: 0.6 })).toBeLessThan(usual * 0.995);
  });

  it('widen to a value that the design puts outside the usual spread', () => {
    const bright: Design = structuredClone(plain);
    bright.fire.radiant = 0.55;
    expect(unknownsOf(bright).find(({ path }) => path === 'fire.radiant')).toMatchObject({ low: 0.2, high: 0.55 });
  });

  it('all at their likeliest give the design back, and never touch the one given', () => {
    const before = structuredClone(plain);
    const unknowns = unknownsOf(plain);
    const paths = unknowns.map(({ path }) => path);
    const ends = movedDesign(
      plain,
      paths,
      paths.map(() => 1),
    );
    expect(plain).toEqual(before);
    expect(ends.fire.radiant).toBe(0.45);
    expect(ends.firebox.intakes[0].discharge).toBe(0.7);
    expect(movedDesign(plain, [], [])).toEqual(plain);
  });

  it('wetter wood gives less heat a pound', () => {
    const wet = movedDesign(plain, ['wood.moisture'], [0.99]);
    expect(wet.wood.moisture).toBeGreaterThan(plain.wood.moisture);
    expect(wet.wood.heat).toBeLessThan(plain.wood.heat);
  });
});

describe('a spread study', () => {
  const base = estimate(plain);
  const plan = planSpread(base, { cases: 12, seed: 5, random: seededRandom(5) });
  expectSpreadInOrder(base, plan);

  it('with nothing uncertain every case is the estimate itself', () => {
    const sure = { ...plan, paths: [], samples: [[], []] };
    const same = summariseSpread(base, sure, runSpreadCases(sure, 0, 2));
    for (const number of same.numbers) {
      expect(number.p10).toBe(number.estimate);
      expect(number.p90).toBe(number.estimate);
    }
  });

  describe('of a pit whose cook was followed', () => {
    const tendedBase = estimate(plain, { further: cooked });
    const planned = (count: number) => planSpread(tendedBase, { cases: count, seed: 5, random: seededRandom(5) });
    const few = planned(6);
    const told = summariseSpread(tendedBase, few, runSpreadCases(few, 0, 6));
    const numberOf = (key: string) => told.numbers.find((each) => each.key === key)!;

    it('has ranges for what splits do, all of one weight', () => {
      expect(few.design.fire.splits.mass).toBe(tendedBase.splits!.wood_kg);
      for (const key of ['period_s', 'lowest_K', 'highest_K', 'late_K', 'wood_kg_per_s']) {
        const { p10, p50, p90, cases: followed } = numberOf(`swing.${key}`);
        expect(followed).toBe(6);
        expect(p10!).toBeLessThan(p50!);
        expect(p50!).toBeLessThan(p90!);
      }
      expect(numberOf('swing.highest_K').p90! - numberOf('swing.highest_K').p10!).toBeGreaterThan(5);
      expect(numberOf('swing.wood_kg_per_s').p50! / numberOf('hold.wood_kg_per_s').p50!).toBeCloseTo(1, 1);
    });

    it('is told in the text of the estimate', () => {
      expectHowSure(estimateText({ ...tendedBase, spread: told }, 'shop', { full: false }), 6);
    });

    it('draws everything else as it did without', () => {
      const alone = planSpread(base, { cases: 6, seed: 5, random: seededRandom(5) });
      expect(few.samples).toEqual(alone.samples);
      expect(alone.tended).toBeUndefined();
    });

    it('follows some of many cases, and says how many', () => {
      const many = planned(200);
      expect(many.tended!.samples).toHaveLength(40);
      expect(many.tended!.every).toBe(5);
      expect(runSpreadCases(many, 4, 6).map(({ splits }) => splits !== undefined)).toEqual([false, true]);
    });

    it('with nothing uncertain is the swing of the estimate itself', () => {
      const sure = { ...few, paths: [], samples: [[], []], tended: { every: 1, paths: [], samples: [[], []] } };
      for (const { key, p50, estimate: own } of summariseSpread(tendedBase, sure, runSpreadCases(sure, 0, 2)).numbers) {
        if (key.startsWith('swing.')) expect(p50! / own!).toBeCloseTo(1, 6);
      }
    });
  });
});
