import { describe, expect, it } from 'vitest';
import { looksLikeRunningTotal } from '../../../src/fit/log/runningTotal.js';
import { generator } from '../../design/randomDesign.js';

const sums = (pieces: number[]) => pieces.map((_, i) => pieces.slice(0, i + 1).reduce((sum, each) => sum + each, 0));

describe('a running total of wood', () => {
  it.each([
    ['of even pieces', sums([8, 4, 4, 4, 4])],
    ['of uneven pieces', sums([3.5, 1.6, 2.2, 1.1, 1.9, 1.4])],
    ['in every row', sums([8, 4, 4, 4, 4]).flatMap((each) => Array<number>(30).fill(each))],
    ['set back once', [...sums([8, 4, 4, 4, 4]), ...sums([4, 4, 4])]],
    ['set back twice', [...sums([4, 4, 4, 4, 4]), ...sums([4, 3, 4, 5]), ...sums([4, 4, 5])]],
  ])('%s is seen', (_, masses) => {
    expect(looksLikeRunningTotal(masses)).toBe(true);
  });

  it.each([
    ['of one size', [4, 4, 4, 4, 4, 4]],
    ['that grow a little', [3, 3.2, 3.5, 3.7, 4]],
    ['after a big first load', [8, 3, 4, 3, 5, 4]],
    ['two alone', [4, 8]],
  ])('is not seen in pieces %s', (_, masses) => {
    expect(looksLikeRunningTotal(masses)).toBe(false);
  });

  it('is seen in hardly any honest cook: a load, then pieces of a size up to a third off', () => {
    const random = generator(3);
    let seen = 0;
    for (let k = 0; k < 2000; k++) {
      const size = 2 + 4 * random();
      const pieces = Array.from({ length: 3 + Math.floor(10 * random()) }, () => size * (0.67 + 0.66 * random()));
      const load = random() < 0.5 ? [size * (1 + 2 * random())] : [];
      if (looksLikeRunningTotal([...load, ...pieces])) seen++;
    }
    expect(seen).toBe(0);
  });
});
