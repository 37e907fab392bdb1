/** Static draft of a column of hot gas. Draft is positive where the column pulls. */
import { GRAVITY } from './constants.js';
import { AIR_GAS_CONSTANT } from './air.js';

export interface Column {
  /** [m] */
  height: number;
  /** [K] */
  outdoorTemperature: number;
  /** mean gas temperature in the column [K] */
  gasTemperature: number;
  /** absolute outdoor pressure [Pa] */
  pressure: number;
}

/**
 * Theoretical (no-flow) draft of a column whose gas has the molar mass of air: (g/R) p H (1/To - 1/Tg).
 * @returns [Pa]
 * @example theoreticalDraft({ height: 10, outdoorTemperature: 290, gasTemperature: 500, pressure: 101325 }) // 50.1
 * Reference: hydrostatics; ASHRAE Handbook - HVAC Systems and Equipment (2016), ch. 35.
 */
export function theoreticalDraft(column: Column): number {
  return draftByCoefficient({ ...column, coefficient: GRAVITY / AIR_GAS_CONSTANT });
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
 * Height that gives a wanted draft, the inverse of `theoreticalDraft`.
 * @returns [m]
 */
export function heightForDraft({ draft, ...column }: Omit<Column, 'height'> & { draft: number }): number {
  return draft / theoreticalDraft({ ...column, height: 1 });
}

/** Density of air times its temperature at 1.013 bar, as the power-plant texts round it [kg K/m3]. */
const DENSITY_TEMPERATURE = 353;

export interface FlueColumn {
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
 * Draft with the fuel's mass added to the gas: 353 g H [1/Ta - (m + 1)/(m Tg)], at 1.013 bar. The texts print it without g,
 * in mm of water.
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
