/**
 * Outside coefficients of building practice, dimensional and for surfaces the size of walls. The product does not use
 * them: they show how far respected rules of thumb lie from the relations it does use.
 */

/**
 * Wind, natural convection and radiation together, 5.7 + 3.8 V.
 * @param wind [m/s]; below 5
 * @returns [W/(m2 K)]
 * Reference: McAdams (1954), Heat Transmission, 3rd ed.
 */
export function mcAdamsWind(wind: number): number {
  return 5.7 + 3.8 * wind;
}

/**
 * Very smooth surface (glass), 8.23 + 3.33 V - 0.036 V^2.
 * @param wind [m/s]
 * @returns [W/(m2 K)]
 * Reference: ASHRAE Handbook - Fundamentals (1989), ch. 22.
 */
export function smoothSurfaceWind(wind: number): number {
  return 8.23 + wind * (3.33 - 0.036 * wind);
}

/** How a surface of a building stands. */
type Stand = 'vertical' | 'up' | 'down';

/**
 * Natural convection: vertical 1.31 dT^(1/3); heat flow up 9.482 dT^(1/3)/(7.283 - |cos|); down 1.810 dT^(1/3)/(1.382 +
 * |cos|).
 * @param deltaT [K], by its size; level surfaces, |cos| = 1
 * @param stand 'up' and 'down' name the direction of heat flow
 * @returns [W/(m2 K)]
 * Reference: Walton (1983), Thermal Analysis Research Program, NBSIR 83-2655.
 */
export function tarpNatural(deltaT: number, stand: Stand): number {
  const root = Math.cbrt(Math.abs(deltaT));
  if (stand === 'vertical') return 1.31 * root;
  return stand === 'up' ? (9.482 * root) / (7.283 - 1) : (1.81 * root) / (1.382 + 1);
}

/**
 * Wind on a wall, 2.537 Wf Rf sqrt(P V/A).
 * @param side windward 1, leeward 0.5 (Wf)
 * @param roughness multiplier Rf, 1.00 for glass
 * @param perimeter [m], area [m2], wind [m/s]
 * @returns [W/(m2 K)]
 * Reference: Sparrow, Ramsey & Mass (1979), J. Heat Transfer 101, 199-204.
 */
export function sparrowWind({
  side,
  roughness,
  perimeter,
  area,
  wind,
}: {
  side: 'windward' | 'leeward';
  roughness: number;
  perimeter: number;
  area: number;
  wind: number;
}): number {
  return 2.537 * (side === 'windward' ? 1 : 0.5) * roughness * Math.sqrt((perimeter * wind) / area);
}

/**
 * Window test unit: sqrt((0.84 dT^(1/3))^2 + (a V^b)^2), a 3.26, b 0.89 windward; 3.55, 0.617 leeward.
 * @returns [W/(m2 K)]
 * Reference: Yazdanian & Klems (1994), ASHRAE Transactions 100(1), 1087.
 */
export function testUnitWind(deltaT: number, wind: number, side: 'windward' | 'leeward'): number {
  const forced = side === 'windward' ? 3.26 * Math.pow(wind, 0.89) : 3.55 * Math.pow(wind, 0.617);
  return Math.hypot(0.84 * Math.cbrt(Math.abs(deltaT)), forced);
}
