import { AIR_GAS_CONSTANT, airConductivity, airPrandtl, airViscosity } from './air.js';
import { STEFAN_BOLTZMANN } from './constants.js';
import { nusseltCrossCylinder } from './forcedConvection.js';
import { nusseltHorizontalCylinder, rayleigh } from './freeConvection.js';

/** Stem of an ordinary probe or dial thermometer: 1/4 in across, smoked. Common practice, no source. */
export const STEM = { diameter: 0.00635, emissivity: 0.9, density: 7850, specificHeat: 500 } as const;

/**
 * Convection coefficient of a thermometer stem across the gas [W/(m2 K)]: free (Churchill & Chu 1975) and forced (Churchill &
 * Bernstein 1977) cubed together.
 *
 * @param gas, stem temperatures [K]; speed of the gas past it [m/s]; pressure [Pa]; diameter [m]
 */
export function stemCoefficient(gas: number, stem: number, speed: number, pressure: number, diameter: number): number {
  const film = 0.5 * (gas + stem);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const free = nusseltHorizontalCylinder(rayleigh(gas - stem, film, diameter, pressure), pr);
  const re = (speed * diameter * pressure) / (AIR_GAS_CONSTANT * film * airViscosity(film));
  const forced = nusseltCrossCylinder(re, pr);
  return (k / diameter) * Math.cbrt(free * free * free + forced * forced * forced);
}

/**
 * Heat that a stem takes up per surface [W/m2]: convection from the gas, radiation exchanged with the walls. The gas between
 * stem and walls counts as clear here.
 *
 * @param gas temperature [K]; speed past the stem [m/s]; pressure [Pa]
 * @param wallRadiant temperature whose black radiation is what the walls send [K] (their star point)
 * @param stem its temperature [K], diameter [m], emissivity [-]
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
  return (
    stemCoefficient(gas, stem, speed, pressure, diameter) * (gas - stem) +
    emissivity * STEFAN_BOLTZMANN * (wallRadiant ** 4 - stem ** 4)
  );
}

/**
 * Settled reading of a thermometer [K]: the stem temperature at which convection from the gas and radiation to the walls
 * balance. Always between gas and walls.
 *
 * Solved by Newton with the slope of the radiation and of h ~ dT^(1/4); converges in a few steps from any start because the
 * balance falls monotonically with the stem temperature.
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
    const balance = h * (gas - stem) + emissivity * STEFAN_BOLTZMANN * (wallRadiant ** 4 - stem ** 4);
    if (balance > 0) low = stem;
    else high = stem;
    const slope = h + 4 * emissivity * STEFAN_BOLTZMANN * stem ** 3;
    let next = stem + balance / slope;
    if (next <= low || next >= high) next = 0.5 * (low + high);
    if (Math.abs(next - stem) < 1e-10 * stem) return next;
    stem = next;
  }
  return stem;
}
