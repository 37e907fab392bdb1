import { airPrandtl, airViscosity, AIR_GAS_CONSTANT } from './air.js';
import { GRAVITY } from './constants.js';

/** Grashof number about which the boundary layer turns turbulent. */
const TURBULENT = 1e9;
/**
 * Differences below this fade out [K]: the fourth root of the law has no finite slope at nothing. At 20 K it takes 1 %.
 */
const LEAST_DIFFERENCE = 2;

/**
 * Gas that sinks along a colder upright wall, per width of the wall, at a distance below where it began.
 *
 * Laminar (integral solution with parabolic profiles): u1 = 5.17 nu (20/21 + Pr)^(-1/2) (g dT / (T nu^2))^(1/2)
 * x^(1/2), delta = 3.93 Pr^(-1/2) (20/21 + Pr)^(1/4) (g dT / (T nu^2))^(-1/4) x^(1/4), m = rho u1 delta / 12. Turbulent
 * (1/7 power profile): u1 = 1.185 (nu/x) Gr^(1/2) (1 + 0.494 Pr^(2/3))^(-1/2), delta = 0.565 x Gr^(-1/10) Pr^(-8/15) (1
 * + 0.494 Pr^(2/3))^(1/10), m = 0.1463 rho u1 delta. The larger of the two, joined smoothly, from a Grashof number of
 * 10^9 on.
 * @param distance below the wall's top [m]
 * @param gas temperature away from the wall [K]
 * @param wall its temperature [K]; no flow where it is not the colder
 * @param pressure absolute [Pa]
 * @returns [kg/(s m)]
 * @example wallDownflow(0.3, 420, 345, 101325) // 0.00388 kg/(s m)
 * Reference: Squire & Eckert, as in Eckert & Drake, Analysis of Heat and Mass Transfer; Eckert & Jackson (1950), NACA
 * report 1015 (both from memory). Plane walls in gas of one temperature; in layered gas an estimate of a design.
 */
export function wallDownflow(distance: number, gas: number, wall: number, pressure: number): number {
  const difference = gas - wall;
  if (difference <= 0 || distance <= 0) return 0;
  const film = 0.5 * (gas + wall);
  const density = pressure / (AIR_GAS_CONSTANT * film);
  const nu = airViscosity(film) / density;
  const pr = airPrandtl(film);
  const drive = (GRAVITY * difference) / (film * nu * nu);
  const grashof = drive * distance * distance * distance;
  const quarter = Math.sqrt(Math.sqrt(grashof));
  // u1 delta, from the two formulas
  const laminar = (5.17 * 3.93 * nu * quarter) / (12 * Math.sqrt(Math.sqrt(20 / 21 + pr)) * Math.sqrt(pr));
  const prandtl = 1 + 0.494 * Math.cbrt(pr * pr);
  const turbulent = 0.1463 * 1.185 * 0.565 * nu * Math.pow(grashof / (prandtl * pr * Math.cbrt(pr)), 0.4);
  const share = grashof / (grashof + TURBULENT);
  const fade = (difference * difference) / (difference * difference + LEAST_DIFFERENCE * LEAST_DIFFERENCE);
  return fade * density * (laminar + share * share * Math.max(0, turbulent - laminar));
}

/** Part of the wall's coldness that the sinking gas has, weighted by its flow (parabolic profiles): 2/5. */
export const SINKING_COLDNESS = 0.4;
