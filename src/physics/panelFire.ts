/** What a fire in the middle of its box does to the middle of a wall, against the wall's edge. */

/**
 * Radiation of a small fire on a flat wall: at its middle less at its edge. A point that shines alike all round gives
 * P/(4 pi d2) straight on, and (1 + (r/d)2)^(-3/2) of that at a distance r from there: further off, and at a slant.
 *
 * @param power that the fire radiates [W]
 * @param distance d from fire to wall [m]
 * @param across the wall's shorter side or diameter [m]; its edge is half of that from its middle
 * @returns [W/m2]
 * @example radiationFall(6000, 0.3, 0.6) // 3429.5 W/m2
 * Reference: Incropera et al. (2007), 6th ed., eq. 12.3 and 12.7, inverse square and cosine; the point is our
 * simplification.
 */
export function radiationFall(power: number, distance: number, across: number): number {
  const slant = 1 + ((0.5 * across) / distance) ** 2;
  return (power / (4 * Math.PI * distance ** 2)) * (1 - slant ** -1.5);
}

/** A plate whose middle takes up more heat than its edge does. */
interface SpotHeated {
  /** by how much more [W/m2] */
  more: number;
  thickness: number;
  /** shorter side or diameter [m] */
  across: number;
  /** of both faces together [W/(m2 K)] */
  coefficient: number;
  /** [W/(m K)] */
  conductivity: number;
}

/**
 * Middle of such a plate over its edge: the heat leaves by both faces, and along the plate to its edges. For a swell
 * cos(pi x/b) cos(pi y/b) the latter counts as 2 k t (pi/b)2 beside the coefficient, exactly.
 *
 * @param plate fluxes [W/m2], sizes [m], coefficient [W/(m2 K)], conductivity [W/(m K)]
 * @returns [K]
 * @example spotOverEdge({ more: 3000, thickness: 0.006, across: 0.6, coefficient: 60, conductivity: 42 }) // 40.64 K
 * Reference: conduction along a thin plate, Incropera et al. (2007), 6th ed., eq. 3.61, in two directions.
 */
export function spotOverEdge({ more, thickness, across, coefficient, conductivity }: SpotHeated): number {
  return more / (coefficient + 2 * conductivity * thickness * (Math.PI / across) ** 2);
}
