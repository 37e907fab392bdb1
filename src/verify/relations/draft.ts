/** Static draft of a column of hot gas as the handbooks write it. Draft is positive where the column pulls. */
import { airDensity } from '../../physics/air.js';
import { GRAVITY } from '../../physics/constants.js';
import { theoreticalDraft } from '../../physics/draft.js';

interface Column {
  /** [m] */
  height: number;
  /** [K] */
  outdoorTemperature: number;
  /** mean gas temperature in the column [K] */
  gasTemperature: number;
  /** absolute outdoor pressure [Pa] */
  pressure: number;
}

/** Theoretical draft of a column of hot air, by the densities of both sides [Pa]. */
export function draftOfAir({ height, outdoorTemperature, gasTemperature, pressure }: Column): number {
  return theoreticalDraft(airDensity(outdoorTemperature, pressure), airDensity(gasTemperature, pressure), height);
}

/**
 * The handbooks' form with their own rounded coefficient in place of g/R (ASHRAE prints 0.03413 K/m).
 * @param coefficient [K/m]
 * @returns [Pa]
 */
export function draftByCoefficient({
  coefficient,
  height,
  outdoorTemperature,
  gasTemperature,
  pressure,
}: Column & { coefficient: number }): number {
  return coefficient * pressure * height * (1 / outdoorTemperature - 1 / gasTemperature);
}

/**
 * Height that gives a wanted draft, the inverse of `draftOfAir`.
 * @returns [m]
 */
export function heightForDraft({ draft, ...column }: Omit<Column, 'height'> & { draft: number }): number {
  return draft / draftOfAir({ ...column, height: 1 });
}

/** Density of air times its temperature at 1.013 bar, as the power-plant texts round it [kg K/m3]. */
const DENSITY_TEMPERATURE = 353;

interface FlueColumn {
  /** [m] */
  height: number;
  /** [K] */
  outdoorTemperature: number;
  /** [K] */
  gasTemperature: number;
  /** m kg of air per kg of fuel; the gas is taken (m + 1)/m times as dense as air */
  airPerFuel: number;
}

/**
 * Draft with the fuel's mass added to the gas: 353 g H [1/Ta - (m + 1)/(m Tg)], at 1.013 bar. The texts print it
 * without g, in mm of water.
 * @returns [Pa]
 * Reference: O. Singh, Applied Thermodynamics, ch. 11; Agrawal & Agrawal, Basic Mechanical Engineering, ch. 11.
 */
export function draftOfFlueGas({ height, outdoorTemperature, gasTemperature, airPerFuel }: FlueColumn): number {
  const dense = (airPerFuel + 1) / airPerFuel;
  return DENSITY_TEMPERATURE * GRAVITY * height * (1 / outdoorTemperature - dense / gasTemperature);
}

/**
 * The same draft as a height of the hot gas itself: H [m/(m + 1) Tg/Ta - 1].
 * @returns [m]
 */
export function draftAsGasColumn({ height, outdoorTemperature, gasTemperature, airPerFuel }: FlueColumn): number {
  return height * (((airPerFuel / (airPerFuel + 1)) * gasTemperature) / outdoorTemperature - 1);
}
