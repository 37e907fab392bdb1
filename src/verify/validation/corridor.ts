/**
 * The corridor of Peacock, Davis & Lee (1988), NBSIR 88-3752, test 100A: a methane fire in a burn room, a long corridor
 * beside it with a doorway at its far end. Built as a firebox and its chamber are: burn room mixed, corridor in cells
 * and layers.
 */
import { DEFAULT_RESOLUTION } from '../../network/build.js';
import { cellAtHeight } from '../../network/cells.js';
import type { FaceShape } from '../../network/types.js';
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../../physics/constants.js';
import { buildBuilding } from '../rooms/building.js';
import type { Building, Lining } from '../rooms/buildingSpec.js';
import { burnerFire } from '../rooms/burner.js';
import { MIRRORED } from '../relations/mirrored.js';
import { roomThroughTime, type RoomState } from '../rooms/solveRoom.js';
import { addWall, constantConductivity, type Layer } from '../rooms/wall.js';
import { radiantShareOf, type Assumptions } from './assumptions.js';
import type { MeasuredRow } from './measured.js';
import type { QuantityName, ValidationRow } from './quantities.js';
import { twoLayers, type TwoLayers } from './twoLayers.js';

/** Columns that the table of the corridor must have. */
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
/**
 * The square burner as a round one of its area. It stands against a wall, as its plume does; its jet is taken as in the
 * middle of the ceiling.
 */
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

interface Cut {
  cells: number;
  levels: number;
}
/** As a pit's chamber is cut, and with gas mixed over its height. */
export const LAYERED: Cut = { cells: DEFAULT_RESOLUTION.chamber, levels: DEFAULT_RESOLUTION.levels };
/** The corridor with gas mixed over its height. */
export const MIXED_CORRIDOR: Cut = { cells: DEFAULT_RESOLUTION.chamber, levels: 1 };

function corridorBuilding(outdoors: number, a: Assumptions, { cells, levels }: Cut): Building {
  const { insideEmissivity, outsideEmissivity, discharge, levels: burning = 1 } = a;
  const made = (layers: readonly Layer[], emissivity = insideEmissivity) => ({
    layers,
    insideEmissivity: emissivity,
    outsideEmissivity,
  });
  const fibre = made([FIBRE]);
  const board = made([SILICATE, GYPSUM], SILICATE_EMISSIVITY);
  const plain = { shape: 'box', floor: 0, soot: 0 } as const;
  return buildBuilding(
    {
      rooms: [
        {
          ...{ ...plain, ...BURN_ROOM, name: 'burn room', cells: 1, levels: burning, strips: burning },
          ...{ ceiling: fibre, side: fibre, bottom: made([FIREBRICK]) },
        },
        {
          ...{ ...plain, ...CORRIDOR, name: 'corridor', cells, levels, strips: levels },
          ...{ ceiling: board, side: board, end: made([GYPSUM]), bottom: made([GYPSUM]) },
        },
      ],
      openings: [
        { ...THROAT, from: { room: 0, cell: 0 }, to: { room: 1, cell: 0 }, in: 'side', discharge, sees: true },
        { ...OUT, from: { room: 1, cell: cells - 1 }, to: 'outdoors', in: 'end', discharge, sees: true },
      ],
      fire: {
        gas: burnerFire('methane', radiantShareOf('methane', a)),
        at: { room: 0, cell: 0 },
        ...BURNER,
        strikes: a.struckRoof,
        bending: (a.bending ?? 1) * MIRRORED['by a wall'],
      },
      outdoors: { temperature: outdoors, pressure: STANDARD_PRESSURE, wind: 0 },
      innerConvection: a.innerConvection,
      entrainment: a.entrainment,
      downflow: a.downflow,
    },
    (building) => addStub(building, fibre, made([FIREBRICK])),
  );
}

/** The stub before the doorway: its gas and its walls belong to the burn room's. */
function addStub({ network, rooms: [{ columns }] }: Building, fibre: Lining, brick: Lining): void {
  const [column] = columns;
  const wall = (zone: number, name: string, shape: FaceShape, area: number, lining = fibre) =>
    addWall(network, zone, { name, area, shape, length: STUB.height, windLength: STUB.height, ...lining });
  for (const zone of column) {
    const { floor, roof } = network.zones[zone];
    const share = Math.max(0, Math.min(roof, STUB.height) - floor) / STUB.height;
    network.zones[zone].volume += share * STUB.length * STUB.width * STUB.height;
    // its end wall stands for what it takes from the burn room's, the doorway taken from that already
    const area = share * 2 * STUB.length * STUB.height;
    if (area > 0) wall(zone, 'stub walls', 'vertical', area);
  }
  const level = STUB.length * STUB.width;
  wall(cellAtHeight(network, column, STUB.height - 1e-6), 'stub ceiling', 'up', level);
  wall(column[0], 'stub floor', 'down', level, brick);
}

/** What was computed of the corridor at a time [s]. */
export interface CorridorMoment {
  time: number;
  state: RoomState;
  /** rises above outdoors [K] */
  burnRoom: number;
  farEnd: TwoLayers;
}

/** Gas of the last cell at a moment, reduced to two layers; temperatures as rises. */
function farEndOf(columns: readonly number[][], gas: (zone: number) => number, outdoors: number): TwoLayers {
  const column = columns[columns.length - 1];
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
  const { network, rooms } = corridorBuilding(outdoors, a, cut);
  const [burnRoom, corridor] = rooms.map(({ columns }) => columns);
  const release = { at: () => power, breaks: [] };
  return roomThroughTime(network, release, times, 'ownHeat').map((state) => {
    const gas = (zone: number) => state.gases[zone];
    const mean = burnRoom[0].reduce((sum, zone) => sum + gas(zone), 0) / burnRoom[0].length;
    return { time: state.time, state, burnRoom: mean - outdoors, farEnd: farEndOf(corridor, gas, outdoors) };
  });
}

type CorridorQuantity = Extract<QuantityName, 'burnRoomGas' | 'corridorHeight' | 'corridorUpper' | 'corridorLower'>;

/** Measured and computed rows of the corridor, a list a quantity. */
export function corridorRows(
  rows: readonly MeasuredRow[],
  layered: readonly CorridorMoment[],
  mixed: readonly CorridorMoment[],
  burning: readonly CorridorMoment[],
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
          layered: at(burning),
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
