/**
 * The corridor of Peacock, Davis & Lee (1988), NBSIR 88-3752, test 100A: a methane fire in a burn room, a long corridor beside it with
 * a doorway at its far end. Built as a firebox and its chamber are: burn room mixed, corridor in cells and layers.
 */
import { addWindows, DEFAULT_RESOLUTION, finishZones } from '../../network/build.js';
import { addSliced, type Add } from '../../network/openingCuts.js';
import type { FaceShape, Network } from '../../network/types.js';
import { jetShape } from '../../physics/ceilingJet.js';
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../../physics/constants.js';
import { bareNetwork } from '../rooms/bareNetwork.js';
import { addBox, addDoorway, type Box } from '../rooms/box.js';
import { burnerFire } from '../rooms/burner.js';
import { roomThroughTime, type RoomState } from '../rooms/solveRoom.js';
import { addWall, constantConductivity, type Layer } from '../rooms/wall.js';
import { radiantShareOf, type Assumptions } from './assumptions.js';
import type { MeasuredRow } from './measured.js';
import type { QuantityName, ValidationRow } from './quantities.js';
import { twoLayers, type TwoLayers } from './twoLayers.js';

export const CORRIDOR_COLUMNS = {
  texts: ['test', 'tree', 'place'],
  numbers: ['t_s', 'layer_height_m', 'T_lower_C', 'T_upper_C', 'T_amb_C'],
} as const;

/** Inside sizes [m], linings and fire as stated with the data. */
const BURN_ROOM = { length: 2.4, width: 2.3, height: 2.2 } as const;
const CORRIDOR = { length: 12.2, width: 2.4, height: 2.4 } as const;
/** Between burn room and doorway; lined as the burn room, which is not told, and part of its gas. */
const STUB = { length: 1.1, width: 1.1, height: 2 } as const;
const THROAT = { width: 0.8, height: 1.6, sill: 0 } as const;
const OUT = { width: 0.8, height: 2, sill: 0 } as const;
/** The square burner as a round one of its area. It stands against a wall; its jet is taken as in the middle of the ceiling. */
const BURNER = { across: 0.3 * Math.sqrt(4 / Math.PI), top: 0.5 } as const;
const POWER = 110e3;
/** Trees of thermocouples: the far one stands in the last cell. */
const TREES = { burnRoom: '1', farEnd: '5' } as const;

const solid = (layer: Omit<Layer & { type: 'solid' }, 'type' | 'conductivity'>, k: number): Layer => ({
  type: 'solid',
  ...layer,
  conductivity: constantConductivity(k),
});
const GYPSUM = solid({ thickness: 0.013, density: 930, specificHeat: 1090, slices: 4 }, 0.17);
const SILICATE = solid({ thickness: 0.013, density: 720, specificHeat: 1250, slices: 6 }, 0.12);
const FIREBRICK = solid({ thickness: 0.113, density: 750, specificHeat: 1040, slices: 12 }, 0.36);
const FIBRE: Layer = {
  type: 'solid',
  thickness: 0.05,
  density: 128,
  specificHeat: 1040,
  conductivity: { temperatures: [573, 873, 1173], values: [0.09, 0.17, 0.25] },
  slices: 10,
};
/** Of calcium silicate, as stated. */
const SILICATE_EMISSIVITY = 0.83;

export interface Cut {
  cells: number;
  levels: number;
}
/** As a pit's chamber is cut, and with gas mixed over its height. */
export const LAYERED: Cut = { cells: DEFAULT_RESOLUTION.chamber, levels: DEFAULT_RESOLUTION.levels };
export const MIXED_CORRIDOR: Cut = { cells: DEFAULT_RESOLUTION.chamber, levels: 1 };

function corridorNetwork(outdoors: number, a: Assumptions, { cells, levels }: Cut) {
  const network: Network = {
    ...bareNetwork({ temperature: outdoors, pressure: STANDARD_PRESSURE, wind: 0 }),
    fire: burnerFire('methane', 0, radiantShareOf('methane', a)),
    innerConvection: a.innerConvection,
    ...(a.entrainment === undefined ? {} : { entrainment: a.entrainment }),
    ...(a.downflow === undefined ? {} : { downflow: a.downflow }),
  };
  const add: Add = (o) => void network.openings.push({ discharge: a.discharge, extent: 0, windPressure: 0, ...o });
  const made = (layers: readonly Layer[], insideEmissivity = a.insideEmissivity) => ({
    layers,
    insideEmissivity,
    outsideEmissivity: a.outsideEmissivity,
  });
  const fibre = made([FIBRE]);
  const brick = made([FIREBRICK]);
  addBox(
    network,
    {
      ...BURN_ROOM,
      name: 'burn room',
      cells: 1,
      levels: 1,
      ceiling: fibre,
      side: fibre,
      end: fibre,
      floor: brick,
      doorways: [{ cell: 0, vent: { ...STUB, sill: 0 }, in: 'end' }],
    },
    add,
  );
  if (a.struckRoof) {
    const faces = network.faces.flatMap((face, i) => (face.shape === 'up' ? [i] : []));
    const height = BURN_ROOM.height - BURNER.top;
    network.fire.roof = { faces, across: BURNER.across, height, jet: jetShape({ ...BURN_ROOM, height }) };
  }
  network.zones[0].volume += STUB.length * STUB.width * STUB.height;
  const stub = (name: string, shape: FaceShape, area: number, lining = fibre) =>
    addWall(network, 0, { name, area, shape, length: STUB.height, windLength: STUB.height, ...lining });
  stub('stub ceiling', 'up', STUB.length * STUB.width);
  stub('stub floor', 'down', STUB.length * STUB.width, brick);
  stub('stub walls', 'vertical', (2 * STUB.length + STUB.width) * STUB.height - THROAT.width * THROAT.height);
  const board = made([SILICATE, GYPSUM], SILICATE_EMISSIVITY);
  const corridor = addBox(
    network,
    {
      ...CORRIDOR,
      name: 'corridor',
      cells,
      levels,
      ceiling: board,
      side: board,
      end: made([GYPSUM]),
      floor: made([GYPSUM]),
      doorways: [
        { cell: 0, vent: THROAT, in: 'side' },
        { cell: cells - 1, vent: OUT, in: 'end' },
      ],
    },
    add,
  );
  addSliced(network, add, {
    name: 'doorway between',
    role: 'throat',
    from: [0],
    to: corridor.columns[0],
    area: THROAT.width * THROAT.height,
    centre: THROAT.sill + THROAT.height / 2,
    extent: THROAT.height,
    jet: THROAT.width,
  });
  addDoorway(network, corridor.columns[cells - 1], OUT, a.discharge);
  network.fire.throatArea = THROAT.width * THROAT.height;
  network.fire.seen = [{ zones: corridor.columns[0], share: 1 }];
  finishZones(network);
  addWindows(network);
  return { network, corridor };
}

