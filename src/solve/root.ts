/**
 * Root of a continuous function inside a bracket: inverse quadratic interpolation where it is safe, halving where not
 * (Chandrupatla 1997, Advances in Engineering Software 28, 145; from memory).
 *
 * @param f function of one number
 * @param options bracket [low, high] with a change of sign, tolerance on the argument, iteration limit
 * @returns root, iterations and whether the tolerance was met
 * @throws RangeError when f has the same sign on both ends, or gives no number
 */
export function bracketedRoot(
  f: (x: number) => number,
  options: { low: number; high: number; tolerance: number; maxIterations?: number; fLow?: number; fHigh?: number },
): { root: number; iterations: number; converged: boolean } {
  const { low, high, tolerance } = options;
  let [a, fa] = [high, options.fHigh ?? f(high)];
  let [b, fb] = [low, options.fLow ?? f(low)];
  if (fa === 0) return { root: a, iterations: 0, converged: true };
  if (fb === 0) return { root: b, iterations: 0, converged: true };
  if (!(fa * fb < 0)) throw new RangeError(`no change of sign between ${low} and ${high}`);
  let [c, fc] = [a, fa];
  let share = 0.5;
  const limit = options.maxIterations ?? 100;
  for (let iteration = 1; iteration <= limit; iteration++) {
    const x = a + share * (b - a);
    const fx = f(x);
    if (Number.isNaN(fx)) throw new RangeError(`no number at ${x}`);
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const smallest = (tolerance + 4e-16 * Math.abs(best)) / Math.abs(b - a);
    if (fa === 0 || smallest > 0.5) return { root: fa === 0 ? a : best, iterations: iteration, converged: true };
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    share = 0.5;
    if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi) {
      share = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
    }
    share = Math.min(1 - smallest, Math.max(smallest, share));
  }
  return { root: Math.abs(fa) < Math.abs(fb) ? a : b, iterations: limit, converged: false };
}

/** The same; null where it throws: f has no value on the way, or the ends are no bracket. */
export function rootWithin(f: (x: number) => number, bracket: Parameters<typeof bracketedRoot>[1]): number | null {
  try {
    return bracketedRoot(f, bracket).root;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
