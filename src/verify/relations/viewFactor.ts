/**
 * View factor from a point to a parallel rectangle, the point facing one corner:
 * [a/sqrt(1+a^2) atan(b/sqrt(1+a^2)) + b/sqrt(1+b^2) atan(a/sqrt(1+b^2))]/(2 pi), a and b the sides over the distance.
 * Rectangles round the point add up.
 * @param sides of the rectangle and its distance [m]
 * @returns [-]
 * @example cornerViewFactor({ width: 10, height: 10, distance: 10 }) // 0.1385
 * Reference: EN 1991-1-2:2002, Annex G, eq. G.2.
 */
export function cornerViewFactor({
  width,
  height,
  distance,
}: {
  width: number;
  height: number;
  distance: number;
}): number {
  const a = height / distance;
  const b = width / distance;
  const rootA = Math.sqrt(1 + a * a);
  const rootB = Math.sqrt(1 + b * b);
  return ((a / rootA) * Math.atan(b / rootA) + (b / rootB) * Math.atan(a / rootB)) / (2 * Math.PI);
}
