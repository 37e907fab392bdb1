/** A room of air at a given temperature with openings, and the flows that the pit's own network finds through them. */
import { solveFlows } from '../network/flow.js';
import { Model } from '../network/model.js';
import { OUTDOORS, type Network, type NetworkOpening } from '../network/types.js';
import { dryAir } from '../physics/gasMixture.js';
import { LuSolver } from '../solve/linear.js';

export interface RoomOpening {
  name: string;
  area: number;
  discharge: number;
  /** height of its middle and its vertical extent (0: one height) [m] */
  centre: number;
  extent: number;
}

export interface StillRoom {
  inside: number;
  outside: number;
  pressure: number;
  openings: readonly RoomOpening[];
}

/** Flow out of and into the room through one opening [kg/s]. */
export interface RoomFlow {
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
  const { residual } = solveFlows(model, x, new LuSolver(1, 0), MASS_TOLERANCE);
  if (!(residual < 1e-9)) throw new RangeError(`the flows of the room do not balance: ${residual} kg/s are left`);
  return new Map(openings.map((each, n) => [each.name, { out: model.flows[n].forward, in: model.flows[n].backward }]));
}

function network(outside: number, pressure: number, openings: readonly RoomOpening[], top: number): Network {
  return {
    zones: [
      {
        name: 'room',
        part: 'room',
        floor: 0,
        centre: top / 2,
        roof: top,
        volume: top,
        section: 1,
        length: 1,
        hydraulicDiameter: 1,
        beamLength: 1,
        soot: 0,
      },
    ],
    openings: openings.map((each): NetworkOpening => ({
      ...each,
      role: 'doorway',
      from: 0,
      to: OUTDOORS,
      windPressure: 0,
    })),
    nodes: [],
    faces: [],
    links: [],
    fire: {
      zone: 0,
      radiantShare: 0,
      throatZone: OUTDOORS,
      throatArea: 0,
      heatValue: 1,
      gasPerFuel: 1,
      gasComposition: dryAir,
      heatPerOxygen: 1,
      oxygenUse: 0,
      airPerFuel: 1,
    },
    outdoors: {
      temperature: outside,
      pressure,
      wind: 0,
      surroundings: outside,
      sun: 0,
      rain: 0,
      air: dryAir,
      humidityRatio: 0,
    },
    innerConvection: 1,
    stems: [],
    gauge: 0,
    stem: { diameter: 0.00635, emissivity: 0.9, fill: 1 },
  };
}
