/**
 * Share of what a disk sends out that reaches another one that faces it on the same axis:
 * F = (S - sqrt(S^2 - 4 (r2/r1)^2)) / 2, S = 1 + (L^2 + r2^2) / r1^2.
 *
 * @param from radius of the disk that radiates [m]
 * @param to radius of the other [m]
 * @param distance between them [m]; above 0
 * @returns [-]
 * @example coaxialDisks(1, 1, 1) // 0.382 -
 * Reference: Incropera et al. (2007), 6th ed., Table 13.2, coaxial parallel disks; diffuse, nothing between them.
 */
export function coaxialDisks(from: number, to: number, distance: number): number {
  const s = 1 + (distance * distance + to * to) / (from * from);
  return 0.5 * (s - Math.sqrt(s * s - 4 * (to / from) ** 2));
}
