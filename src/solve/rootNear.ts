import { rootWithin } from './root.js';

/** A step is so much longer than the slope asks, to land beyond the root; each that falls short is followed by one twice as long. */
const BEYOND = 1.2;
const LONGER = 2;

interface Near {
  guess: number;
  /** about how f changes per x; its sign must be right */
  slope: number;
  low: number;
  high: number;
  /** longest step */
  stride: number;
  /** on x */
  tolerance: number;
}

/**
 * Root of a continuous function from a guess, where its bounds are no bracket: f may have no value there, or cost much.
 * Steps away from the guess until f changes sign, then `bracketedRoot`.
 *
 * @param f its value, which is taken for a root where it is 0; NaN where it has none
 * @returns null where f has no value on the way, or the same sign up to a bound
 */
export function rootNear(
  f: (x: number) => number,
  { guess, slope, low, high, stride, tolerance }: Near,
): number | null {
  let a = Math.min(high, Math.max(low, guess));
  let fa = f(a);
  for (let reach = BEYOND; fa !== 0; reach *= LONGER) {
    const step = (-reach * fa) / slope;
    const b = Math.min(high, Math.max(low, a + Math.max(-stride, Math.min(stride, step))));
    if (a === b || Number.isNaN(b)) return null;
    const fb = f(b);
    if (fa * fb < 0) return rootWithin(f, { low: a, high: b, fLow: fa, fHigh: fb, tolerance });
    [a, fa] = [b, fb];
  }
  return a;
}
