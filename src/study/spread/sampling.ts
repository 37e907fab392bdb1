/** Drawing inputs from their spreads, and reading spreads off results. */
import { quantileSorted } from 'simple-statistics';
import { bracketedRoot } from '../../solve/root.js';

/**
 * A generator of numbers from 0 (included) to 1 (excluded). Studies are given one: they make no randomness themselves.
 */
export type Random = () => number;

/**
 * Latin hypercube: `count` points in `dimensions` dimensions, so that in each dimension every one of `count` equal
 * slices of probability holds exactly one point.
 *
 * @param count points, at least 1
 * @param random numbers from 0 to 1
 * @returns one row a point, each number in 0..1
 * Reference: McKay, Beckman & Conover (1979), Technometrics 21, 239.
 */
export function latinHypercube(count: number, dimensions: number, random: Random): number[][] {
  const rows = Array.from({ length: count }, () => new Array<number>(dimensions).fill(0));
  for (let d = 0; d < dimensions; d++) {
    const slices = shuffled(count, random);
    for (let i = 0; i < count; i++) rows[i][d] = (slices[i] + random()) / count;
  }
  return rows;
}

/** 0 to count - 1 in random order (Fisher & Yates). */
function shuffled(count: number, random: Random): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}

interface Triangle {
  low: number;
  mode: number;
  high: number;
}

/**
 * Value at a cumulated probability of a triangular distribution: what is left when only bounds and likeliest value are
 * known. 'log-triangular' is triangular in the logarithm, for what is off by a factor; it wants low > 0.
 *
 * @param probability 0..1
 * @returns low at 0, high at 1
 */
export function triangularQuantile(
  distribution: 'triangular' | 'log-triangular',
  { low, mode, high }: Triangle,
  probability: number,
): number {
  if (distribution === 'log-triangular') {
    const logs = { low: Math.log(low), mode: Math.log(mode), high: Math.log(high) };
    return Math.min(high, Math.max(low, Math.exp(triangularQuantile('triangular', logs, probability))));
  }
  const width = high - low;
  if (width <= 0) return mode;
  const turn = (mode - low) / width;
  return probability < turn
    ? low + Math.sqrt(probability * width * (mode - low))
    : high - Math.sqrt((1 - probability) * width * (high - mode));
}

/** Probability below a 90 % interval, and above it. */
const TAIL = 0.05;

/**
 * Triangle with a given mode whose 5 % and 95 % points are a given interval: what is left of a fit's interval when a
 * spread study draws from triangles.
 *
 * With u and v its sides below and above the mode, w = u + v and r = u/w, the tails (u - below)²/(w u) and (v -
 * above)²/(w v) are TAIL where w (r - √(TAIL r)) = below and w (1 - r - √(TAIL (1 - r))) = above; r is the root of the
 * one over the other: the first bracket rises and the second falls with it.
 *
 * @param interval low <= mode <= high; equal ones give no room
 * @returns in the logarithm for 'log-triangular', which wants low > 0
 */
export function triangleOfInterval(
  distribution: 'triangular' | 'log-triangular',
  { low, mode, high }: Triangle,
): Triangle {
  if (distribution === 'log-triangular') {
    const logs = triangleOfInterval('triangular', { low: Math.log(low), mode: Math.log(mode), high: Math.log(high) });
    return { low: Math.exp(logs.low), mode, high: Math.exp(logs.high) };
  }
  const [below, above] = [mode - low, high - mode];
  if (below + above <= 0) return { low: mode, mode, high: mode };
  const side = (r: number) => r - Math.sqrt(TAIL * r);
  const lean = (r: number) => below * side(1 - r) - above * side(r);
  const most = side(1 - TAIL);
  const ends = { low: TAIL, high: 1 - TAIL, fLow: below * most, fHigh: -above * most };
  const { root: r } = bracketedRoot(lean, { ...ends, tolerance: 1e-16 });
  const width = (below + above) / (side(r) + side(1 - r));
  return { low: mode - r * width, mode, high: mode + (1 - r) * width };
}

/**
 * Quantile of a sample, linear between its order statistics (type 7 of Hyndman & Fan 1996, The American Statistician
 * 50, 361).
 *
 * @param sorted ascending; an Infinity at its end stands for 'never'
 * @returns null when the sample is empty or the quantile falls among the 'never'
 */
export function quantile(sorted: readonly number[], probability: number): number | null {
  if (sorted.length === 0) return null;
  const value = quantileSorted([...sorted], probability);
  return Number.isFinite(value) ? value : null;
}
