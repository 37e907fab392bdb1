/** What heat does to the stiffness and the size of steel. */
import { ZERO_CELSIUS } from './constants.js';
import type { Steel } from './steel.js';

/** Modulus when cold [Pa]. EN 1993-1-1:2005, 3.2.6; stainless: EN 1993-1-4:2006, 2.1.3 (from memory). */
const COLD_MODULUS: Readonly<Record<Steel, number>> = { carbon: 210e9, stainless: 200e9 };

/**
 * Share of the modulus at 20 °C, 100 °C and every 100 K on. EN 1993-1-2:2005, table 3.1 and Annex C, table C.1 (from
 * memory).
 */
const MODULUS_LEFT: Readonly<Record<Steel, readonly number[]>> = {
  carbon: [1, 1, 0.9, 0.8, 0.7, 0.6, 0.31, 0.13, 0.09, 0.0675, 0.045, 0.0225, 0],
  stainless: [1, 0.96, 0.92, 0.88, 0.84, 0.8, 0.76, 0.71, 0.63, 0.45, 0.2, 0.1, 0],
};

/**
 * Modulus of elasticity of hot steel.
 *
 * @param T [K]; 20-1200 °C, held outside; linear between the rows of the table
 * @returns [Pa]
 * @example steelModulus('carbon', 673.15) // 147e9 Pa
 * Reference: EN 1993-1-2:2005, table 3.1, k_E, and Annex C, table C.1 (from memory).
 */
export function steelModulus(steel: Steel, T: number): number {
  const t = Math.min(Math.max(T - ZERO_CELSIUS, 20), 1200);
  const left = MODULUS_LEFT[steel];
  const i = Math.min(left.length - 2, Math.floor(t / 100));
  const from = i === 0 ? 20 : 100 * i;
  const part = (t - from) / (100 * (i + 1) - from);
  return COLD_MODULUS[steel] * (left[i] + part * (left[i + 1] - left[i]));
}

/**
 * Elongation of steel over its length at 20 °C. Carbon: 1.2e-5 t + 0.4e-8 t2 - 2.416e-4, at most 1.1e-2, which it has
 * while its crystal changes, and 2e-5 t - 6.2e-3 after. Stainless: (16 + 4.79e-3 t - 1.243e-6 t2) (t - 20) 1e-6.
 *
 * @param T [K]; 20-1200 °C, held above; below 20 °C the same curve
 * @returns [-]
 * @example 1e6 * steelElongation('carbon', 673.15) // 5198.4 parts a million
 * Reference: EN 1993-1-2:2005, 3.4.1.1, eq. (3.1), and Annex C, eq. (C.1) (from memory).
 */
export function steelElongation(steel: Steel, T: number): number {
  const t = Math.min(T - ZERO_CELSIUS, 1200);
  if (steel === 'stainless') return (16 + t * (4.79e-3 - t * 1.243e-6)) * (t - 20) * 1e-6;
  const ferrite = t < 750 ? t * (1.2e-5 + t * 0.4e-8) - 2.416e-4 : Infinity;
  return Math.max(Math.min(ferrite, 1.1e-2), 2e-5 * t - 6.2e-3);
}

/**
 * Mean coefficient of expansion between two temperatures.
 *
 * @param from [K]
 * @param to [K]; may be the same: then the slope there
 * @returns [1/K]
 * @example 1e6 * steelExpansion('carbon', 473.15, 573.15) // 14.0 parts a million each kelvin
 * Reference: EN 1993-1-2:2005, 3.4.1.1, eq. (3.1), and Annex C, eq. (C.1) (from memory).
 */
export function steelExpansion(steel: Steel, from: number, to: number): number {
  const apart = Math.max(Math.abs(to - from), 1);
  const middle = 0.5 * (from + to);
  return (steelElongation(steel, middle + 0.5 * apart) - steelElongation(steel, middle - 0.5 * apart)) / apart;
}
