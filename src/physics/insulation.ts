/** Conductivity printed at a few temperatures, ascending [K] and [W/(m K)]. */
export interface ConductivityTable {
  temperatures: readonly number[];
  values: readonly number[];
}

/**
 * Conductivity of a layer by straight lines between printed points, the first line continued below them, the last value
 * held above them; never below a tenth of the first value.
 * @param table points, one at least
 * @param temperature of the layer [K]
 * @returns [W/(m K)]
 * @example layerConductivity({ temperatures: [533.15, 811.15], values: [0.068, 0.098] }, 672.15) // 0.083 W/(m K)
 * Reference: linear interpolation; the points carry their own sources.
 */
export function layerConductivity(table: ConductivityTable, temperature: number): number {
  return Math.max(layerSpecificHeat(table, temperature), 0.1 * table.values[0]);
}

/**
 * Specific heat of a layer by straight lines between printed points, the first line continued below them, the last
 * value held above them.
 * @param table points ascending [K], [J/(kg K)], one at least
 * @param temperature of the layer [K]
 * @returns [J/(kg K)]
 * @example layerSpecificHeat({ temperatures: [673.15, 873.15], values: [956, 996] }, 773.15) // 976 J/(kg K)
 * Reference: linear interpolation; the points carry their own sources.
 */
export function layerSpecificHeat({ temperatures, values }: ConductivityTable, temperature: number): number {
  const last = temperatures.length - 1;
  if (last === 0 || temperature >= temperatures[last]) return values[last];
  let i = 0;
  while (i < last - 1 && temperature > temperatures[i + 1]) i++;
  const slope = values[i + 1] - values[i];
  return values[i] + (slope * (temperature - temperatures[i])) / (temperatures[i + 1] - temperatures[i]);
}

/**
 * Heat that a kilogram takes up from the first printed temperature on, of a specific heat printed at a few: the
 * integral of the straight lines between the points, the first line continued below them, the last value held above
 * them.
 * @param table specific heat [J/(kg K)], points ascending [K], one at least
 * @returns [J/kg], negative below the first temperature
 * @example layerHeat({ temperatures: [673.15, 873.15], values: [956, 997] }, 873.15) // 195300 J/kg
 * Reference: exact integral of the linear interpolation; the points carry their own sources.
 */
export function layerHeat({ temperatures, values }: ConductivityTable, temperature: number): number {
  const last = temperatures.length - 1;
  let heat = 0;
  for (let i = 0; i < last; i++) {
    const [from, to] = [temperatures[i], temperatures[i + 1]];
    const rise = Math.min(temperature, to) - from;
    const slope = (values[i + 1] - values[i]) / (to - from);
    heat += rise * (values[i] + 0.5 * slope * rise);
    if (temperature <= to) return heat;
  }
  return heat + (temperature - temperatures[last]) * values[last];
}
