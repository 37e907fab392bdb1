/** Steady conduction through round layers. */

interface RoundLayer {
  innerRadius: number;
  outerRadius: number;
  /** [W/(m K)] */
  conductivity: number;
}

/**
 * Heat through a round layer per length, 2 pi k dT/ln(r2/r1).
 * @param deltaT inner less outer surface [K]
 * @returns [W/m]
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.27.
 */
export function roundLayerHeat({ innerRadius, outerRadius, conductivity }: RoundLayer, deltaT: number): number {
  return (2 * Math.PI * conductivity * deltaT) / Math.log(outerRadius / innerRadius);
}
