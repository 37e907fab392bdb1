/**
 * Natural convection of air at plates and cylinders. Every relation is continuous in Rayleigh number from 0 up; the
 * sign of the temperature difference is the caller's: Rayleigh numbers are taken by their size.
 */
import { GRAVITY } from './constants.js';

/**
 * Rayleigh number of a gas, g beta |dT| L^3 Pr/nu^2, beta = 1/T of an ideal gas.
 * @param deltaT surface less gas [K], either sign
 * @param filmT mean of surface and gas temperature [K]
 * @param length characteristic length [m]
 * @param viscosity kinematic, nu [m2/s]
 * @param Pr [-]
 * @returns [-], never negative
 * @example rayleigh(209, 400, 0.71, 26.41e-6, 0.69) // 1.81e9
 * Reference: Incropera et al. (2007), 6th ed., eq. 9.25; the numbers are those of Example 9.2.
 */
export function rayleigh(deltaT: number, filmT: number, length: number, viscosity: number, Pr: number): number {
  return ((GRAVITY / filmT) * Math.abs(deltaT) * length * length * length * Pr) / (viscosity * viscosity);
}

/** Roots in place of powers: these run for every face at every step, and Math.pow costs several times as much. */
function sixthRoot(x: number): number {
  return Math.cbrt(Math.sqrt(x));
}

/**
 * Prandtl numbers of gases, over which the factor below is laid out in a table: straight between points, 1e-7 off at
 * most.
 */
const GASES = { least: 0.5, most: 1, points: 500 };

/** [1 + (constant/Pr)^(9/16)]^(-8/27), a function of Pr */
function prandtlFactor(constant: number): (Pr: number) => number {
  const exact = (Pr: number) => Math.pow(1 + Math.pow(constant / Pr, 9 / 16), -8 / 27);
  const { least, most, points } = GASES;
  const scale = points / (most - least);
  const table = Float64Array.from({ length: points + 1 }, (_, i) => exact(least + i / scale));
  return (Pr) => {
    if (!(Pr >= least && Pr < most)) return exact(Pr);
    const at = (Pr - least) * scale;
    const i = Math.floor(at);
    return table[i] + (at - i) * (table[i + 1] - table[i]);
  };
}

const cylinderFactor = prandtlFactor(0.559);
const plateFactor = prandtlFactor(0.492);

/**
 * Long horizontal cylinder: Nu = {0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}^2.
 * @param Ra on the diameter; published up to 1e12
 * @param Pr [-]
 * @returns mean Nusselt number on the diameter
 * @example nusseltHorizontalCylinder(1.867e6, 0.7228) // 17.4
 * Reference: Churchill & Chu (1975), Int. J. Heat Mass Transfer 18, 1049-1053; the numbers are those of Cengel, Example
 * 9.1.
 */
export function nusseltHorizontalCylinder(Ra: number, Pr: number): number {
  const root = 0.6 + 0.387 * sixthRoot(Math.abs(Ra)) * cylinderFactor(Pr);
  return root * root;
}

/**
 * Vertical plate, all Ra: Nu = {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}^2.
 * @param Ra on the height; published 0.1 to 1e12
 * @param Pr [-]
 * @returns mean Nusselt number on the height
 * @example nusseltVerticalPlate(1.813e9, 0.69) // 147
 * Reference: Churchill & Chu (1975), Int. J. Heat Mass Transfer 18, 1323-1329; the numbers are those of Incropera,
 * Example 9.2.
 */
export function nusseltVerticalPlate(Ra: number, Pr: number): number {
  const root = 0.825 + 0.387 * sixthRoot(Math.abs(Ra)) * plateFactor(Pr);
  return root * root;
}

/** Where the two laws of a hot plate facing up cross: (0.54/0.15)^12. */
const PLATE_CROSSING = Math.pow(0.54 / 0.15, 12);

/**
 * Hot plate facing up (or cold plate facing down): the larger of 0.54 Ra^(1/4) and 0.15 Ra^(1/3); they cross at Ra
 * 4.7e6.
 * @param Ra on area over perimeter; published 1e4-1e7 and 1e7-1e11
 * @returns mean Nusselt number on area over perimeter
 * @example nusseltPlateUp(1e6) // 17.08
 * Reference: McAdams (1954), Heat Transmission, 3rd ed.; length after Goldstein, Sparrow & Jones (1973).
 */
export function nusseltPlateUp(Ra: number): number {
  const size = Math.abs(Ra);
  return size < PLATE_CROSSING ? 0.54 * Math.sqrt(Math.sqrt(size)) : 0.15 * Math.cbrt(size);
}

/**
 * Hot plate facing down (or cold plate facing up): 0.52 Ra^(1/5).
 * @param Ra on area over perimeter; published 1e4-1e9
 * @returns mean Nusselt number on area over perimeter
 * @example nusseltPlateDown(1e5) // 5.2
 * Reference: Radziemska & Lewandowski (2001), Applied Energy 68, 347-366.
 */
export function nusseltPlateDown(Ra: number): number {
  // half the price of a power
  return 0.52 * Math.exp(0.2 * Math.log(Math.abs(Ra)));
}
