/** Sky over a site: radiant temperature and cloud. */

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
