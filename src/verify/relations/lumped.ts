/**
 * A body of one temperature in a fluid of constant temperature and coefficient: the exact answer that integrators must
 * meet.
 */
interface LumpedBody {
  /** [kg/m3] */
  density: number;
  /** [J/(kg K)] */
  specificHeat: number;
  /** volume over exposed area: D/6 of a sphere, half the thickness of a plate with both faces exposed [m] */
  volumePerArea: number;
  /** [W/(m2 K)] */
  coefficient: number;
}

/**
 * Time constant rho c (V/A)/h.
 * @returns [s]
 * Reference: Incropera et al. (2007), 6th ed., eq. 5.7.
 */
export function lumpedTimeConstant({ density, specificHeat, volumePerArea, coefficient }: LumpedBody): number {
  return (density * specificHeat * volumePerArea) / coefficient;
}

interface LumpedChange {
  /** [s] */
  timeConstant: number;
  /** of body at the start, and of the fluid [K] */
  start: number;
  fluid: number;
}

/**
 * Time until a temperature, tau ln[(T0 - Tf)/(T - Tf)].
 * @returns [s]; NaN never: throws
 * @throws RangeError when the temperature does not lie between start and fluid
 * @example lumpedTime(472.15, { timeConstant: 1, start: 298.15, fluid: 473.15 }) // 5.16
 */
export function lumpedTime(temperature: number, { timeConstant, start, fluid }: LumpedChange): number {
  const ratio = (start - fluid) / (temperature - fluid);
  if (!(ratio >= 1 && Number.isFinite(ratio))) {
    throw new RangeError(`lumpedTime: ${temperature} K must lie between the start ${start} K and the fluid ${fluid} K`);
  }
  return timeConstant * Math.log(ratio);
}
