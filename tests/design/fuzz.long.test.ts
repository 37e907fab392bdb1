import { describe, it } from 'vitest';
import { fuzz, mustStandBoth } from './fuzzing.js';

fuzz(1);

describe('any text', () => {
  it.each([
    [
      'keys',
      Array.from({ length: 19_000 }, (_, i) => `k${i}: 1`).join('\n'),
      Array.from({ length: 4_900 }, (_, i) => `k${i}: 1`).join('\n'),
    ],
    ['anchors', 'a: &a 1\n'.repeat(19_000), Array.from({ length: 4_900 }, (_, i) => `k${i}: &a${i} 1`).join('\n')],
    ['commas', `a: [${','.repeat(900_000)}]`, `a: [${','.repeat(9_990)}]`],
  ])('of many %s', mustStandBoth);
});
