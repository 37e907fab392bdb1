/** Pressures of standing gas and of wind. Draft is positive where a column pulls. */
import { GRAVITY } from './constants.js';

/**
 * Pressure of a column of gas at rest, rho g H.
 * @param density [kg/m3], or a difference of densities
 * @param height [m]
 * @returns [Pa]
 * @example columnPressure(1.2, 10) // 117.7 Pa
 * Reference: hydrostatics.
 */
export function columnPressure(density: number, height: number): number {
  return density * GRAVITY * height;
}

/**
 * Theoretical (no-flow) draft of a column of lighter gas, (rho_out - rho) g H; with the molar mass of air on both sides
 * this is the handbooks' (g/R) p H (1/To - 1/Tg).
 * @param outdoorDensity, gasDensity [kg/m3]
 * @param height of the column [m]
 * @returns [Pa]; negative when the gas is the denser
 * @example theoreticalDraft(1.2169, 0.7058, 10) // 50.1 Pa
 * Reference: hydrostatics; ASHRAE Handbook - HVAC Systems and Equipment (2016), ch. 35.
 */
export function theoreticalDraft(outdoorDensity: number, gasDensity: number, height: number): number {
  return columnPressure(outdoorDensity - gasDensity, height);
}

/**
 * Height at which a body of gas has the pressure of the outdoor air, p0/[(rho - rho_out) g].
 * @param groundPressure of the gas against outdoors, carried down to the ground [Pa]
 * @param gasDensity, outdoorDensity [kg/m3]
 * @returns [m above the ground]; null where the densities differ by less than some 0.0001 kg/m3: there is no such
 * height
 * @example neutralHeight(-5, 0.7, 1.2) // 1.02 m
 * Reference: hydrostatics.
 */
export function neutralHeight(groundPressure: number, gasDensity: number, outdoorDensity: number): number | null {
  const lightness = (gasDensity - outdoorDensity) * GRAVITY;
  return Math.abs(lightness) > 1e-3 ? groundPressure / lightness : null;
}

/**
 * Pressure of wind at an opening, Cp rho V^2/2.
 * @param coefficient pressure coefficient Cp [-]; -1 to 1
 * @param density of the outdoor air [kg/m3]
 * @param wind [m/s]
 * @returns [Pa] above still air
 * @example windPressure(0.5, 1.2, 5) // 7.5 Pa
 * Reference: Bernoulli; ASHRAE Handbook - Fundamentals (2017), ch. 24.
 */
export function windPressure(coefficient: number, density: number, wind: number): number {
  return coefficient * 0.5 * density * wind * wind;
}
