/** Steady conduction through round layers, and natural convection in the gap between two pipes. */
import { rayleigh } from '../../physics/freeConvection.js';

export interface RoundLayer {
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

/** Gas in a gap, at its mean temperature. */
export interface GapGas {
  temperature: number;
  kinematicViscosity: number;
  /** [m2/s] */
  diffusivity: number;
  conductivity: number;
}

/**
 * Effective conductivity of gas between horizontal concentric cylinders:
 * k_eff/k = 0.386 [Pr/(0.861 + Pr)]^(1/4) Ra_c^(1/4), never below 1 (conduction), on the length
 * L_c = 2 [ln(ro/ri)]^(4/3)/(ri^(-3/5) + ro^(-3/5))^(5/3).
 * @param deltaT between the cylinders [K], by its size
 * @returns [W/(m K)]; published for Pr 0.7-6000 and Ra_c up to 1e7
 * Reference: Raithby & Hollands (1975), Adv. Heat Transfer 11, 265, as in Incropera et al. (2007), eq. 9.58-9.60.
 */
export function annulusConductivity(
  { innerRadius, outerRadius }: Pick<RoundLayer, 'innerRadius' | 'outerRadius'>,
  gas: GapGas,
  deltaT: number,
): number {
  const length =
    (2 * Math.pow(Math.log(outerRadius / innerRadius), 4 / 3)) /
    Math.pow(Math.pow(innerRadius, -0.6) + Math.pow(outerRadius, -0.6), 5 / 3);
  const Pr = gas.kinematicViscosity / gas.diffusivity;
  const Ra = rayleigh(deltaT, gas.temperature, length, gas.kinematicViscosity, Pr);
  return gas.conductivity * Math.max(1, 0.386 * Math.pow(Pr / (0.861 + Pr), 0.25) * Math.pow(Ra, 0.25));
}
