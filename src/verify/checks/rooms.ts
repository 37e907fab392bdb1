/**
 * Whole-model checks: any number of boxes and lying cylinders joined by openings, a fire in one, steady or at a time.
 */
import { cellAtHeight } from '../../network/cells.js';
import { choice, defineCheck, optional, quantity, type Check, type Values } from '../check.js';
import { givenCurve } from '../givenCurve.js';
import { buildBuilding } from '../rooms/building.js';
import type { Building } from '../rooms/buildingSpec.js';
import {
  neutralHeightIn,
  pressureOverOutdoors,
  roomThroughTime,
  steadyRoom,
  type RoomState,
} from '../rooms/solveRoom.js';
import { surfaceMean } from '../rooms/room.js';
import { twoLayers } from '../validation/twoLayers.js';
import { above, building, placeOf, roomNumber, specOf, whole, type BuildingValues } from './roomsInputs.js';

interface Solved {
  building: Building;
  state: RoomState;
}

/** Asks of one building follow each other in a table: the last one solved is kept. */
let last: { of: string; solved: Solved } | undefined;

function solve(v: BuildingValues): Solved {
  const of = JSON.stringify(Object.keys(building).map((name) => v[name as keyof BuildingValues] ?? null));
  if (last?.of !== of) last = { of, solved: solveAnew(v) };
  return last.solved;
}

function solveAnew(v: BuildingValues): Solved {
  if (!(v.power >= 0)) throw new RangeError(`power must not be below zero, as ${v.power} W is`);
  const built = buildBuilding(specOf(v));
  const { times, powers } = v;
  const changes = times !== undefined || powers !== undefined;
  const at = changes ? givenCurve('a fire that changes', times ?? [], powers ?? []) : () => v.power;
  if (v.time === undefined) {
    if (changes) throw new RangeError('a fire that changes needs a time at which it is asked');
    return { building: built, state: steadyRoom(built.network, v.power) };
  }
  const [state] = roomThroughTime(built.network, { at, breaks: times ?? [] }, [above('time', v.time)], 'ownHeat');
  return { building: built, state };
}

const where = {
  ...building,
  room: roomNumber('that is asked'),
  along: optional('share', 'where along it, 0 to 1; 0.5 when left out'),
} as const;
const atHeight = { ...where, at: quantity('length', 'height above the ground') } as const;

function columnOf({ building: { rooms } }: Solved, v: Pick<Values<typeof where>, 'room' | 'along'>): number[] {
  const { room, cell } = placeOf(
    rooms.map(({ spec }) => spec),
    'room',
    v.room,
    v.along ?? 0.5,
  );
  return rooms[room].columns[cell];
}

/** What is asked of the gas at a height in a room. */
function inGas(of: (solved: Solved, zone: number, at: number) => number): (v: Values<typeof atHeight>) => number {
  return (v) => {
    const solved = solve(v);
    return of(solved, cellAtHeight(solved.building.network, columnOf(solved, v), v.at), v.at);
  };
}

function layersOf(v: Values<typeof where>) {
  const solved = solve(v);
  const { spec } = solved.building.rooms[v.room - 1];
  const found = twoLayers(
    columnOf(solved, v).map((zone) => solved.state.gases[zone]),
    spec.height,
  );
  return { ...found, height: spec.floor + found.height };
}

const wall = {
  ...where,
  surface: choice(
    ['ceiling', 'upper side', 'lower side', 'end', 'floor', 'all'],
    "of the room; a cylinder's shell is its sides, halves above and below its middle",
  ),
  face: choice(['inside', 'outside', 'plate'], 'of the wall'),
} as const;

function wallTemperature(v: Values<typeof wall>): number {
  const solved = solve(v);
  const { building, state } = solved;
  columnOf(solved, v);
  const { spec, walls } = building.rooms[v.room - 1];
  const middle = spec.floor + spec.height / 2;
  const cell = v.along === undefined ? undefined : placeOf([spec], 'room', 1, v.along).cell;
  const asked = walls.filter(({ surface, low, cell: own }) => {
    if (cell !== undefined && own !== cell) return false;
    if (v.surface === 'all') return true;
    const half = low > middle - 1e-9 ? 'upper side' : 'lower side';
    return surface === 'side' ? half === v.surface : surface === v.surface;
  });
  if (asked.length === 0) throw new RangeError(`room ${v.room} has no ${v.surface} there`);
  if (asked.some(({ nodes }) => nodes[v.face] === undefined)) throw new RangeError(`its ${v.surface} has no plate`);
  return surfaceMean(asked, (nodes) => state.x[nodes[v.face]!]);
}

const through = {
  ...building,
  opening: quantity('number', 'that is asked; openings count from 1'),
  direction: choice(['out of the first room', 'into it'], 'of the flow'),
} as const;

function flowThrough(v: Values<typeof through>): number {
  const { building, state } = solve(v);
  const own = building.openings[whole('opening', v.opening, building.openings.length) - 1];
  const flows = v.direction === 'into it' ? state.backward : state.forward;
  return own.reduce((sum, i) => sum + flows[i], 0);
}

export const roomsChecks: Record<string, Check> = {
  roomsGas: defineCheck(
    'gas temperature at a height in one of several rooms, a fire in one',
    atHeight,
    'temperature',
    inGas(({ state }, zone) => state.gases[zone]),
  ),
  roomsOxygen: defineCheck(
    'mole fraction of oxygen in the dried gas at a height in one of the rooms',
    atHeight,
    'share',
    inGas(({ state }, zone) => state.oxygen[zone]),
  ),
  roomsPressure: defineCheck(
    'pressure of the gas in one of the rooms less that of the outdoor air at the same height',
    atHeight,
    'pressure',
    inGas(({ state }, zone, at) => pressureOverOutdoors(state, zone, at)),
  ),
  roomsNeutralHeight: defineCheck(
    'height above the ground at which gas in one of the rooms has the pressure of the outdoor air',
    where,
    'length',
    (v) => {
      const solved = solve(v);
      const height = neutralHeightIn(solved.building.network, solved.state, columnOf(solved, v));
      if (Number.isNaN(height)) throw new RangeError(`nowhere in room ${v.room} is pressure that of the outdoor air`);
      return height;
    },
  ),
  roomsLayerHeight: defineCheck(
    'height above the ground of the join between hot and cold gas in one of the rooms',
    where,
    'length',
    (v) => layersOf(v).height,
  ),
  roomsLayerGas: defineCheck(
    'gas temperature above or below that join',
    { ...where, layer: choice(['upper', 'lower'], 'above or below the join') },
    'temperature',
    (v) => layersOf(v)[v.layer],
  ),
  roomsWall: defineCheck('mean temperature of a surface of one of the rooms', wall, 'temperature', wallTemperature),
  roomsFlow: defineCheck('mass flow one way through an opening of the rooms', through, 'massFlow', flowThrough),
};
