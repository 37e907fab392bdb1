/** A room of air at a given temperature with openings, and the flows that the pit's own network finds through them. */
import { solveFlows } from '../network/flow.js';
import { Model } from '../network/model.js';
import { OUTDOORS, type Network } from '../network/types.js';
import { LuSolver } from '../solve/linear.js';
import { bareNetwork, bareZone } from './rooms/bareNetwork.js';

interface RoomOpening {
  name: string;
  area: number;
  discharge: number;
  /** height of its middle and its vertical extent (0: one height) [m] */
  centre: number;
  extent: number;
}

interface StillRoom {
  inside: number;
  outside: number;
  pressure: number;
  openings: readonly RoomOpening[];
}

/** Flow out of and into the room through one opening [kg/s]. */
interface RoomFlow {
  out: number;
  in: number;
}

const MASS_TOLERANCE = 1e-12;

/**
 * Flows that balance the room's mass.
 * @throws RangeError when the network does not balance
 */
export function stillRoomFlows({ inside, outside, pressure, openings }: StillRoom): Map<string, RoomFlow> {
  const top = Math.max(...openings.map((each) => each.centre + each.extent / 2));
  const model = new Model(network(outside, pressure, openings, top));
  const x = new Float64Array(model.size);
  x.fill(inside, 0, model.fuel);
  model.gasState(x);
  const { residual } = solveFlows(model, x, new LuSolver(1), MASS_TOLERANCE);
  if (!(residual < 1e-9)) throw new RangeError(`the flows of the room do not balance: ${residual} kg/s are left`);
  return new Map(openings.map((each, n) => [each.name, { out: model.flows[n].forward, in: model.flows[n].backward }]));
}

function network(outside: number, pressure: number, openings: readonly RoomOpening[], top: number): Network {
  const room = bareNetwork({ temperature: outside, pressure, wind: 0 });
  room.zones.push(bareZone('room', { floor: 0, roof: top, section: 1 }));
  for (const each of openings) room.openings.push({ ...each, role: 'doorway', from: 0, to: OUTDOORS, windPressure: 0 });
  return room;
}
