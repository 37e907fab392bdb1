/**
 * ESDIRK3(2)4L[2]SA: the implicit half of ARK3(2)4L[2]SA of Kennedy & Carpenter (2003), Applied Numerical Mathematics
 * 44, 139 (coefficients from memory; the tests check the order conditions and the observed order). Third order,
 * L-stable, stiffly accurate: the last stage is the solution, so that fast bodies and algebraic quantities carry no
 * error of their own.
 */
export const ESDIRK = (() => {
  const gamma = 1767732205903 / 4055673282236;
  const b = [1471266399579 / 7840856788654, -4482444167858 / 7529755066697, 11266239266428 / 11593286722821, gamma];
  return {
    gamma,
    a: [
      [0, 0, 0, 0],
      [gamma, gamma, 0, 0],
      [2746238789719 / 10658868560708, -640167445237 / 6845629431997, gamma, 0],
      b,
    ],
    b,
    embedded: [
      2756255671327 / 12835298489170,
      -10771552573575 / 22201958757719,
      9247589265047 / 10645013368117,
      2193209047091 / 5459859503100,
    ],
    c: [0, 2 * gamma, 3 / 5, 1],
  };
})();

/**
 * Next step length after a step with the given error, by the usual law for a local error of third order, within limits.
 */
export function nextStep(h: number, error: number): number {
  const growth = error > 0 ? 0.9 * Math.pow(error, -1 / 3) : 4;
  return h * Math.min(4, Math.max(0.2, growth));
}
