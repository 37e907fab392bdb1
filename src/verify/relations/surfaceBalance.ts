/**
 * Heat balance of a surface between air and radiant surroundings: what a sunlit plate settles at, what a bead reads.
 */
import { blackPower, blackPowerSlope, netGreyFlux, surfaceLoss } from '../../physics/radiation.js';

/** What a surface stands between: air, and surroundings that it radiates to. */
export interface SurfaceSetting {
  /** air or gas [K] */
  air: number;
  /** large radiant surroundings [K] */
  surroundings: number;
  /** convection coefficient [W/(m2 K)] */
  coefficient: number;
  /** grey, 0..1 */
  emissivity: number;
}

/**
 * Temperature at which a surface loses just what it absorbs. The loss rises with temperature, so that the root is the
 * only one; Newton from the warmer side of a convex function never overshoots.
 * @param absorbed other radiation absorbed (sun) [W/m2], not negative; 0 for a thermometer bead between gas and walls
 * @returns [K]
 * @example equilibriumTemperature({ air: 473.15, surroundings: 673.15, coefficient: 400, emissivity: 0.9 }) // 491.4
 * Reference: Incropera et al. (2007), 6th ed., Examples 1.7 and 5.2.
 */
export function equilibriumTemperature(setting: SurfaceSetting, absorbed = 0): number {
  const { air, surroundings, coefficient, emissivity } = setting;
  let T = Math.max(air, surroundings) + (coefficient > 0 ? absorbed / coefficient : 0);
  if (coefficient <= 0)
    T = Math.max(T, Math.sqrt(Math.sqrt(surroundings ** 4 + absorbed / (emissivity * blackPower(1)))));
  for (let n = 0; n < 100; n++) {
    const slope = coefficient + emissivity * blackPowerSlope(T);
    const step = (surfaceLoss(coefficient, T, air, emissivity, surroundings) - absorbed) / slope;
    T -= step;
    if (Math.abs(step) < 1e-10) break;
  }
  return T;
}

/**
 * Convection coefficient that holds a surface at a temperature under given absorbed radiation.
 * @returns [W/(m2 K)]
 */
export function coefficientForTemperature(
  surface: number,
  { air, surroundings, emissivity }: Omit<SurfaceSetting, 'coefficient'>,
  absorbed: number,
): number {
  return (absorbed - netGreyFlux(emissivity, surface, surroundings)) / (surface - air);
}

/**
 * True gas temperature from a thermometer's reading: Tg = T + eps sigma (T^4 - Twalls^4)/h.
 * @param reading [K]
 * @returns [K]
 * @example trueGasTemperature(293.15, { surroundings: 278.15, coefficient: 8.3, emissivity: 0.9 }) // 301.7
 * Reference: Holman, Heat Transfer (SI units), Example 8.23.
 */
export function trueGasTemperature(
  reading: number,
  { surroundings, coefficient, emissivity }: Omit<SurfaceSetting, 'air'>,
): number {
  return reading + netGreyFlux(emissivity, reading, surroundings) / coefficient;
}
