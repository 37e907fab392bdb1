/**
 * What heat does to steel: where it scales away in air, where it creeps, and what is left of its strength.
 *
 * Limits for years of use; they are where something begins, not where it fails. A pit is heated and cooled time and
 * again, so for scaling the limit for intermittent service counts, which is the lower one of austenitic steel.
 */
import type { Steel } from '../../physics/steel.js';

interface Limit {
  /** [K] */
  limit: number;
  source: string;
}

interface SteelRow {
  /** above it the scale flakes off and the plate wastes away in air */
  scaling: Limit;
  /** above it steel under load gives slowly, and goes on giving */
  creep: Limit;
}

const celsius = (degrees: number): number => degrees + 273.15;

const CREEP = 'Applied Metallurgy and Corrosion Control, table 5.2, initial creep temperatures';

/** Temperatures [K] from which each steel scales and creeps. */
export const STEELS: Readonly<Record<Steel, SteelRow>> = {
  carbon: {
    scaling: {
      limit: celsius(538),
      source: 'High Temperature Oxidation, Inspectioneering Journal, July 2004: from 538 to 565 °C, lower edge taken',
    },
    creep: { limit: celsius(425), source: CREEP },
  },
  stainless: {
    scaling: {
      limit: celsius(870),
      source: 'ASM Metals Handbook, maximum service temperatures in dry air, type 304, intermittent (secondary)',
    },
    creep: { limit: celsius(565), source: CREEP },
  },
};

/** Yield strength of carbon steel over that when cold, by temperature [°C]: EN 1993-1-2:2005, table 3.1. */
const STRENGTH: readonly (readonly [number, number])[] = [
  [400, 1],
  [500, 0.78],
  [600, 0.47],
  [700, 0.23],
  [800, 0.11],
  [900, 0.06],
  [1000, 0.04],
  [1100, 0.02],
  [1200, 0],
];

/**
 * Share of its strength that carbon steel keeps at a temperature, for a short time: creep takes more.
 *
 * @param temperature [K]; 20-1200 °C
 * @returns 0 to 1, linear between the rows of the table as the standard has it, held outside
 * @example strengthLeft(773.15) // 0.78
 * Reference: EN 1993-1-2:2005, table 3.1, k_y.
 */
export function strengthLeft(temperature: number): number {
  const t = temperature - 273.15;
  const above = STRENGTH.findIndex(([each]) => each >= t);
  if (above === 0) return 1;
  if (above < 0) return 0;
  const [[t0, k0], [t1, k1]] = [STRENGTH[above - 1], STRENGTH[above]];
  return k0 + ((k1 - k0) * (t - t0)) / (t1 - t0);
}
