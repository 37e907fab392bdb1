/**
 * The reduced-scale enclosure of Bryner, Johnsson & Pitts (1994), NIST: oxygen under the roof of a box the size of a
 * firebox.
 */
import { cellAtHeight } from '../../network/cells.js';
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../../physics/constants.js';
import { burnerFire } from '../rooms/burner.js';
import { buildRoom } from '../rooms/room.js';
import { steadyRoom } from '../rooms/solveRoom.js';
import { constantConductivity, type Layer } from '../rooms/wall.js';
import { BASE, BURNING_IN_LAYERS, plumeOf, radiantShareOf, roomOf, type Assumptions } from './assumptions.js';
import type { MeasuredRow } from './measured.js';
import { QUANTITIES, type ValidationTable } from './quantities.js';

/** Columns that the table of the box must have. */
export const BOX_COLUMNS = { texts: ['place'], numbers: ['fire_kW', 'O2_volume_fraction'] } as const;

const BOX = { length: 1.44, width: 0.95, height: 0.98 } as const;
const DOORWAY = { width: 0.48, height: 0.81, sill: 0 } as const;
/** The square burner as a round one of its area. */
const BURNER = { across: 0.13 * Math.sqrt(4 / Math.PI), top: 0.15 } as const;
/** Gas is drawn off so far under the roof [m]. */
const UNDER_ROOF = 0.1;
/** Room air: the data give no temperature, and oxygen hardly follows it [K]. */
const OUTDOORS = 20 + ZERO_CELSIUS;
/** Of dry air, mole fraction. */
const FRESH = 0.2095;
/**
 * Conductivity as stated; density and specific heat, which a steady state does not ask for, as the corridor's board.
 */
const BOARD: Layer = {
  type: 'solid',
  thickness: 0.025,
  density: 720,
  specificHeat: 1250,
  conductivity: constantConductivity(0.125),
  slices: 6,
};

function oxygenUnderRoof(row: MeasuredRow, a: Assumptions): number {
  const { network, column } = buildRoom({
    ...BOX,
    vents: [DOORWAY],
    ...roomOf(a),
    layers: [BOARD],
    // natural gas of 48.2 MJ/kg, H/C 3.8, as methane: as much oxygen for its heat within 1 %
    fire: burnerFire('methane', radiantShareOf('methane', a)),
    burner: { ...BURNER, ...plumeOf(a) },
    outdoors: { temperature: OUTDOORS, pressure: STANDARD_PRESSURE, wind: 0 },
  });
  const { oxygen } = steadyRoom(network, row.number('fire_kW') * 1e3);
  return oxygen[cellAtHeight(network, column, BOX.height - UNDER_ROOF)];
}

export function boxTable(rows: readonly MeasuredRow[]): ValidationTable {
  return {
    ...QUANTITIES.oxygenUnderRoof,
    rows: rows.map((row) => ({
      id: row.id,
      group: row.id,
      measured: FRESH - row.number('O2_volume_fraction'),
      computed: FRESH - oxygenUnderRoof(row, BASE),
      layered: FRESH - oxygenUnderRoof(row, BURNING_IN_LAYERS),
      leftOut: '',
    })),
  };
}
