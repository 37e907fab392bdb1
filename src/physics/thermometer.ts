import { airConductivity, airKinematicViscosity, airPrandtl } from './air.js';
import { nusseltCrossCylinder } from './forcedConvection.js';
import { nusseltHorizontalCylinder, rayleigh } from './freeConvection.js';
import { mixedConvection } from './mixedConvection.js';
import { blackPowerSlope, surfaceLoss } from './radiation.js';

/** Stem of an ordinary probe or dial thermometer: 1/4 in across, smoked. Common practice, no source. */
export const STEM = { diameter: 0.00635, emissivity: 0.9, density: 7850, specificHeat: 500 } as const;

/**
 * Convection coefficient of a thermometer stem across the gas: free and forced Nusselt numbers of a cylinder, cubed
 * together.
 * @param gas, stem temperatures [K]
 * @param speed of the gas past it [m/s]
 * @param pressure absolute [Pa]
 * @param diameter of the stem [m]
 * @returns [W/(m2 K)]
 * @example stemCoefficient(400, 350, 1, 101325, 0.00635) // 42 W/(m2 K)
 * Reference: Churchill & Chu (1975), Churchill & Bernstein (1977), joined after Churchill (1977).
 */
export function stemCoefficient(gas: number, stem: number, speed: number, pressure: number, diameter: number): number {
  const film = 0.5 * (gas + stem);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const nu = airKinematicViscosity(film, pressure);
  const free = nusseltHorizontalCylinder(rayleigh(gas - stem, film, diameter, nu, pr), pr);
  const forced = nusseltCrossCylinder((speed * diameter) / nu, pr);
  return (k / diameter) * mixedConvection(free, forced);
}

/**
 * Heat that a stem takes up per surface: convection from the gas, radiation exchanged with the walls. The gas between
 * stem and walls counts as clear here.
 * @param gas temperature [K]
 * @param wallRadiant temperature whose black radiation is what the walls send [K] (their surface node)
 * @param stem its temperature [K]
 * @param speed of the gas past it [m/s]
 * @param pressure absolute [Pa]
 * @param diameter of the stem [m]
 * @param emissivity of the stem [-]
 * @returns [W/m2]
 * @example stemHeating(400, 400, 400, 1, 101325, 0.00635, 0.9) // 0 W/m2
 * Reference: Incropera et al. (2007), 6th ed., section 1.2, taken up instead of lost.
 */
export function stemHeating(
  gas: number,
  wallRadiant: number,
  stem: number,
  speed: number,
  pressure: number,
  diameter: number,
  emissivity: number,
): number {
  return -surfaceLoss(stemCoefficient(gas, stem, speed, pressure, diameter), stem, gas, emissivity, wallRadiant);
}

/**
 * SteadyOutcome reading of a thermometer: the stem temperature at which convection from the gas and radiation to the
 * walls balance. Solved by Newton inside a bracket; the balance falls with the stem temperature, so that there is one
 * answer.
 * @param gas, wallRadiant, speed, pressure, diameter, emissivity as in `stemHeating`
 * @returns [K], always between gas and walls
 * @example settledReading(400, 400, 1, 101325, 0.00635, 0.9) // 400 K
 * Reference: heat balance of a bead, Incropera et al. (2007), 6th ed., Example 5.2.
 */
export function settledReading(
  gas: number,
  wallRadiant: number,
  speed: number,
  pressure: number,
  diameter: number,
  emissivity: number,
): number {
  let low = Math.min(gas, wallRadiant);
  let high = Math.max(gas, wallRadiant);
  let stem = 0.5 * (low + high);
  for (let i = 0; i < 40 && high - low > 1e-10; i++) {
    const h = stemCoefficient(gas, stem, speed, pressure, diameter);
    const balance = -surfaceLoss(h, stem, gas, emissivity, wallRadiant);
    if (balance > 0) low = stem;
    else high = stem;
    const slope = h + emissivity * blackPowerSlope(stem);
    let next = stem + balance / slope;
    if (next <= low || next >= high) next = 0.5 * (low + high);
    if (Math.abs(next - stem) < 1e-10 * stem) return next;
    stem = next;
  }
  return stem;
}

/**
 * Heat capacity of a stem per surface, rho c D/4 times a fill: what is not steel inside a dial thermometer's stem.
 * @param diameter [m]
 * @param fill share of the stem that is solid [-]; an estimate, 0.2-1
 * @returns [J/(m2 K)]
 * @example stemCapacity(0.00635, 0.4) // 2492 J/(m2 K)
 * Reference: volume over surface of a cylinder, D/4.
 */
export function stemCapacity(diameter: number, fill: number): number {
  return (STEM.density * STEM.specificHeat * diameter * fill) / 4;
}
