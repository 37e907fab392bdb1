/** The vent-flow rooms of Steckler, Quintiere & Rinkinen (1982), NBSIR 82-2520: one opening, a steady methane fire. */
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../../physics/constants.js';
import { burnerFire } from '../rooms/burner.js';
import { buildRoom, type RoomSpec } from '../rooms/room.js';
import { neutralHeightIn, steadyRoom, type RoomState } from '../rooms/solveRoom.js';
import type { MeasuredRow } from './measured.js';
import { plumeOf, radiantShareOf, roomOf, type Assumptions } from './assumptions.js';
import type { QuantityName, ValidationRow } from './quantities.js';
import { twoLayers } from './twoLayers.js';

/** Columns that the table of the vent-flow rooms must have. */
export const STECKLER_COLUMNS = {
  texts: ['test', 'fire_location'],
  numbers: [
    'fire_kW', 'opening_W_m', 'opening_H_m', 'sill_m', 'T_amb_C', 'T_upper_C', 'T_lower_C', 'layer_height_m',
    'neutral_over_H', 'm_out_kg_s', 'm_in_kg_s',
  ],
} as const; // prettier-ignore

/** Of every surface, the floor too, as the model inputs released with the data have it [m]. */
const BOARD = { thickness: 0.0127, density: 128, specificHeat: 1080 } as const;
const STECKLER_ROOM = { length: 2.8, width: 2.8, height: 2.13 } as const;

/** Across the burner [m]; it stands on the floor unless raised, by how much is not told. */
const BURNER = 0.3;

/** Tests that repeat one case. */
const REPEATS: Readonly<Record<string, string>> = { '18': '14', '710': '14', '810': '14', '612': '12' };

interface StecklerResult {
  row: MeasuredRow;
  state: RoomState;
  outdoors: number;
  /** of its gas, reduced to two layers [K], and where its pressure is that of the outdoor air [m] */
  lower: number;
  upper: number;
  neutralHeight: number;
}

/** One vent-flow room, solved steady. */
export function runSteckler(row: MeasuredRow, a: Assumptions): StecklerResult {
  const outdoors = row.number('T_amb_C') + ZERO_CELSIUS;
  const spec: RoomSpec = {
    ...STECKLER_ROOM,
    vents: [{ width: row.number('opening_W_m'), height: row.number('opening_H_m'), sill: row.number('sill_m') }],
    ...roomOf(a),
    layers: [{ type: 'solid', ...BOARD, conductivity: a.boardConductivity, slices: 4 }],
    fire: burnerFire('methane', radiantShareOf('methane', a)),
    burner: { across: BURNER, top: 0, ...plumeOf(a) },
    outdoors: { temperature: outdoors, pressure: STANDARD_PRESSURE, wind: 0 },
  };
  const { network, column } = buildRoom(spec);
  const state = steadyRoom(network, row.number('fire_kW') * 1e3);
  const gases = column.map((zone) => state.gases[zone]);
  const { lower, upper } = twoLayers(gases, STECKLER_ROOM.height);
  return { row, outdoors, state, lower, upper, neutralHeight: neutralHeightIn(network, state, column) };
}

/** Measured gas rise, upper and lower layer weighed by their heights [K]. */
function measuredMeanRise(row: MeasuredRow): number {
  const share = row.number('layer_height_m') / STECKLER_ROOM.height;
  const mean = share * row.number('T_lower_C') + (1 - share) * row.number('T_upper_C');
  return mean - row.number('T_amb_C');
}

type StecklerQuantity = Extract<QuantityName, 'outflow' | 'inflow' | 'neutral' | 'upperGas' | 'roomGas'>;

/**
 * Measured and computed rows of the vent-flow rooms, a list a quantity.
 * @param layered the same rows with gas in layers, where both are shown
 */
export function stecklerRows(
  results: readonly StecklerResult[],
  layered?: readonly StecklerResult[],
): Record<StecklerQuantity, ValidationRow[]> {
  const rows = (of: (result: StecklerResult) => [measured: number, computed: number]): ValidationRow[] =>
    results.map((result, n) => {
      const [measured, computed] = of(result);
      const test = result.row.text('test');
      const beside = layered ? { layered: of(layered[n])[1] } : {};
      return { id: result.row.id, group: REPEATS[test] ?? test, measured, computed, ...beside, leftOut: '' };
    });
  return {
    outflow: rows(({ row, state }) => [row.number('m_out_kg_s'), state.outflow]),
    inflow: rows(({ row, state }) => [row.number('m_in_kg_s'), state.inflow]),
    neutral: rows(({ row, neutralHeight }) => [
      row.number('neutral_over_H'),
      (neutralHeight - row.number('sill_m')) / row.number('opening_H_m'),
    ]),
    upperGas: rows(({ row, upper, outdoors }) => [row.number('T_upper_C') - row.number('T_amb_C'), upper - outdoors]),
    roomGas: rows(({ row, state, outdoors }) => [measuredMeanRise(row), state.gas - outdoors]),
  };
}
