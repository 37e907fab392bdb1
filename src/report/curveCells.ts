/** Curves as cells of a table, before a file is made of them. */
import { placeLabel, stationLabel } from '../words/labels.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { convert, type UnitSystem } from '../units/index.js';

/** The warm-up curves: what `curvesCsv` writes. */
export function warmUpCells(result: EstimateResult, system: UnitSystem): string[][] {
  const series = result.warmUp?.series ?? { time_s: [], fire_W: [], stations: [], places: [] };
  const temperatures = series.stations.flatMap(({ name, gas_K, thermometer_K, steel_K }) =>
    Object.entries({ gas: gas_K, thermometer: thermometer_K, steel: steel_K }).map(([what, kelvin]) => ({
      head: `${stationLabel(name)} ${what}`,
      kelvin,
    })),
  );
  const places = series.places.flatMap((place) =>
    Object.entries({ gas: place.gas_K, thermometer: place.thermometer_K }).map(([what, kelvin]) => ({
      head: `${placeLabel(place)} ${what}`,
      kelvin,
    })),
  );
  return curveCells(series, [...temperatures, ...places], system);
}

/**
 * A text that a spreadsheet doesn't take for a formula. Numbers are left as they are, minus signs with them.
 *
 * @example inertCell('=1+1') gives "'=1+1"
 */
export function inertCell(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

/** Time, fire and temperatures of curves, the unit in each heading: min, BTU/h and degF, or s, W and degC. */
export function curveCells(
  { time_s, fire_W }: { time_s: readonly number[]; fire_W: readonly number[] },
  temperatures: readonly { head: string; kelvin: readonly number[] }[],
  system: UnitSystem,
): string[][] {
  const shop = system === 'shop';
  const degrees = shop ? 'degF' : 'degC';
  const head = [
    `time [${shop ? 'min' : 's'}]`,
    `fire [${shop ? 'BTU/h' : 'W'}]`,
    ...temperatures.map((each) => inertCell(`${each.head} [${degrees}]`)),
  ];
  const rows = time_s.map((seconds, i) => [
    (shop ? seconds / 60 : seconds).toFixed(3),
    (shop ? convert('power', fire_W[i], 'shop') : fire_W[i]).toFixed(1),
    ...temperatures.map(({ kelvin }) => convert('temperature', kelvin[i], system).toFixed(2)),
  ]);
  return [head, ...rows];
}
