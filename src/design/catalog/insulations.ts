/**
 * Insulation: conductivity against temperature, density, specific heat.
 *
 * Linear between the listed temperatures; below the first the first slope is extended, above the last the last value holds.
 */
export interface InsulationRow {
  /** [K] and [W/(m K)], ascending in temperature */
  conductivity: readonly (readonly [number, number])[];
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

export const INSULATIONS: Readonly<Record<string, InsulationRow>> = {
  'ceramic fibre': {
    conductivity: [
      [celsius(260), 0.068],
      [celsius(538), 0.098],
      [celsius(816), 0.141],
    ],
    density: 128,
    specificHeat: 1080,
    maxTemperature: celsius(1260),
    knownTo: celsius(816),
    source: 'typical data of 128 kg/m3 ceramic-fibre blanket; limit 1260 °C: common practice, no source',
  },
  'mineral wool': {
    conductivity: [
      [celsius(24), 0.035],
      [celsius(200), 0.062],
      [celsius(400), 0.107],
      [celsius(600), 0.17],
    ],
    density: 97.5,
    specificHeat: 840,
    maxTemperature: celsius(650),
    knownTo: celsius(24),
    source:
      'ASHRAE Handbook - Fundamentals (2013), ch. 26, 97.5 kg/m3 near 24 °C; hot values, specific heat and limit from memory, an estimate (+-20 %)',
  },
  firebrick: {
    conductivity: [
      [673.15, 1.05],
      [873.15, 1.1],
      [1073.15, 1.15],
      [1273.15, 1.18],
      [1473.15, 1.22],
    ],
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

/**
 * Conductivity of an insulation [W/(m K)].
 *
 * @param row catalog row
 * @param temperature mean temperature of the layer [K]
 * @returns linear between rows; extended linearly below them; held above them
 */
export function insulationConductivity(row: InsulationRow, temperature: number): number {
  const points = row.conductivity;
  const last = points.length - 1;
  if (temperature >= points[last][0]) return points[last][1];
  let i = 0;
  while (i < last - 1 && temperature > points[i + 1][0]) i++;
  const [t0, k0] = points[i];
  const [t1, k1] = points[i + 1];
  return k0 + ((k1 - k0) / (t1 - t0)) * (temperature - t0);
}
