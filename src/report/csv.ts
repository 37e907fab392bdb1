import { stringify } from 'csv-stringify/sync';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { warmUpCells } from './curveCells.js';

/**
 * The warm-up curves as CSV (RFC 4180, plain ASCII, but for names of the builder's own, so that every spreadsheet reads
 * it): time, fire, then gas, thermometer and steel of each station, gas and thermometer of grates and racks, the unit
 * in each heading. Empty of rows when there are no curves.
 *
 * @param system min, BTU/h and degF, or s, W and degC
 */
export function curvesCsv(result: EstimateResult, system: UnitSystem): string {
  return csvOf(warmUpCells(result, system));
}

/** Rows of cells as CSV (RFC 4180). */
export function csvOf(rows: readonly (readonly string[])[]): string {
  return stringify([...rows], { record_delimiter: 'windows', quote_record_delimiter: true });
}
