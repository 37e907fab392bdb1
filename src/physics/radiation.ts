/**
 * Radiation of black and grey, diffuse surfaces to large surroundings, and the loss of a surface that also convects.
 */
import { STEFAN_BOLTZMANN } from './constants.js';

/**
 * Emissive power of a black surface, sigma T^4.
 * @param T [K]
 * @returns [W/m2]
 * @example blackPower(473.15) // 2842 W/m2
 * Reference: Stefan-Boltzmann law.
 */
export function blackPower(T: number): number {
  const square = T * T;
  return STEFAN_BOLTZMANN * (square * square);
}

/**
 * Slope of the black emissive power, 4 sigma T^3.
 * @param T [K]
 * @returns [W/(m2 K)]
 * @example blackPowerSlope(300) // 6.12 W/(m2 K)
 * Reference: derivative of the Stefan-Boltzmann law.
 */
export function blackPowerSlope(T: number): number {
  return 4 * STEFAN_BOLTZMANN * T * T * T;
}

/**
 * Net flux from a small grey surface to large surroundings, eps sigma (Ts^4 - Tsur^4).
 * @param emissivity of the small surface [-]; 0-1
 * @param surface its temperature [K]
 * @param surroundings temperature of what it sees [K]
 * @returns [W/m2], positive when the surface loses
 * @example netGreyFlux(0.8, 473.15, 298.15) // 1915 W/m2
 * Reference: Incropera et al. (2007), 6th ed., eq. 1.7.
 */
export function netGreyFlux(emissivity: number, surface: number, surroundings: number): number {
  return emissivity * (blackPower(surface) - blackPower(surroundings));
}

/**
 * Radiation between two black temperatures per kelvin between them, sigma (a^2 + b^2)(a + b).
 * @param a, b temperatures [K]
 * @returns [W/(m2 K)]
 * @example radiantCoefficient(473.15, 298.15) // 13.68 W/(m2 K)
 * Reference: Incropera et al. (2007), 6th ed., eq. 1.9.
 */
export function radiantCoefficient(a: number, b: number): number {
  return STEFAN_BOLTZMANN * (a * a + b * b) * (a + b);
}

/**
 * Flux that a surface loses by convection and radiation, h (Ts - Tair) + eps sigma (Ts^4 - Tsur^4).
 * @param coefficient convection coefficient [W/(m2 K)]
 * @param surface temperature [K]
 * @param air temperature of the air or gas [K]
 * @param emissivity [-]; 0-1
 * @param surroundings temperature of large surroundings [K]
 * @returns [W/m2], negative when the surface takes up heat
 * @example surfaceLoss(15, 473.15, 298.15, 0.8, 298.15) // 4540 W/m2
 * Reference: Incropera et al. (2007), 6th ed., section 1.2; the numbers are those of its Example 1.2.
 */
export function surfaceLoss(
  coefficient: number,
  surface: number,
  air: number,
  emissivity: number,
  surroundings: number,
): number {
  return coefficient * (surface - air) + netGreyFlux(emissivity, surface, surroundings);
}
