/** Fins of uniform section: how far heat runs along a plate or rod that loses it from its surface. */

export interface FinSection {
  /** perimeter that loses heat [m] */
  perimeter: number;
  /** section that conducts [m2] */
  section: number;
  /** [W/(m K)] */
  conductivity: number;
  /** [W/(m2 K)] */
  coefficient: number;
}

/**
 * Fin parameter m = sqrt(h P/(k A)).
 * @returns [1/m]
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.65.
 */
export function finParameter({ perimeter, section, conductivity, coefficient }: FinSection): number {
  return Math.sqrt((coefficient * perimeter) / (conductivity * section));
}

/**
 * Heat into an infinitely long fin, sqrt(h P k A) theta.
 * @param excess temperature of the base above the fluid [K]
 * @returns [W]
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.80.
 */
export function infiniteFinHeat(fin: FinSection, excess: number): number {
  return finParameter(fin) * fin.conductivity * fin.section * excess;
}

/**
 * Length from which a fin counts as infinite, 2.65/m: it then gives 99 % of the heat.
 * @returns [m]
 * Reference: Incropera et al. (2007), 6th ed., Example 3.9.
 */
export function infiniteFinLength(fin: FinSection): number {
  return 2.65 / finParameter(fin);
}

/**
 * Heat into a fin with an adiabatic tip, sqrt(h P k A) theta tanh(m L). A tip that loses heat is met by the corrected
 * length L + t/2 (straight) or L + D/4 (pin).
 * @param length [m], corrected where the tip is open
 * @returns [W]
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.76 and 3.88.
 */
export function finHeat(fin: FinSection, length: number, excess: number): number {
  return infiniteFinHeat(fin, excess) * Math.tanh(finParameter(fin) * length);
}

/**
 * Efficiency of a straight or pin fin, tanh(m L)/(m L).
 * @param length [m], corrected where the tip is open
 * @returns [-], 1 for a length of 0
 * @example finEfficiency(0) // 1
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.87 and 3.89.
 */
export function finEfficiency(parameter: number, length: number): number {
  const mL = parameter * length;
  return mL < 1e-6 ? 1 : Math.tanh(mL) / mL;
}

interface AnnularFin {
  /** radius of the base and, corrected by half the thickness, of the tip [m] */
  baseRadius: number;
  tipRadius: number;
  thickness: number;
  conductivity: number;
  coefficient: number;
}

/**
 * Heat from a cylinder with annular fins: h theta [N eta Af + bare area], Af = 2 pi (r2^2 - r1^2).
 * @param height of the cylinder [m]; count of fins; efficiency of one; excess over the fluid [K]
 * @returns [W]
 * Reference: Incropera et al. (2007), 6th ed., Example 3.10.
 */
export function finnedCylinderHeat(
  fin: Pick<AnnularFin, 'baseRadius' | 'tipRadius' | 'thickness' | 'coefficient'>,
  { height, count, efficiency, excess }: { height: number; count: number; efficiency: number; excess: number },
): number {
  const finArea = 2 * Math.PI * (fin.tipRadius ** 2 - fin.baseRadius ** 2);
  const bare = 2 * Math.PI * fin.baseRadius * (height - count * fin.thickness);
  return fin.coefficient * excess * (count * efficiency * finArea + bare);
}
