/** Moments of a run through time, and what lies between two of them. */

/** What is known after a step. */
export interface Moment {
  time: number;
  x: Float64Array;
  /** integrals since the start [J] */
  fireHeat: number;
  lost: number;
  stored: number;
  /** what leaves the network now [W] */
  loss: number;
  massError: number;
}

/** A step that was taken, with the unknowns at shares of it, its ends included. */
export interface Stride {
  before: Moment;
  after: Moment;
  shares: number[];
  states: Float64Array[];
  /** how fast the reading of the gauge goes at its start and at its end [K/s] */
  gaugeRates: readonly [number, number];
}

/**
 * A moment inside a step: on the cubic through its start, stages and end, never outside of what lies on either side of
 * it, for at a kink a cubic swings out. Sums follow their rates at both ends, so that they balance as these do.
 */
export function inside({ before, after, shares, states }: Stride, share: number): Moment {
  const weights = cubicWeights(shares, share);
  let next = 1;
  while (next < shares.length - 1 && shares[next] < share) next++;
  const [low, high] = [states[next - 1], states[next]];
  const x = after.x.map((_, k) => {
    let value = 0;
    for (let i = 0; i < states.length; i++) value += weights[i] * states[i][k];
    return Math.min(Math.max(value, Math.min(low[k], high[k])), Math.max(low[k], high[k]));
  });
  const h = after.time - before.time;
  const fire = x.length - 1;
  const along = (a: number, b: number, rateA: number, rateB: number) =>
    betweenEnds([a, b], [h * rateA, h * rateB], share);
  const rates = [before, after].map((moment) => [moment.x[fire], moment.loss]);
  const [[fireA, lossA], [fireB, lossB]] = rates;
  return {
    time: before.time + share * h,
    x,
    fireHeat: along(before.fireHeat, after.fireHeat, fireA, fireB),
    lost: along(before.lost, after.lost, lossA, lossB),
    stored: along(before.stored, after.stored, fireA - lossA, fireB - lossB),
    loss: before.loss + share * (after.loss - before.loss),
    massError: after.massError,
  };
}

/** Weights of the values at some points for the polynomial through them at another place (Lagrange). */
export function cubicWeights(points: readonly number[], at: number): number[] {
  return points.map((p, i) => points.reduce((w, q, j) => (j === i ? w : (w * (at - q)) / (p - q)), 1));
}

/**
 * A value inside a step by its values and rates at both ends (Hermite).
 * @param ends values at the start and at the end
 * @param rises rates there, times the length of the step
 */
export function betweenEnds(ends: readonly [number, number], rises: readonly [number, number], share: number): number {
  const rest = 1 - share;
  const [a, b] = ends;
  return a + (b - a) * share * share * (3 - 2 * share) + share * rest * (rises[0] * rest - rises[1] * share);
}

/** Share of a step at which such a value turns; null: it goes one way, or the same way at both ends. */
export function turnsAt(ends: readonly [number, number], rises: readonly [number, number]): number | null {
  const [p, q] = rises;
  if (p * q >= 0) return null;
  // its rate is p + 2 (3 d - 2 p - q) s + 3 (p + q - 2 d) s^2, of which one root lies inside
  const d = ends[1] - ends[0];
  const [square, half] = [3 * (p + q - 2 * d), 3 * d - 2 * p - q];
  const root = Math.sqrt(half * half - square * p);
  const first = p / (-half - Math.sign(half || 1) * root);
  if (first > 0 && first < 1) return first;
  return (-half - Math.sign(half || 1) * root) / square;
}
