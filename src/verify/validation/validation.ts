/** Runs the measured rooms and gathers what the report shows of them. Pure: texts of the tables in, numbers out. */
import type { CaseFault } from '../readCases.js';
import { ZERO_CELSIUS } from '../../physics/constants.js';
import { BASE, MECHANISMS, type Assumptions } from './assumptions.js';
import { heatBalance, type HeatBalance } from './heatBalance.js';
import { layeredOpeningFlow } from './layers.js';
import { readMeasured, type MeasuredRow } from './measured.js';
import type { ValidationQuantity, ValidationRow, ValidationTable } from './quantities.js';
import { statistics, type Statistics } from './statistics.js';
import { runSteckler, STECKLER_COLUMNS, stecklerRows } from './steckler.js';
import { correctedRelease, releaseAsIs, runSteelRoom, STEEL_ROOM_COLUMNS } from './steelRoom.js';
import { bareRoomTables, stecklerTables, woolRoomTables, type SteelRoomRun } from './tables.js';

export interface QuantityResult extends ValidationQuantity {
  rows: ValidationRow[];
  /** over the rows that count; null where fewer than two do */
  statistics: Statistics | null;
  /** over all rows with a ratio, counted or not */
  overAll: Statistics | null;
  /** of the same rows with the calorimeter's heat release as it stands */
  asIs: Statistics | null;
}

/** Biases under one changed mechanism; null where it has no part. */
export interface MechanismEffect {
  name: string;
  outflow: number | null;
  inflow: number | null;
  /** mean of computed less measured, share of the opening */
  neutral: number | null;
  upperGas: number | null;
  steelAt300: number | null;
  steelAt1200: number | null;
  gasMean: number | null;
  probes: number | null;
  woolProbes: number | null;
}

export interface Validation {
  quantities: QuantityResult[];
  mechanisms: MechanismEffect[];
  fires: { test: string; ignition: number; shut: number | null }[];
  balances: HeatBalance[];
  /** vent-flow rows with both flows, and with each, within 20 % */
  flowsWithinFifth: { rows: number; outflow: number; inflow: number; both: number };
}

const byTest = (rows: readonly MeasuredRow[], test: string) => rows.filter((row) => row.text('test') === test);

function runBoth(rows: readonly MeasuredRow[], a: Assumptions): SteelRoomRun {
  return {
    corrected: runSteelRoom(rows, correctedRelease(rows), a),
    asIs: runSteelRoom(rows, releaseAsIs(rows), a),
  };
}

function summarise(table: ValidationTable): QuantityResult {
  const deviation = table.uncertainty / 2;
  const usable = (rows: ValidationRow[]) => rows.filter((row) => row.measured > 0 && row.computed > 0);
  const counted = usable(table.rows.filter((row) => row.leftOut === ''));
  const asIs = counted.flatMap((row) => (row.computedAsIs! > 0 ? [{ ...row, computed: row.computedAsIs! }] : []));
  return {
    ...table,
    statistics: statistics(counted, deviation),
    overAll: statistics(usable(table.rows), deviation),
    asIs: statistics(asIs, deviation),
  };
}

/** Mean of computed less measured, repeats weighed as one case. */
function meanDifference(rows: readonly ValidationRow[]): number {
  const groups = new Map<string, number[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row.computed - row.measured]);
  const means = [...groups.values()].map((own) => own.reduce((sum, each) => sum + each, 0) / own.length);
  return means.reduce((sum, each) => sum + each, 0) / means.length;
}

function effect(
  name: string,
  a: Assumptions,
  steckler: readonly MeasuredRow[],
  steel: readonly MeasuredRow[],
): MechanismEffect {
  const rooms = stecklerRows(steckler.map((row) => runSteckler(row, a)));
  const alone = (test: string): SteelRoomRun => {
    const rows = byTest(steel, test);
    const corrected = runSteelRoom(rows, correctedRelease(rows, a.litAt), a);
    return { corrected, asIs: corrected };
  };
  const tables = [...bareRoomTables(alone('C1')), ...woolRoomTables(alone('B1'))].map(summarise);
  const bias = (experiment: string, quantity: string) =>
    tables.find((each) => each.experiment === experiment && each.quantity === quantity)!.statistics!.bias;
  const steelAt = (id: string) => {
    const row = tables[0].rows.find((each) => each.id === id)!;
    return row.computed / row.measured;
  };
  return {
    name,
    outflow: statistics(rooms.outflow, 0.1)!.bias,
    inflow: statistics(rooms.inflow, 0.1)!.bias,
    neutral: meanDifference(rooms.neutral),
    upperGas: statistics(rooms.upperGas, 0.1)!.bias,
    steelAt300: steelAt('sp-C1-0300'),
    steelAt1200: steelAt('sp-C1-1200'),
    gasMean: bias('steel room, bare plate', 'gas rise, mean over the height'),
    probes: bias('steel room, bare plate', 'plate thermometers, rise, mean by area'),
    woolProbes: bias('steel room, wool inside', 'plate thermometers, rise, mean by area'),
  };
}

