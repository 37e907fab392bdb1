/** A table of measured and computed values, summed up. */
import type { ValidationQuantity, ValidationRow, ValidationTable } from './quantities.js';
import { statistics, type Statistics } from './statistics.js';

/** A quantity with its rows and what they come to. */
export interface QuantityResult extends ValidationQuantity {
  rows: ValidationRow[];
  /** over the rows that count; null where fewer than two do */
  statistics: Statistics | null;
  /** over all rows with a ratio, counted or not */
  overAll: Statistics | null;
  /** of the same rows with the calorimeter's heat release as it stands */
  asIs: Statistics | null;
  /** of the same rows with layers in the room that burns */
  layered: Statistics | null;
}

/** Bias and scatter of the rows of a quantity that count. */
export function summarise(table: ValidationTable): QuantityResult {
  const deviation = table.uncertainty / 2;
  const usable = (rows: ValidationRow[]) => rows.filter((row) => row.measured > 0 && row.computed > 0);
  const counted = usable(table.rows.filter((row) => row.leftOut === ''));
  const asIs = counted.flatMap((row) => (row.computedAsIs! > 0 ? [{ ...row, computed: row.computedAsIs! }] : []));
  const layered = counted.flatMap((row) => (row.layered! > 0 ? [{ ...row, computed: row.layered! }] : []));
  return {
    ...table,
    statistics: statistics(counted, deviation),
    overAll: statistics(usable(table.rows), deviation),
    asIs: statistics(asIs, deviation),
    layered: statistics(layered, deviation),
  };
}

/** Mean of computed less measured, repeats weighed as one case. */
export function meanDifference(rows: readonly ValidationRow[]): number {
  const groups = new Map<string, number[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row.computed - row.measured]);
  const means = [...groups.values()].map((own) => own.reduce((sum, each) => sum + each, 0) / own.length);
  return means.reduce((sum, each) => sum + each, 0) / means.length;
}

/** Of the vent-flow rows: flow out, flow in, and both at once within 20 %. */
export interface FlowCount {
  rows: number;
  outflow: number;
  inflow: number;
  both: number;
}

/** How many flows come within a fifth of what was measured. */
export function countFlows(outflow: readonly ValidationRow[], inflow: readonly ValidationRow[]): FlowCount {
  const near = ({ measured, computed }: ValidationRow) => Math.abs(computed / measured - 1) <= 0.2;
  return {
    rows: outflow.length,
    outflow: outflow.filter(near).length,
    inflow: inflow.filter(near).length,
    both: outflow.filter((row, n) => near(row) && near(inflow[n])).length,
  };
}
