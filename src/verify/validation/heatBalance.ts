/** Where the heat of the bare steel room goes by its own measurements, beside what the model makes of it. */
import { Balances } from '../../network/balances.js';
import { Model } from '../../network/model.js';
import { ZERO_CELSIUS } from '../../physics/constants.js';
import { SURFACES } from '../rooms/room.js';
import type { Assumptions } from './assumptions.js';
import type { MeasuredRow } from './measured.js';
import { measuredRises, START, steelRoom, type SteelRoomMoment } from './steelRoom.js';

/** Where the heat of the steel room went at a time [s]. */
export interface HeatBalance {
  time: number;
  /** by the hood: heat released, and the part of it that came up as hot gas [W] */
  released: number;
  convective: number;
  /**
   * what the outside of the walls gives off at the plate temperatures that were measured: as radiation, to the air [W]
   */
  wallsRadiate: number;
  wallsConvect: number;
  /** what the model sends through the walls and out with the gas [W] */
  modelWalls: number;
  modelGas: number;
  /** emissivity outside that the measured plates would need for the hood's heats to balance */
  balancingEmissivity: number;
}

function outsideLoss(row: MeasuredRow, a: Assumptions): number {
  const { network, walls, areas } = steelRoom(row, a);
  const balances = new Balances(new Model(network));
  const x = new Float64Array(balances.model.size).fill(START + ZERO_CELSIUS);
  const { plates } = measuredRises(row, areas);
  for (const surface of SURFACES) {
    for (const { nodes } of walls[surface]) x[nodes.plate!] = START + ZERO_CELSIUS + plates[surface];
  }
  balances.evaluate(x, { mode: 'release', heat: 0 });
  return balances.totalLoss() - balances.leakLoss;
}

/**
 * The room stands under the hood, so that what its walls give to the air rises into the hood too: released heat less
 * the hood's convective heat is what walls and doorway radiate.
 */
export function heatBalance({ row, state }: SteelRoomMoment, a: Assumptions): HeatBalance {
  const convect = outsideLoss(row, { ...a, outsideEmissivity: 0 });
  const radiate = outsideLoss(row, a) - convect;
  const released = row.number('HRR_kW') * 1e3;
  const convective = row.number('HRR_convective_kW') * 1e3;
  return {
    time: row.number('t_s'),
    released,
    convective,
    wallsRadiate: radiate,
    wallsConvect: convect,
    modelWalls: state.wallLoss,
    modelGas: state.gasLoss,
    balancingEmissivity: (a.outsideEmissivity * (released - convective)) / radiate,
  };
}
