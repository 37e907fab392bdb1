/** Natural-ventilation rules of building practice for openings between two bodies of air. */
import { GRAVITY } from '../../physics/constants.js';

/**
 * Discharge coefficient of an opening with two-way flow, 0.40 + 0.0045 dT.
 * @param deltaT [K], by its size
 * @returns [-]
 * Reference: ASHRAE Handbook - Fundamentals (1997), natural ventilation, eq. 38.
 */
export function twoWayDischarge(deltaT: number): number {
  return 0.4 + 0.0045 * Math.abs(deltaT);
}

/**
 * Stack-driven volume flow through a low and a high opening, Cd A sqrt(2 g dH (Ti - To)/Ti).
 * @param rise height from the neutral level to the opening [m]; area [m2]; temperatures [K], inside the warmer
 * @returns [m3/s]
 * Reference: ASHRAE Handbook - Fundamentals (1997), natural ventilation, eq. 37.
 */
export function stackVentilation({
  discharge,
  area,
  rise,
  inside,
  outside,
}: {
  discharge: number;
  area: number;
  rise: number;
  inside: number;
  outside: number;
}): number {
  return discharge * area * Math.sqrt((2 * GRAVITY * rise * Math.max(0, inside - outside)) / inside);
}
