import { placeLabel, stationLabel } from '../words/labels.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { convert, type UnitSystem } from '../units/index.js';

/**
 * The warm-up curves as CSV (RFC 4180, plain ASCII so that every spreadsheet reads it): time, fire, then gas,
 * thermometer and steel of each station, gas and thermometer of grates and racks, the unit in each heading. Empty of rows when there are no curves.
 *
 * @param system min, BTU/h and degF, or s, W and degC
 */
export function curvesCsv(result: EstimateResult, system: UnitSystem): string {
  const shop = system === 'shop';
  const degrees = shop ? 'degF' : 'degC';
  const temperature = (kelvin: number) => convert('temperature', kelvin, system).toFixed(2);
  const series = result.warmUp?.series;
  const stations = series?.stations ?? [];
  const places = series?.places ?? [];

  const head = [
    `time [${shop ? 'min' : 's'}]`,
    `fire [${shop ? 'BTU/h' : 'W'}]`,
    ...stations.flatMap(({ name }) =>
      ['gas', 'thermometer', 'steel'].map((what) => `${stationLabel(name)} ${what} [${degrees}]`),
    ),
    ...places.flatMap((place) => ['gas', 'thermometer'].map((what) => `${placeLabel(place)} ${what} [${degrees}]`)),
  ];
  const rows = (series?.time_s ?? []).map((seconds, i) => [
    (shop ? seconds / 60 : seconds).toFixed(3),
    (shop ? convert('power', series!.fire_W[i], 'shop') : series!.fire_W[i]).toFixed(1),
    ...stations.flatMap(({ gas_K, thermometer_K, steel_K }) =>
      [gas_K[i], thermometer_K[i], steel_K[i]].map(temperature),
    ),
    ...places.flatMap(({ gas_K, thermometer_K }) => [gas_K[i], thermometer_K[i]].map(temperature)),
  ]);
  return [head.map(textCell), ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

/**
 * A text as a CSV cell: quoted where it must be, and never one that a spreadsheet takes for a formula.
 *
 * @example textCell('=1+1') gives "'=1+1"
 */
export function textCell(text: string): string {
  const inert = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
