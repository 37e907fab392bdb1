/** A loss that a reading far out pulls no harder at. */

/** From about this many standard deviations on a reading pulls no harder. */
const ROBUST = 3;

/**
 * Signed root of the pseudo-Huber loss 2 c^2 (sqrt(1 + (r/c)^2) - 1): r near zero, its square growing straight far out.
 */
export function loss(r: number): number {
  const x = r / ROBUST;
  // the difference of roots, without its cancellation
  return r * Math.sqrt(2 / (Math.sqrt(1 + x * x) + 1));
}

/** Its slope. */
export function lossSlope(r: number): number {
  const root = Math.sqrt(1 + (r / ROBUST) ** 2);
  return Math.sqrt((root + 1) / 2) / root;
}
