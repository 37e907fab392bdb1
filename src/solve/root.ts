/**
 * Root of a continuous function inside a bracket, by regula falsi with the Illinois weight (Dowell & Jarratt 1971),
 * falling back on halving when it stalls.
 *
 * @param f function of one number
 * @param options bracket [low, high] with a change of sign, tolerance on the argument, iteration limit
 * @returns root, iterations and whether the tolerance was met
 * @throws RangeError when f has the same sign on both ends
 */
export function bracketedRoot(
  f: (x: number) => number,
  options: { low: number; high: number; tolerance: number; maxIterations?: number; fLow?: number; fHigh?: number },
): { root: number; iterations: number; converged: boolean } {
  let { low, high } = options;
  let fLow = options.fLow ?? f(low);
  let fHigh = options.fHigh ?? f(high);
  if (fLow === 0) return { root: low, iterations: 0, converged: true };
  if (fHigh === 0) return { root: high, iterations: 0, converged: true };
  if (fLow * fHigh > 0) throw new RangeError(`no change of sign between ${low} and ${high}`);
  const limit = options.maxIterations ?? 100;
  let side = 0;
  for (let iteration = 1; iteration <= limit; iteration++) {
    let x = (low * fHigh - high * fLow) / (fHigh - fLow);
    if (iteration % 4 === 0 || !(x > Math.min(low, high) && x < Math.max(low, high))) x = 0.5 * (low + high);
    const fx = f(x);
    if (fx === 0 || Math.abs(high - low) < options.tolerance)
      return { root: x, iterations: iteration, converged: true };
    if (fx * fHigh < 0) {
      low = high;
      fLow = fHigh;
      high = x;
      fHigh = fx;
      side = 0;
    } else {
      high = x;
      fHigh = fx;
      if (side === 1) fLow *= 0.5;
      side = 1;
    }
    if (Math.abs(high - low) < options.tolerance) return { root: high, iterations: iteration, converged: true };
  }
  return { root: high, iterations: limit, converged: false };
}