/** The opening law alone, fed with the measured layers: what mixing the gas costs. */
function layering(rows: readonly MeasuredRow[]): MechanismEffect {
  const kelvin = (row: MeasuredRow, column: string) => row.number(column) + ZERO_CELSIUS;
  const flows = rows.map((row) => {
    const [height, sill] = [row.number('opening_H_m'), row.number('sill_m')];
    const layered = layeredOpeningFlow({
      width: row.number('opening_W_m'),
      height,
      sill,
      discharge: BASE.discharge,
      outdoors: kelvin(row, 'T_amb_C'),
      lower: kelvin(row, 'T_lower_C'),
      upper: kelvin(row, 'T_upper_C'),
      join: row.number('layer_height_m'),
    });
    return { row, layered, neutral: (layered.neutralHeight - sill) / height };
  });
  const pairs = stecklerRows(flows.map(({ row }) => ({ ...runSteckler(row, BASE), row })));
  const replace = (own: ValidationRow[], computed: number[]) =>
    own.map((row, n) => ({ ...row, computed: computed[n] }));
  return {
    name: 'layering: the opening law alone, fed with the measured layers',
    outflow: statistics(
      replace(
        pairs.outflow,
        flows.map(({ layered }) => layered.outflow),
      ),
      0.1,
    )!.bias,
    inflow: statistics(
      replace(
        pairs.inflow,
        flows.map(({ layered }) => layered.inflow),
      ),
      0.1,
    )!.bias,
    neutral: meanDifference(
      replace(
        pairs.neutral,
        flows.map(({ neutral }) => neutral),
      ),
    ),
    upperGas: null,
    steelAt300: null,
    steelAt1200: null,
    gasMean: null,
    probes: null,
    woolProbes: null,
  };
}

export interface MeasuredTables {
  steckler: { text: string; file: string };
  steelRoom: { text: string; file: string };
}

/** @returns faults of the tables instead, when they have any */
export function runValidation(tables: MeasuredTables): { validation: Validation } | { faults: CaseFault[] } {
  const steckler = readMeasured(tables.steckler.text, tables.steckler.file, STECKLER_COLUMNS);
  const steel = readMeasured(tables.steelRoom.text, tables.steelRoom.file, STEEL_ROOM_COLUMNS);
  const faults = [...steckler.faults, ...steel.faults];
  if (faults.length > 0) return { faults };
  const bare = runBoth(byTest(steel.rows, 'C1'), BASE);
  const wool = runBoth(byTest(steel.rows, 'B1'), BASE);
  const rooms = steckler.rows.map((row) => runSteckler(row, BASE));
  const quantities = [...stecklerTables(rooms), ...bareRoomTables(bare), ...woolRoomTables(wool)].map(summarise);
  const near = ({ measured, computed }: ValidationRow) => Math.abs(computed / measured - 1) <= 0.2;
  const [outflow, inflow] = [quantities[0].rows.map(near), quantities[1].rows.map(near)];
  const count = (each: boolean[]) => each.filter(Boolean).length;
  return {
    validation: {
      quantities,
      mechanisms: [
        ...MECHANISMS.map(({ name, change }) => effect(name, { ...BASE, ...change }, steckler.rows, steel.rows)),
        layering(steckler.rows),
      ],
      fires: [bare, wool].map(({ corrected }) => {
        const { ignition, shut } = correctedRelease(corrected.map(({ row }) => row));
        return { test: corrected[0].row.text('test'), ignition, shut: Number.isFinite(shut) ? shut : null };
      }),
      balances: bare.corrected
        .filter(({ row }) => row.number('t_s') >= 900 && row.number('t_s') <= 1500)
        .map((moment) => heatBalance(moment, BASE)),
      flowsWithinFifth: {
        rows: rooms.length,
        outflow: count(outflow),
        inflow: count(inflow),
        both: count(outflow.map((ok, n) => ok && inflow[n])),
      },
    },
  };
}
