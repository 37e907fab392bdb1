/**
 * Tanks and drums that pits are built of. Common practice, no source: makers differ by inches, and by a gauge or two of
 * plate. Lengths are between the seams of the heads; the gallons that a name gives are what it holds brimful, and hold
 * the sizes in check.
 */
import { siOf } from '../ranges.js';
import type { HeadKind } from '../heads.js';

interface Tank {
  /** outside [m] */
  diameter: number;
  /** between seams; of a drum all of it [m] */
  length: number;
  plate: number;
  heads: HeadKind;
}

const tank = (diameter: string, length: string, plate: string, heads: HeadKind): Tank => ({
  diameter: siOf('length', diameter),
  length: siOf('length', length),
  plate: siOf('plate', plate),
  heads,
});

/** Tanks by their usual names, with the sizes that they count as. */
export const TANKS = {
  '55 gal drum': tank('22-1/2 in', '33-1/2 in', '18 ga', 'flat'),
  '120 gal tank': tank('24 in', '54 in', '3/16 in', 'elliptical'),
  '250 gal tank': tank('30 in', '64 in', '3/16 in', 'hemispherical'),
  '320 gal tank': tank('30 in', '85 in', '3/16 in', 'hemispherical'),
  '500 gal tank': tank('37-1/2 in', '81 in', '7/32 in', 'hemispherical'),
  '1000 gal tank': tank('41 in', '151 in', '1/4 in', 'hemispherical'),
} as const;

/** A tank that `shell` may name. */
export type TankName = keyof typeof TANKS;
