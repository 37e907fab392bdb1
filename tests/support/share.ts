import { it } from 'vitest';

/**
 * How much of the long sweeps `npm run test:long` makes: a fortieth, from the first seed on, or what
 * PITWRIGHT_TEST_SHARE says, up to 1 for all. The everyday run has its own few first ones.
 */
const SHARE = Number(process.env.PITWRIGHT_TEST_SHARE ?? 0.025);
if (!(SHARE > 0 && SHARE <= 1)) throw new RangeError('PITWRIGHT_TEST_SHARE is a number above 0, up to 1');

/** The share that is asked for of so many cases, at least one. */
export const shareOf = (count: number): number => Math.max(1, Math.round(SHARE * count));

/** One test for every `size` seeds from `from` to before `to`, named by them. */
export function inBatches(from: number, to: number, size: number, check: (seeds: number[]) => void): void {
  for (let first = from; first < to; first += size) {
    const seeds = Array.from({ length: Math.min(size, to - first) }, (_, i) => first + i);
    it(`seeds ${seeds[0]} to ${seeds.at(-1)!}`, { timeout: 600_000 }, () => check(seeds));
  }
}
