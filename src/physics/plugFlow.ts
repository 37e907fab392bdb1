/**
 * Share of a pipe's wall heat by which its outflow is colder than its mean: with N = U / (m cp) the gas leaves at T* +
 * phi (T - T*), phi = N / (e^N - 1), T the mean and T* the temperature of the walls, so that of the heat U (T - T*)
 * that the walls take the share (1 - phi) / N is missing in what leaves.
 *
 * @param conductance from gas to walls [W/K]
 * @param capacityFlow mass flow times specific heat [W/K]; 0 or more
 * @returns [-]; half where little is lost on the way, falling to none where the gas has long become as cold as the
 * walls
 * @example outflowDeficit(50, 100) // 0.4585 -
 * Reference: exact solution of dT/dx = -(U / (m cp L)) (T - T*), coefficients constant along the pipe.
 */
export function outflowDeficit(conductance: number, capacityFlow: number): number {
  if (!(capacityFlow > 0)) return 0;
  const n = conductance / capacityFlow;
  if (n < 1e-3) return 0.5 - n / 12;
  if (n > 500) return 1 / n;
  return (1 - n / Math.expm1(n)) / n;
}
