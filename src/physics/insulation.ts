/** Conductivity printed at a few temperatures, ascending [K] and [W/(m K)]. */
export interface ConductivityTable {
  temperatures: readonly number[];
  values: readonly number[];
}

/**
 * Conductivity of a layer by straight lines between printed points, the first line continued below them, the last value held
 * above them; never below a tenth of the first value.
 * @param table points, one at least
 * @param temperature of the layer [K]
 * @returns [W/(m K)]
 * @example layerConductivity({ temperatures: [533.15, 811.15], values: [0.068, 0.098] }, 672.15) // 0.083 W/(m K)
 * Reference: linear interpolation; the points carry their own sources.
 */
export function layerConductivity({ temperatures, values }: ConductivityTable, temperature: number): number {
  const last = temperatures.length - 1;
  if (last === 0 || temperature >= temperatures[last]) return values[last];
  let i = 0;
  while (i < last - 1 && temperature > temperatures[i + 1]) i++;
  const slope = values[i + 1] - values[i];
  const y = values[i] + (slope * (temperature - temperatures[i])) / (temperatures[i + 1] - temperatures[i]);
  return Math.max(y, 0.1 * values[0]);
}
