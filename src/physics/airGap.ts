/** Air between a wall and a sheet that stands before it: shut in between them, or rising through from below. */
import { rayleigh } from './freeConvection.js';

/** Gas in a gap, at its mean temperature. */
interface GapGas {
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
 * @example annulusConductivity({ innerRadius: 0.3, outerRadius: 0.302 }, { temperature: 350, kinematicViscosity: 2e-5, diffusivity: 2.9e-5, conductivity: 0.03 }, 10) // 0.0300 W/(m K), a gap too thin for air to turn over in
 * Reference: Raithby & Hollands (1975), Adv. Heat Transfer 11, 265, as in Incropera et al. (2007), eq. 9.58-9.60.
 */
export function annulusConductivity(
  { innerRadius, outerRadius }: { innerRadius: number; outerRadius: number },
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

/**
 * Air shut in between upright walls: Nu = 0.42 Ra^(1/4) Pr^0.012 (H/L)^(-0.3), never below 1 (conduction).
 * @param Ra on the gap L
 * @param aspect height over gap, H/L
 * @returns Nusselt number on the gap; published for aspect 10-40, Ra 1e4-1e7
 * @example shutUprightNusselt(38600, 24, 0.7) // 2.26
 * Reference: MacGregor & Emery (1969), J. Heat Transfer 91, 391, as in Incropera et al. (2007), eq. 9.52.
 */
export function shutUprightNusselt(Ra: number, aspect: number, Pr: number): number {
  return Math.max(1, (0.42 * Math.pow(Ra, 0.25) * Math.pow(Pr, 0.012)) / Math.pow(aspect, 0.3));
}

/**
 * Air shut in between level plates, the lower one the hotter: Nu = 1 + 1.44 [1 - 1708/Ra]+ + [(Ra/5830)^(1/3) - 1]+,
 * with [x]+ the larger of x and 0. With the upper one the hotter it stands still, and Nu is 1.
 * @param Ra on the gap; published up to 1e8
 * @returns Nusselt number on the gap
 * @example shutLevelNusselt(38600) // 3.25
 * Reference: Hollands, Raithby & Konicek (1975), Int. J. Heat Mass Transfer 18, 879 (from memory), and Hollands et al.
 * (1976), J. Heat Transfer 98, 189, at no tilt, as in Incropera et al. (2007), eq. 9.54.
 */
export function shutLevelNusselt(Ra: number): number {
  return 1 + Math.max(0, 1.44 * (1 - 1708 / Ra)) + Math.max(0, Math.cbrt(Ra / 5830) - 1);
}

/**
 * A wall of an upright channel that is open below and above, both walls as hot: Nu = [576/El^2 + 2.87/El^(1/2)]^(-1/2),
 * against the air that comes in below.
 * @param El Elenbaas number, Ra on the gap S times S over the height
 * @returns Nusselt number on the gap
 * @example openGapNusselt(1000) // 3.31
 * Reference: Bar-Cohen & Rohsenow (1984), J. Heat Transfer 106, 116, as in Incropera et al. (2007), eq. 9.49 and Table
 * 9.3.
 */
export function openGapNusselt(El: number): number {
  return El > 0 ? 1 / Math.sqrt(576 / (El * El) + 2.87 / Math.sqrt(El)) : 0;
}
