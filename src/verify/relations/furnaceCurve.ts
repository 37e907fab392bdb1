import { ZERO_CELSIUS } from '../../physics/constants.js';

/**
 * Standard fire-test curve, 20 + 345 log10(8 t + 1) °C, t in minutes.
 * @param time [s] from the start
 * @returns gas temperature [K]
 * @example standardFurnace(1800) // 1115 (842 °C)
 * Reference: ISO 834-1:1999; EN 1991-1-2:2002, 3.2.1.
 */
export function standardFurnace(time: number): number {
  return 20 + ZERO_CELSIUS + 345 * Math.log10((8 * Math.max(0, time)) / 60 + 1);
}
