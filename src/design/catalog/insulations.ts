/** Insulation: conductivity against temperature, density, specific heat. */
import type { ConductivityTable } from '../../physics/insulation.js';

/** A material that keeps heat in: conductivity [W/(m K)] and limits. */
export interface InsulationRow {
  conductivity: ConductivityTable;
  /** [kg/m3] */
  density: number;
  /** [J/(kg K)] */
  specificHeat: number;
  /** highest service temperature [K] */
  maxTemperature: number;
  /** conductivity above this temperature rests on memory, not on print [K] */
  knownTo: number;
  source: string;
}

const celsius = (degrees: number): number => degrees + 273.15;

/** Materials for outside the plate, by the names that a file takes. */
export const INSULATIONS: Readonly<Record<string, InsulationRow>> = {
  'ceramic fibre': {
    conductivity: {
      temperatures: [celsius(260), celsius(538), celsius(816)],
      values: [0.068, 0.098, 0.141],
    },
    density: 128,
    specificHeat: 1080,
    maxTemperature: celsius(1260),
    knownTo: celsius(816),
    source: 'typical data of 128 kg/m3 ceramic-fibre blanket; limit 1260 °C: common practice, no source',
  },
  'mineral wool': {
    conductivity: {
      temperatures: [celsius(24), celsius(200), celsius(400), celsius(600)],
      values: [0.035, 0.062, 0.107, 0.17],
    },
    density: 97.5,
    specificHeat: 840,
    maxTemperature: celsius(650),
    knownTo: celsius(24),
    source:
      'ASHRAE Handbook - Fundamentals (2013), ch. 26, 97.5 kg/m3 near 24 °C; hot values, specific heat and limit from memory, an estimate (+-20 %)',
  },
  firebrick: {
    conductivity: {
      temperatures: [673.15, 873.15, 1073.15, 1273.15, 1473.15],
      values: [1.05, 1.1, 1.15, 1.18, 1.22],
    },
    density: 2150,
    specificHeat: 956,
    maxTemperature: celsius(1400),
    knownTo: 1473.15,
    source: 'fireclay brick, VDI Heat Atlas, refractory table (specific heat at 400 °C); limit from memory',
  },
};

/** Other names a builder may use. */
export const INSULATION_ALIASES: Readonly<Record<string, string>> = {
  'ceramic fiber': 'ceramic fibre',
  'ceramic blanket': 'ceramic fibre',
  'ceramic wool': 'ceramic fibre',
  'rock wool': 'mineral wool',
  rockwool: 'mineral wool',
  'stone wool': 'mineral wool',
  'fireclay brick': 'firebrick',
};
