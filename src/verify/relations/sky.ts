/** Sky and wind at a site: radiant sky temperature, cloud, wind speed near the ground. */

/**
 * Clear-sky temperature after Swinbank, 0.0552 T^1.5.
 * @param air [K]; from measurements near 0-30 °C
 * @returns [K]
 * @example swinbankSky(293.15) // 277.06
 * Reference: Swinbank (1963), Q. J. R. Meteorol. Soc. 89, 339-348.
 */
export function swinbankSky(air: number): number {
  return 0.0552 * air * Math.sqrt(air);
}

/**
 * Factor of cloud on the emissivity of a clear sky, 1 + 0.0224 N - 0.0035 N^2 + 0.00028 N^3.
 * @param tenths of the sky covered, 0-10
 * @returns [-]
 * Reference: Clark & Allen (1978), Proc. 2nd National Passive Solar Conf.; Walton (1983), NBSIR 83-2655.
 */
export function cloudFactor(tenths: number): number {
  return 1 + tenths * (0.0224 + tenths * (-0.0035 + tenths * 0.00028));
}

/** Boundary layer of a terrain: exponent and depth [m]. ASHRAE Handbook - Fundamentals (2005), ch. 16. */
export const TERRAIN = {
  open: { exponent: 0.14, depth: 270 },
  suburban: { exponent: 0.22, depth: 370 },
  city: { exponent: 0.33, depth: 460 },
} as const;

export type Terrain = keyof typeof TERRAIN;

/**
 * Wind at a height over that of a weather station (10 m, open country): (270/10)^0.14 (z/d)^a.
 * @param height above the ground [m]
 * @returns [-]
 * @example windProfile(2, 'suburban') // 0.503
 * Reference: ASHRAE Handbook - Fundamentals (2005), ch. 16, power law.
 */
export function windProfile(height: number, terrain: Terrain): number {
  const station = TERRAIN.open;
  const { exponent, depth } = TERRAIN[terrain];
  return Math.pow(station.depth / 10, station.exponent) * Math.pow(height / depth, exponent);
}
