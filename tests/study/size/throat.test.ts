import { beforeAll, describe, expect, it } from 'vitest';
import { NO_DIFFERENCE } from '../../../src/study/quantities.js';
import { bestThroat, fittingThroat, throatTries, type ThroatTry } from '../../../src/study/size/throat.js';
import { designOf, PLAIN } from '../../design/designFiles.js';

const inch = 0.0254;
const square = inch ** 2;
const plain = designOf(PLAIN);

describe('the order of throats', () => {
  const tried = (area: number, apart_K: number | null, wood: number, roomy = true): ThroatTry => ({
    area_m2: area,
    apart_K,
    wood_kg_per_s: wood,
    grate_K: 370,
    roomy,
  });

  it.each([
    ['the evenest, before wood', [tried(1, 20, 1), tried(2, 10, 3)], 2],
    ['of these what takes least wood', [tried(1, 10, 3), tried(2, 10.5, 2), tried(3, 20, 1)], 2],
    ['of these the smallest', [tried(1, 10.9, 2.1), tried(2, 10, 2), tried(3, 10.2, 2.05)], 1],
    ['what is a kelvin apart is no more than can be told', [tried(1, 2.9, 1), tried(2, 2, 1)], 1],
    ['none without speed in hand', [tried(1, 5, 1, false), tried(2, 10, 2)], 2],
    ['by wood and size where there is one place alone', [tried(1, null, 2), tried(2, null, 1), tried(3, null, 1)], 2],
    ['nothing of nothing', [tried(1, 5, 1, false)], null],
  ])('%s', (_, tries, best) => expect(bestThroat(tries)).toBe(best));
});

describe('throats of a plain pit', () => {
  let tries: ThroatTry[];
  beforeAll(() => {
    tries = throatTries(plain, { cleanAir: 2.5 });
  });
  const best = <K extends keyof ThroatTry>(key: K) => tries.reduce((a, b) => (b[key]! < a[key]! ? b : a));

  it('a larger one takes less wood, and the grate is evenest in between', () => {
    const wood = tries.map((each) => each.wood_kg_per_s);
    expect([...wood].sort((a, b) => b - a)).toEqual(wood);
    const [small, large] = [tries[0], tries.at(-1)!];
    const even = best('apart_K');
    expect(even.area_m2).toBeGreaterThan(1.5 * small.area_m2);
    expect(even.area_m2).toBeLessThan(large.area_m2 / 1.2);
    // what the bed does through a large one and the jet of a small one is more than what can't be told
    expect(small.apart_K! - even.apart_K!).toBeGreaterThan(3);
    expect(large.apart_K! - even.apart_K!).toBeGreaterThan(NO_DIFFERENCE.temperature);
  });

  it('one without speed in hand is the last that is tried', () => {
    expect(tries.map(({ roomy }) => roomy)).toEqual([false, ...tries.slice(1).map(() => true)]);
  });

  it('the one chosen is as even as the evenest within a tenth, and the smallest of those that burn as little', () => {
    const chosen = tries.find(({ area_m2 }) => area_m2 === bestThroat(tries))!;
    expect(chosen.apart_K!).toBeLessThanOrEqual(1.1 * best('apart_K').apart_K!);
    expect(chosen.area_m2).toBeLessThan(best('wood_kg_per_s').area_m2);
  });

  it('leaves an inch of plate all round, where circles of 23-1/2 in overlap with middles 10 in apart', () => {
    const [r, d] = [23.5 / 2 - 1, 10];
    const lens = 2 * r ** 2 * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r ** 2 - d ** 2);
    expect(fittingThroat(plain, 1).value / square).toBeCloseTo(10 * Math.floor(lens / 10), 6);
    expect(tries.at(-1)!.area_m2 / square).toBeLessThanOrEqual(lens);
  });
});
