/**
 * Carbon steel and stainless steel: specific heat, enthalpy and conductivity against temperature.
 *
 * Carbon steel: EN 1993-1-2:2005, 3.4.1.2 and 3.4.1.3; stainless: its Annex C, C.3.2 and C.3.3. Both published for
 * 20-1200 °C; outside, specific heat and conductivity hold the value of the limit. Enthalpies are zero at 20 °C and are
 * the closed-form integrals of the specific heat, piece by piece, so that heating through the peak at 735 °C (5000
 * J/(kg K)) loses no energy whatever the time step. The specific heat itself steps by 0.04 % at 600 °C and 0.07 % at
 * 900 °C, as the standard has it; enthalpy is continuous there.
 */
import { ZERO_CELSIUS } from './constants.js';

/** Density of carbon steel [kg/m3], independent of temperature. EN 1993-1-2:2005, 3.2.2. */
const CARBON_DENSITY = 7850;

/** Density of austenitic stainless steel [kg/m3]. EN 10088-1, 1.4301 (from memory). */
const STAINLESS_DENSITY = 7900;

/** Kinds of steel that plate may be of. */
export type Steel = 'carbon' | 'stainless';

/**
 * Density of a steel, independent of temperature.
 * @param steel which
 * @returns [kg/m3]
 * @example steelDensity('carbon') // 7850 kg/m3
 * Reference: EN 1993-1-2:2005, 3.2.2; EN 10088-1, 1.4301 (from memory).
 */
export function steelDensity(steel: Steel): number {
  return steel === 'stainless' ? STAINLESS_DENSITY : CARBON_DENSITY;
}

const LOWEST = 20; // °C
const HIGHEST = 1200; // °C

/** Antiderivative of 425 + 0.773 t - 1.69e-3 t^2 + 2.22e-6 t^3, t in °C. */
function ferriteIntegral(t: number): number {
  return t * (425 + t * (0.773 / 2 + t * (-1.69e-3 / 3 + (t * 2.22e-6) / 4)));
}

function ferriteHeat(t: number): number {
  return 425 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6));
}

const FERRITE_AT_20 = ferriteIntegral(LOWEST);
const CP_20 = ferriteHeat(LOWEST);
const H_600 = ferriteIntegral(600) - FERRITE_AT_20;
const H_735 = H_600 + 666 * (735 - 600) + 13002 * Math.log((738 - 600) / (738 - 735));
const H_900 = H_735 + 545 * (900 - 735) + 17820 * Math.log((900 - 731) / (735 - 731));

/**
 * Specific heat of carbon steel, EN 1993-1-2 eq. (3.2a-d).
 * @param T [K]; 20-1200 °C, held outside
 * @returns [J/(kg K)]
 * @example steelSpecificHeat(673.15) // 605.9 J/(kg K)
 * Reference: EN 1993-1-2:2005, 3.4.1.2.
 */
export function steelSpecificHeat(T: number): number {
  const t = T - ZERO_CELSIUS;
  if (t < LOWEST) return CP_20;
  if (t < 600) return ferriteHeat(t);
  if (t < 735) return 666 + 13002 / (738 - t);
  if (t < 900) return 545 + 17820 / (t - 731);
  return 650;
}

/**
 * Enthalpy of carbon steel above 20 °C, the exact integral of `steelSpecificHeat`.
 * @param T [K]; any
 * @returns [J/kg]; negative below 20 °C
 * @example steelEnthalpy(673.15) // 201300 J/kg
 * Reference: integral of EN 1993-1-2:2005, 3.4.1.2.
 */
export function steelEnthalpy(T: number): number {
  const t = T - ZERO_CELSIUS;
  if (t < LOWEST) return CP_20 * (t - LOWEST);
  if (t < 600) return ferriteIntegral(t) - FERRITE_AT_20;
  if (t < 735) return H_600 + 666 * (t - 600) + 13002 * Math.log((738 - 600) / (738 - t));
  if (t < 900) return H_735 + 545 * (t - 735) + 17820 * Math.log((t - 731) / (735 - 731));
  return H_900 + 650 * (t - 900);
}

/**
 * Thermal conductivity of carbon steel: 54 - 0.0333 t, and 27.3 from 800 °C on; EN 1993-1-2 eq. (3.3a, b). The standard
 * steps from 27.36 to 27.3 at 800 °C; here the line runs on to 801.8 °C where it meets 27.3.
 * @param T [K]; 20-1200 °C, held outside
 * @returns [W/(m K)]
 * @example steelConductivity(673.15) // 40.68 W/(m K)
 * Reference: EN 1993-1-2:2005, 3.4.1.3.
 */
export function steelConductivity(T: number): number {
  const t = T - ZERO_CELSIUS;
  return Math.max(27.3, 54 - 3.33e-2 * Math.max(t, LOWEST));
}

function stainlessIntegral(t: number): number {
  return t * (450 + t * (0.28 / 2 + t * (-2.91e-4 / 3 + (t * 1.34e-7) / 4)));
}

const STAINLESS_AT_20 = stainlessIntegral(LOWEST);
const STAINLESS_AT_1200 = stainlessIntegral(HIGHEST);

/**
 * Specific heat of stainless steel, 450 + 0.280 t - 2.91e-4 t^2 + 1.34e-7 t^3; EN 1993-1-2 Annex C, eq. (C.6).
 * @param T [K]; 20-1200 °C, held outside
 * @returns [J/(kg K)]
 * @example stainlessSpecificHeat(773.15) // 534 J/(kg K)
 * Reference: EN 1993-1-2:2005, Annex C.
 */
export function stainlessSpecificHeat(T: number): number {
  const t = Math.min(Math.max(T - ZERO_CELSIUS, LOWEST), HIGHEST);
  return 450 + t * (0.28 + t * (-2.91e-4 + t * 1.34e-7));
}

/**
 * Enthalpy of stainless steel above 20 °C, the exact integral of `stainlessSpecificHeat`.
 * @param T [K]; any
 * @returns [J/kg]; negative below 20 °C
 * @example stainlessEnthalpy(773.15) // 240900 J/kg
 * Reference: integral of EN 1993-1-2:2005, Annex C.
 */
export function stainlessEnthalpy(T: number): number {
  const t = T - ZERO_CELSIUS;
  if (t < LOWEST) return stainlessSpecificHeat(T) * (t - LOWEST);
  if (t < HIGHEST) return stainlessIntegral(t) - STAINLESS_AT_20;
  return STAINLESS_AT_1200 - STAINLESS_AT_20 + stainlessSpecificHeat(T) * (t - HIGHEST);
}

/**
 * Thermal conductivity of stainless steel, 14.6 + 0.0127 t; EN 1993-1-2 Annex C, eq. (C.7).
 * @param T [K]; 20-1200 °C, held outside
 * @returns [W/(m K)]
 * @example stainlessConductivity(773.15) // 20.95 W/(m K)
 * Reference: EN 1993-1-2:2005, Annex C.
 */
export function stainlessConductivity(T: number): number {
  return 14.6 + 1.27e-2 * Math.min(Math.max(T - ZERO_CELSIUS, LOWEST), HIGHEST);
}
