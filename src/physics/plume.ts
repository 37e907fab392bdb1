import { GRAVITY } from './constants.js';

/** Density times temperature of air at one atmosphere and its specific heat, as the plume relations were fitted with. */
const AIR_HEAT = 1006; // J/(kg K)

/** The gas that a plume rises through. */
export interface Ambient {
  /** density [kg/m3] and temperature [K] */
  density: number;
  temperature: number;
}

/**
 * Height of a fire's virtual origin above its base [m]: z0 = D (1.4 Q*^(2/5) - 1.02), Q* = Q / (rho c T sqrt(g D) D^2).
 *
 * @param heat release [W], above 0; diameter of the fire, or of a square of the same area [m]
 * Validity: Q* from 0.1 to 1000 or so; pool and crib fires.
 * Source: Heskestad (1984), Fire Safety Journal 7, 25, as quoted in NIST TN 1889v1 (CFAST Technical Reference Guide).
 * @example virtualOrigin(62900, 0.3, { density: 1.177, temperature: 300 }) // 0.232 m
 */
export function virtualOrigin(heat: number, diameter: number, ambient: Ambient): number {
  return diameter * (1.4 * Math.pow(fireNumber(heat, diameter, ambient), 0.4) - 1.02);
}

function fireNumber(heat: number, diameter: number, { density, temperature }: Ambient): number {
  return heat / (density * AIR_HEAT * temperature * Math.sqrt(GRAVITY * diameter) * diameter * diameter);
}

/**
 * Gas that rises in the plume of a fire at a height above its base [kg/s]:
 * m = 0.196 (g rho^2 / (c T))^(1/3) Qc^(1/3) d^(5/3) [1 + 2.9 Qc^(2/3) / ((sqrt(g) c rho T)^(2/3) d^(5/3))], d = z - z0;
 * below the mean flame tip L = D (3.7 Q*^(2/5) - 1.02) in proportion to the height: m(L) z / L.
 *
 * @param z above the fire's base [m], 0 or more
 * @param fire heat: all of it [W]; convective: the part that does not leave as radiation [W]; diameter [m]
 * Validity: fires away from walls, in air that is at rest.
 * Source: Heskestad (1984), Fire Safety Journal 7, 25, as quoted in NIST TN 1889v1.
 * @example plumeMass(1, { heat: 62900, convective: 50320, diameter: 0.3 }, { density: 1.177, temperature: 300 }) // 0.295 kg/s
 */
export function plumeMass(
  z: number,
  fire: { heat: number; convective: number; diameter: number },
  ambient: Ambient,
): number {
  if (z <= 0 || fire.convective <= 0) return 0;
  const tip = fire.diameter * (3.7 * Math.pow(fireNumber(fire.heat, fire.diameter, ambient), 0.4) - 1.02);
  const z0 = virtualOrigin(fire.heat, fire.diameter, ambient);
  if (tip > 0 && z < tip) return (massAbove(tip - z0, fire.convective, ambient) * z) / tip;
  return massAbove(Math.max(0, z - z0), fire.convective, ambient);
}

function massAbove(d: number, convective: number, { density, temperature }: Ambient): number {
  const drive = Math.cbrt((GRAVITY * density * density * convective) / (AIR_HEAT * temperature));
  const heated = Math.cbrt((convective / (Math.sqrt(GRAVITY) * AIR_HEAT * density * temperature)) ** 2);
  return 0.196 * drive * (d ** (5 / 3) + 2.9 * heated);
}

/** Poreh's constant: 0.44 to 0.66 in print. */
const SPILL = 0.44;
/** Below this heat flow of a jet its entrainment falls off in proportion [W]: a cube root has no finite slope at nothing. */
const LEAST_HEAT = 100;

/**
 * Gas that a hot stream takes in per metre of its rise, once it has come through an opening and turned upwards [kg/(s m)]:
 * m' = C (TL/T)^(2/3) (g rhoL^2 / (c TL))^(1/3) [c (T - TL) m_in]^(1/3) w^(2/3).
 *
 * @param excess heat that the stream carries above the gas that it rises through [W]; none or less gives nothing
 * @param stream its temperature [K]
 * @param width of the opening [m]
 * @param density of the gas that it rises through [kg/m3]
 * @param temperature of that gas [K]
 * @returns [kg/(s m)]
 * Validity: plumes that spill from a wide opening into a large space; for a square throat a stretch, so that the factor on it
 * is an estimate of a design.
 * Source: Poreh, Morgan, Marshall & Harrison (1998), Fire Safety Journal 30, 1, as quoted in NIST TN 1889v1.
 * @example jetEntrainment(3772, 450, 0.24, 1.177, 300) // 0.0717 kg/(s m)
 */
export function jetEntrainment(
  excess: number,
  stream: number,
  width: number,
  density: number,
  temperature: number,
): number {
  if (excess <= 0) return 0;
  const rooted = excess / Math.cbrt(excess * excess + LEAST_HEAT * LEAST_HEAT);
  const ratio = Math.cbrt((temperature / stream) ** 2);
  const drive = Math.cbrt((GRAVITY * density * density) / (AIR_HEAT * temperature));
  return SPILL * ratio * drive * rooted * Math.cbrt(width * width);
}
