/**
 * Biot number, h L/k. A body counts as one temperature while it is below 0.1.
 * @param coefficient [W/(m2 K)]
 * @param length volume over area: the thickness of a plate heated on one side [m]
 * @param conductivity [W/(m K)]
 * @returns [-]
 * @example biot(15, 0.00635, 50) // 0.001905
 * Reference: Incropera et al. (2007), 6th ed., eq. 5.10.
 */
export function biot(coefficient: number, length: number, conductivity: number): number {
  return (coefficient * length) / conductivity;
}
