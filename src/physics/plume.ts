import { GRAVITY } from './constants.js';

/** Density times temperature of air at one atmosphere and its specific heat, as the plume relations were fitted with. */
export const AIR_HEAT = 1006; // J/(kg K)

/** Poreh's constant: 0.44 to 0.66 in print. */
const SPILL = 0.44;
/** Below this heat flow of a jet its entrainment falls off in proportion [W]: a cube root has no finite slope at nothing. */
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
 * Reference: Poreh, Morgan, Marshall & Harrison (1998), Fire Safety Journal 30, 1, as quoted in NIST TN 1889v1, for plumes that
 * spill from a wide opening into a large space. For a square throat it is a stretch: the factor on it is an estimate of a design.
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
