/** Natural-ventilation rules of building practice for openings between two bodies of air. */

/**
 * Discharge coefficient of an opening with two-way flow, 0.40 + 0.0045 dT.
 * @param deltaT [K], by its size
 * @returns [-]
 * Reference: ASHRAE Handbook - Fundamentals (1997), natural ventilation, eq. 38.
 */
export function twoWayDischarge(deltaT: number): number {
  return 0.4 + 0.0045 * Math.abs(deltaT);
}
