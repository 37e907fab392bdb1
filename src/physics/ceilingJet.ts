/**
 * The roof that a fire's plume strikes: how fast and how hot gas runs along under it, and what that gives to the roof.
 */
import { airPrandtl, AIR_GAS_CONSTANT } from './air.js';
import { GRAVITY } from './constants.js';
import { AIR_HEAT } from './plume.js';

/**
 * Below this a fire's plume fades out [W]: its roots have no finite slope at nothing. At ten times as much it takes
 * half a percent.
 */
const LEAST_FIRE = 100;
/** Points each way at which a roof is sampled. */
const POINTS = 24;
/** Plume rise below which the fire reaches the roof [share of the height]. */
const LEAST_RISE = 0.1;
/** A flame's mean excess over ambient, which no gas of it goes beyond [K]. */
const FLAME_EXCESS = 900;
/** Friction factor of the jet on a rough ceiling. */
const FRICTION = 0.03;
/** Rounding where the gas itself comes near a flame's temperature [K]. */
const ROUND = 10;

/** A level roof over the middle of a fire [m]. */
interface StruckRoof {
  length: number;
  width: number;
  /** over the fire */
  height: number;
}

/** Means over a roof: of speed over the cube root of the fire in kilowatt, and of excess over that at the axis. */
export interface JetShape {
  speed: number;
  excess: number;
}

/**
 * Shape of the jet under a roof, as means over its area: speed 0.96 (Q/H)^(1/3) within 0.15 H of the axis, else
 * 0.195 Q^(1/3) H^(1/2) / r^(5/6); excess that at the axis within 0.2 H, else 0.182 (0.225 + 0.27 r/H)^(-4/3) of it.
 * @param roof sizes [m]
 * @returns speed [m/s per kW^(1/3)], excess [-]
 * @example jetShape({ length: 2.7, width: 1.8, height: 1.6 }).excess // 0.7025 -
 * Reference: Alpert, in the SFPE Handbook of Fire Protection Engineering, for a wide smooth ceiling (as in NIST TN
 * 1889v1).
 */
export function jetShape({ length, width, height }: StruckRoof): JetShape {
  let speed = 0;
  let excess = 0;
  for (let i = 0; i < POINTS; i++) {
    for (let j = 0; j < POINTS; j++) {
      const r = Math.hypot((0.5 * length * (i + 0.5)) / POINTS, (0.5 * width * (j + 0.5)) / POINTS);
      const out = r / height;
      speed += out < 0.15 ? 0.96 / Math.cbrt(height) : (0.195 * Math.sqrt(height)) / Math.pow(r, 5 / 6);
      excess += out < 0.2 ? 1 : 0.182 * Math.pow(0.225 + 0.27 * out, -4 / 3);
    }
  }
  return { speed: speed / POINTS ** 2, excess: excess / POINTS ** 2 };
}

/** Power of a heat flow, made straight below `LEAST_FIRE` [W]. */
function rooted(heat: number, power: number): number {
  return heat * Math.pow(heat * heat + LEAST_FIRE * LEAST_FIRE, 0.5 * (power - 1));
}

/**
 * Height of a fire plume's virtual origin over the fire: z0 = D (1.4 Q*^(2/5) - 1.02), Q* = Q / (rho c T (g D)^(1/2)
 * D^2).
 * @param heat of the fire [W]
 * @param across its diameter D [m]
 * @param density, temperature of the gas that it rises in [kg/m3], [K]
 * @returns [m]
 * @example plumeOrigin(460e3, 0.3385, 1.07, 330) // 0.638 m
 * Reference: Heskestad (1983), Fire Safety Journal 5, 109, as quoted in NIST TN 1889v1.
 */
export function plumeOrigin(heat: number, across: number, density: number, temperature: number): number {
  const unit = density * AIR_HEAT * temperature * Math.sqrt(GRAVITY * across) * across * across;
  return across * (1.4 * (rooted(heat, 0.4) / Math.pow(unit, 0.4)) - 1.02);
}

/**
 * Excess of a plume's axis over the gas that it rises in: 9.1 (T / (g c^2 rho^2))^(1/3) Qc^(2/3) (z - z0)^(-5/3), its
 * gas never beyond 900 K over ambient, nor the excess below nothing.
 * @param convective heat of the fire less what it radiates, Qc [W]
 * @param rise above the virtual origin, z - z0 [m]; at least a tenth of `height` is taken
 * @param height of the roof over the fire [m]
 * @param temperature of the gas that it rises in [K]
 * @param ambient outdoors [K]
 * @param pressure absolute [Pa]
 * @returns [K]
 * @example plumeExcess(14000, 1, 1.2, 400, 293, 101325) // 196.8 K
 * Reference: Heskestad, in the SFPE Handbook of Fire Protection Engineering, as quoted in NIST TN 1889v1. Where flames
 * reach the roof it is the limit that counts, and the limit is an estimate.
 */
export function plumeExcess(
  convective: number,
  rise: number,
  height: number,
  temperature: number,
  ambient: number,
  pressure: number,
): number {
  const density = pressure / (AIR_GAS_CONSTANT * temperature);
  const drive = Math.cbrt(temperature / (GRAVITY * (AIR_HEAT * density) ** 2));
  const least = LEAST_RISE * height;
  const over = least + 0.5 * (rise - least + Math.hypot(rise - least, 0.1 * least));
  const excess = 9.1 * drive * rooted(convective, 2 / 3) * Math.pow(over, -5 / 3);
  const left = ambient + FLAME_EXCESS - temperature;
  const most = 0.5 * (left + Math.hypot(left, 2 * ROUND));
  return excess / Math.pow(1 + (excess / most) ** 4, 0.25);
}

/**
 * Mean height of a fire's flames: 0.235 Q^(2/5) - 1.02 D, Q in kilowatt.
 * @param heat of the fire [W]
 * @param across its diameter [m]
 * @returns [m]; 0 where the flames break up into small ones
 * @example flameHeight(20000, 0.3) // 0.473 m
 * Reference: Heskestad (1983), Fire Safety Journal 5, 103, as in the SFPE Handbook of Fire Protection Engineering.
 */
export function flameHeight(heat: number, across: number): number {
  return Math.max(0, 0.235 * Math.pow(1e-3 * heat, 0.4) - 1.02 * across);
}

/**
 * Convection from the jet to the roof, by likeness of friction and heat: h = rho c U (f/2) Pr^(-2/3), f = 0.03.
 * @param convective heat of the fire less what it radiates [W]
 * @param speed of the jet's shape, mean over the roof [m/s per kW^(1/3)]
 * @param temperature of the gas under the roof [K]
 * @param pressure absolute [Pa]
 * @returns [W/(m2 K)]
 * @example jetCoefficient(326.6e3, 0.3254, 850, 101325) // 17.6 W/(m2 K)
 * Reference: Alpert, in the SFPE Handbook of Fire Protection Engineering (form from memory). Printed
 * for the heat of the whole fire; what it radiates drives no gas, so that the rest is taken: 11 % less for propane.
 */
export function jetCoefficient(convective: number, speed: number, temperature: number, pressure: number): number {
  const density = pressure / (AIR_GAS_CONSTANT * temperature);
  const pr = airPrandtl(temperature);
  return (density * AIR_HEAT * speed * 0.1 * rooted(convective, 1 / 3) * 0.5 * FRICTION) / Math.cbrt(pr * pr);
}
