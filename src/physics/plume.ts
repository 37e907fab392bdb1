import { GRAVITY } from './constants.js';

/**
 * Density times temperature of air at one atmosphere and its specific heat, as the plume relations were fitted with.
 */
export const AIR_HEAT = 1006; // J/(kg K)

/** Poreh's constant: 0.44 to 0.66 in print. */
const SPILL = 0.44;
/**
 * Below this heat flow of a jet its entrainment falls off in proportion [W]: a cube root has no finite slope at
 * nothing.
 */
const LEAST_HEAT = 100;

/**
 * Gas that a hot stream takes in per metre of its rise, once it has come through an opening and turned upwards:
 * m' = C (TL/T)^(2/3) (g rhoL^2 / (c TL))^(1/3) [c (T - TL) m_in]^(1/3) w^(2/3).
 * @param excess heat that the stream carries above the gas that it rises through [W]; none or less gives nothing
 * @param stream its temperature [K]
 * @param width of the opening [m]
 * @param density of the gas that it rises through [kg/m3]
 * @param temperature of that gas [K]
 * @returns [kg/(s m)]
 * @example jetEntrainment(3772.5, 450, 0.24, 1.177, 300) // 0.0718 kg/(s m)
 * Reference: Poreh, Morgan, Marshall & Harrison (1998), Fire Safety Journal 30, 1, as quoted in NIST TN 1889v1, for
 * plumes that spill from a wide opening into a large space. For a square throat it is a stretch: the factor on it is an
 * estimate of a design.
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

/**
 * Flames lower than this share of the fire's width count as so high: below them a plume takes in gas in proportion to
 * its rise.
 */
const LEAST_FLAME = 0.1;

/**
 * Gas that a fire's plume carries at a height over the fire: above the flames m = 0.196 (g rho^2 / (c T))^(1/3)
 * Qc^(1/3) d^(5/3) [1 + 2.9 Qc^(2/3) / ((g^(1/2) c rho T)^(2/3) d^(5/3))], d from the virtual origin; within them, up
 * to L = D (3.7 Q*^(2/5) - 1.02), in proportion to the height.
 * @param convective heat of the fire less what it radiates [W]; none or less gives nothing
 * @param height over the fire [m]
 * @param origin height of the virtual origin over the fire, by `plumeOrigin` [m]
 * @param across diameter of the fire [m]
 * @param density of the gas that it rises through [kg/m3]
 * @param temperature of that gas [K]
 * @returns [kg/s]
 * @example plumeFlow(50320, 2, 0.1377, 0.3, 1.177, 300) // 0.8204 kg/s
 * Reference: Heskestad (1984), Fire Safety Journal 7, 25, as quoted in NIST TN 1889v1.
 */
export function plumeFlow(
  convective: number,
  height: number,
  origin: number,
  across: number,
  density: number,
  temperature: number,
): number {
  if (convective <= 0 || height <= 0) return 0;
  const reach = 1.02 * across;
  const flame = Math.max(LEAST_FLAME * across, ((origin + reach) * 3.7) / 1.4 - reach);
  const rise = Math.cbrt(Math.max(flame, height) - origin);
  const drive = Math.cbrt((GRAVITY * density * density) / (AIR_HEAT * temperature));
  const heat = convective / Math.cbrt(convective * convective + LEAST_HEAT * LEAST_HEAT);
  const unit = Math.cbrt(Math.sqrt(GRAVITY) * AIR_HEAT * density * temperature);
  const flow = 0.196 * drive * (heat * rise ** 5 + (2.9 * convective) / (unit * unit));
  return height < flame ? (flow * height) / flame : flow;
}
