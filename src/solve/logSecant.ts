interface Search {
  low: number;
  high: number;
  guess: number;
  /** usual change of f with ln x, and what of it is believed, from the one end to the other; else the usual one counts */
  slope: { usual: number; least: number; most: number };
  /** longest step, of ln x */
  stride: number;
  turns: number;
}

/**
 * Root of a function that goes about with the logarithm of a positive number, by secants from a guess. For a function that costs
 * much, or has no value far from the guess, so that there is no bracket to start from; with one, `bracketedRoot` is surer.
 *
 * @param f what is 0 is taken for the root; NaN: no value there
 * @returns the number that gave 0; null: no value on the way, the root lies beyond a bound, or the turns ran out
 */
export function logSecant(f: (x: number) => number, { low, high, guess, slope, stride, turns }: Search): number | null {
  let x = Math.min(high, Math.max(low, guess));
  let before: { log: number; value: number } | undefined;
  for (let turn = 0; turn < turns; turn++) {
    const value = f(x);
    if (value === 0) return x;
    const log = Math.log(x);
    const secant = before ? (value - before.value) / (log - before.log) : slope.usual;
    const believed = secant > slope.least && secant < slope.most ? secant : slope.usual;
    const step = Math.max(-stride, Math.min(stride, value / believed));
    const next = Math.min(high, Math.max(low, Math.exp(log - step)));
    if (Number.isNaN(next) || next === x) return null;
    before = { log, value };
    x = next;
  }
  return null;
}
