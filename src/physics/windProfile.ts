/** Wind near the ground against that of a weather station. */

/** A station's anemometer above the ground [m], in open country. WMO practice, as ASHRAE Fundamentals takes it. */
const STATION_HEIGHT = 10;

/** Boundary layer of a terrain: exponent and depth [m]. ASHRAE Handbook - Fundamentals (2005), ch. 16, table 1. */
const TERRAINS = {
  open: { exponent: 0.14, depth: 270 },
  suburb: { exponent: 0.22, depth: 370 },
  city: { exponent: 0.33, depth: 460 },
} as const;

/** How rough the land round about is. */
export type Terrain = keyof typeof TERRAINS;

/** From the most open to the most sheltered. */
export const TERRAIN_NAMES = Object.keys(TERRAINS) as Terrain[];

/**
 * Wind at a height over that of a weather station (10 m, open country): (270/10)^0.14 (z/d)^a.
 *
 * The profile is that of the mean wind over a terrain, up to the depth of its boundary layer. It is meant for heights
 * of buildings; near the ground it is carried on as it is, and a fence, a wall or a gap between houses is not in it.
 *
 * @param height above the ground [m]; from 0 (no wind) to the boundary layer's depth, no limit is set
 * @returns [-]
 * @example windProfile(2, 'suburb') // 0.5031
 * Reference: ASHRAE Handbook - Fundamentals (2005), ch. 16, power law and table of terrains.
 */
export function windProfile(height: number, terrain: Terrain): number {
  const station = TERRAINS.open;
  const { exponent, depth } = TERRAINS[terrain];
  return Math.pow(station.depth / STATION_HEIGHT, station.exponent) * Math.pow(height / depth, exponent);
}
