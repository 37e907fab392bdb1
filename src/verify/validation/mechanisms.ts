/**
 * What each mechanism does to the biases when it alone is changed. Nothing is fitted; this only shows what explains
 * what.
 */
import { ZERO_CELSIUS } from '../../physics/constants.js';
import { BASE, MECHANISMS, type Assumptions, type MechanismKey } from './assumptions.js';
import { layeredOpeningFlow } from './layers.js';
import type { MeasuredRow } from './measured.js';
import { ofQuantity, QUANTITIES, type QuantityName, type ValidationRow } from './quantities.js';
import { runSteckler, stecklerRows } from './steckler.js';
import { correctedRelease, runSteelRoom } from './steelRoom.js';
import { countFlows, meanDifference, summarise, type FlowCount } from './summary.js';
import { bareRoomTables, woolRoomTables, type SteelRoomRun } from './tables.js';

/** Biases under one changed mechanism; null where it has no part. */
export interface MechanismEffect {
  key: MechanismKey | 'layering';
  /** in the words of a table */
  name: string;
  outflow: number | null;
  inflow: number | null;
  /** vent-flow rows within 20 % */
  flowsWithinFifth: FlowCount;
  /** mean of computed less measured, share of the opening */
  neutral: number | null;
  upperGas: number | null;
  steelAt300: number | null;
  steelAt1200: number | null;
  gasMean: number | null;
  probes: number | null;
  woolProbes: number | null;
}

/** Measured rows of the vent-flow rooms, and of the steel room bare and with wool inside. */
interface MeasuredRows {
  steckler: readonly MeasuredRow[];
  bare: readonly MeasuredRow[];
  wool: readonly MeasuredRow[];
}

const biasOf = (name: QuantityName, rows: ValidationRow[]) => summarise({ ...QUANTITIES[name], rows }).statistics!.bias;

function effect(a: Assumptions, { steckler, bare, wool }: MeasuredRows): Omit<MechanismEffect, 'key' | 'name'> {
  const rooms = stecklerRows(steckler.map((row) => runSteckler(row, a)));
  const alone = (rows: readonly MeasuredRow[]): SteelRoomRun => {
    const corrected = runSteelRoom(rows, correctedRelease(rows, a.litAt), a);
    return { corrected, asIs: corrected };
  };
  const tables = [...bareRoomTables(alone(bare)), ...woolRoomTables(alone(wool))];
  const rowsOf = (quantity: QuantityName) => ofQuantity(tables, quantity).rows;
  const steelAt = (time_s: number) => {
    const row = rowsOf('steelMean').find((each) => each.time_s === time_s)!;
    return row.computed / row.measured;
  };
  return {
    outflow: biasOf('outflow', rooms.outflow),
    inflow: biasOf('inflow', rooms.inflow),
    flowsWithinFifth: countFlows(rooms.outflow, rooms.inflow),
    neutral: meanDifference(rooms.neutral),
    upperGas: biasOf('upperGas', rooms.upperGas),
    steelAt300: steelAt(300),
    steelAt1200: steelAt(1200),
    gasMean: biasOf('gasMean', rowsOf('gasMean')),
    probes: biasOf('probes', rowsOf('probes')),
    woolProbes: biasOf('woolProbes', rowsOf('woolProbes')),
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
    return { ...layered, neutral: (layered.neutralHeight - sill) / height };
  });
  const mixed = stecklerRows(rows.map((row) => runSteckler(row, BASE)));
  const replaced = (name: 'outflow' | 'inflow' | 'neutral') =>
    mixed[name].map((row, n) => ({ ...row, computed: flows[n][name] }));
  const [outflow, inflow] = [replaced('outflow'), replaced('inflow')];
  return {
    key: 'layering',
    name: 'layering: the opening law alone, fed with the measured layers',
    outflow: biasOf('outflow', outflow),
    inflow: biasOf('inflow', inflow),
    flowsWithinFifth: countFlows(outflow, inflow),
    neutral: meanDifference(replaced('neutral')),
    upperGas: null,
    steelAt300: null,
    steelAt1200: null,
    gasMean: null,
    probes: null,
    woolProbes: null,
  };
}

/** Every change by itself, and the opening law fed with measured layers. */
export function mechanismEffects(rows: MeasuredRows): MechanismEffect[] {
  const keys = Object.keys(MECHANISMS) as MechanismKey[];
  const changed = keys.map((key): MechanismEffect => {
    const { name, change } = MECHANISMS[key];
    return { key, name, ...effect({ ...BASE, ...change }, rows) };
  });
  return [...changed, layering(rows.steckler)];
}