export interface CorridorMoment {
  time: number;
  state: RoomState;
  /** rises above outdoors [K] */
  burnRoom: number;
  farEnd: TwoLayers;
}

/** Gas of the last cell at a moment, reduced to two layers; temperatures as rises. */
function farEndOf(corridor: Box, gas: (zone: number) => number, outdoors: number): TwoLayers {
  const column = corridor.columns[corridor.columns.length - 1];
  const found = twoLayers(column.map(gas), CORRIDOR.height);
  return { ...found, lower: found.lower - outdoors, upper: found.upper - outdoors };
}

/** @param rows of one test */
export function runCorridor(rows: readonly MeasuredRow[], a: Assumptions, cut: Cut): CorridorMoment[] {
  const outdoors = rows[0].number('T_amb_C') + ZERO_CELSIUS;
  const times = [...new Set(rows.map((row) => row.number('t_s')))].sort((p, q) => p - q);
  return corridorUnder({ power: POWER, outdoors, times }, a, cut);
}

/** The corridor under a steady fire that burns from time 0. @param fire [W], [K], moments [s], rising */
export function corridorUnder(
  { power, outdoors, times }: { power: number; outdoors: number; times: readonly number[] },
  a: Assumptions,
  cut: Cut,
): CorridorMoment[] {
  const { network, corridor } = corridorNetwork(outdoors, a, cut);
  const release = { at: () => power, breaks: [] };
  return roomThroughTime(network, release, times, 'ownHeat').map((state) => {
    const gas = (zone: number) => state.gases[zone];
    return { time: state.time, state, burnRoom: gas(0) - outdoors, farEnd: farEndOf(corridor, gas, outdoors) };
  });
}

type CorridorQuantity = Extract<QuantityName, 'burnRoomGas' | 'corridorHeight' | 'corridorUpper' | 'corridorLower'>;

/** Measured and computed rows of the corridor, a list a quantity. */
export function corridorRows(
  rows: readonly MeasuredRow[],
  layered: readonly CorridorMoment[],
  mixed: readonly CorridorMoment[],
): Record<CorridorQuantity, ValidationRow[]> {
  const table = (
    tree: string,
    of: (row: MeasuredRow) => number,
    computed: (moment: CorridorMoment) => number,
    { beside = true, leftOut = '' } = {},
  ): ValidationRow[] =>
    rows
      .filter((row) => row.text('tree') === tree)
      .map((row) => {
        const at = (moments: readonly CorridorMoment[]) =>
          computed(moments.find(({ time }) => time === row.number('t_s'))!);
        const { id } = row;
        return {
          id,
          group: id,
          measured: of(row),
          computed: at(layered),
          leftOut,
          ...(beside ? { mixed: at(mixed) } : {}),
        };
      });
  const rise = (column: string) => (row: MeasuredRow) => row.number(column) - row.number('T_amb_C');
  const meanRise = (row: MeasuredRow) => {
    const share = row.number('layer_height_m') / BURN_ROOM.height;
    return share * rise('T_lower_C')(row) + (1 - share) * rise('T_upper_C')(row);
  };
  return {
    burnRoomGas: table(TREES.burnRoom, meanRise, (moment) => moment.burnRoom),
    corridorHeight: table(
      TREES.farEnd,
      (row) => row.number('layer_height_m'),
      ({ farEnd }) => farEnd.height,
      {
        beside: false,
      },
    ),
    corridorUpper: table(TREES.farEnd, rise('T_upper_C'), ({ farEnd }) => farEnd.upper),
    corridorLower: table(TREES.farEnd, rise('T_lower_C'), ({ farEnd }) => farEnd.lower, {
      leftOut: 'a rise of a few kelvin says nothing about a ratio',
    }),
  };
}
