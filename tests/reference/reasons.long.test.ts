import { expect, test } from 'vitest';
import { off } from './corridorsF.js';

test('corridors-F-upper: as it is it misses by over 8 K; with 25 % radiated it is within', () => {
  expect(off({})).toBeGreaterThan(8);
  expect(off({ radiantShare: 0.25 })).toBeLessThan(8);
});
