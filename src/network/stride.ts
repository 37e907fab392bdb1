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
  /** how fast temperatures of nodes and stems go at its start and at its end [K/s] */
  rates: readonly [Float64Array, Float64Array];
}

/**
 * A moment inside a step. Nodes and stems lie on the cubic by their values and rates at both ends, sums too, so that
 * they balance as their rates do. What follows at once lies on the one through start, stages and end or, in a step among
 * others, on that by its rates at both ends, never outside of what lies on either side, for at a kink a cubic swings
 * out.
 *
 * @param rest rates of what follows at once at both ends, of `ratesBetween`; default: they are not known
 */
export function inside(stride: Stride, share: number, rest?: readonly [Float64Array, Float64Array]): Moment {
  const { before, after, shares, states, rates } = stride;
  const h = after.time - before.time;
  const along = (a: number, b: number, rateA: number, rateB: number) =>
    betweenEnds([a, b], [h * rateA, h * rateB], share);
  const weights = cubicWeights(shares, share);
  let next = 1;
  while (next < shares.length - 1 && shares[next] < share) next++;
  const [low, high] = [states[next - 1], states[next]];
  const led = rates[0].length;
  const between = (value: number, a: number, b: number) => Math.min(Math.max(value, Math.min(a, b)), Math.max(a, b));
  const x = after.x.map((end, k) => {
    const start = before.x[k];
    if (k < led) return along(start, end, rates[0][k], rates[1][k]);
    if (rest) return between(along(start, end, rest[0][k], rest[1][k]), start, end);
    let value = 0;
    for (let i = 0; i < states.length; i++) value += weights[i] * states[i][k];
    return between(value, low[k], high[k]);
  });
  const fire = x.length - 1;
  const [[fireA, lossA], [fireB, lossB]] = [before, after].map((moment) => [moment.x[fire], moment.loss]);
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

/** Rates of the unknowns where one step ends and the next begins: of the parabola through both [1/s]. */
export function ratesBetween(one: Stride, next: Stride): Float64Array {
  const [a, b] = [one, next].map(({ before, after }) => after.time - before.time);
  return next.before.x.map((x, k) => {
    const [up, on] = [(x - one.before.x[k]) / a, (next.after.x[k] - x) / b];
    return (up * b + on * a) / (a + b);
  });
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
