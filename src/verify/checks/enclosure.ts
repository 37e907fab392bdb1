/** Whole-model checks: a box with openings and a fire, solved as a pit is. */
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { choice, defineCheck, optional, quantity, table, type Check, type Values } from '../check.js';
import { burnerFire, heaterFire } from '../rooms/burner.js';
import { areaMean, buildRoom, perSurface, surfaceMean, type Room, type RoomSpec } from '../rooms/room.js';
import { neutralHeightIn, roomThroughTime, steadyRoom, type RoomState } from '../rooms/solveRoom.js';
import { constantConductivity, type Layer } from '../rooms/wall.js';

const enclosure = {
  length: quantity('length', 'inside'),
  width: quantity('length', 'inside'),
  height: quantity('length', 'inside'),
  vents: table('length', 'openings to the outdoors, each [width, height, height of its lower edge]'),
  discharge: quantity('number', 'discharge coefficient of the openings'),
  power: quantity('power', 'heat released'),
  fuel: choice(['methane', 'propane', 'heater'], 'what releases it; a heater makes no gas'),
  radiantShare: optional('number', 'share of the heat that leaves as radiation onto the walls; 0 when left out'),
  outdoors: quantity('temperature', 'air and surroundings'),
  pressure: optional('pressure', 'outdoors; one standard atmosphere when left out'),
  wind: optional('speed', 'outdoors; still air when left out'),
  plate: optional('length', 'thickness of bare steel walls, roof and floor'),
  board: optional('length', 'thickness of a board, inside the plate where there is one'),
  boardConductivity: optional('conductivity', 'of the board'),
  boardDensity: optional('density', 'of the board; 200 when left out'),
  boardSpecificHeat: optional('specificHeat', 'of the board; 1000 when left out'),
  insideEmissivity: optional('number', 'of walls; 0.95 when left out'),
  outsideEmissivity: optional('number', 'of walls; 0.9 when left out'),
  soot: optional('perLength', 'absorption coefficient of soot in the gas; 0 when left out'),
  innerConvection: optional('number', 'factor on inner convection; 1 when left out'),
} as const;

type EnclosureValues = Values<typeof enclosure>;

const SLICES = 12;

function layersOf(v: EnclosureValues): Layer[] {
  const layers: Layer[] = [];
  if (v.board !== undefined) {
    if (v.boardConductivity === undefined) throw new RangeError('a board needs its boardConductivity');
    layers.push({
      type: 'solid',
      thickness: v.board,
      density: v.boardDensity ?? 200,
      specificHeat: v.boardSpecificHeat ?? 1000,
      conductivity: constantConductivity(v.boardConductivity),
      slices: SLICES,
    });
  }
  if (v.plate !== undefined) layers.push({ type: 'plate', thickness: v.plate });
  return layers;
}

function roomOf(v: EnclosureValues): Room {
  for (const name of ['length', 'width', 'height', 'discharge', 'outdoors'] as const) {
    if (!(v[name] > 0)) throw new RangeError(`${name} must be above zero, not ${v[name]}`);
  }
  if (!(v.power >= 0)) throw new RangeError(`power must not be below zero, as ${v.power} W is`);
  if (v.vents.length === 0) throw new RangeError('an enclosure needs a vent');
  const vents = v.vents.map((row) => {
    const [width, height, sill] = row;
    if (row.length !== 3 || !(width > 0 && height > 0 && sill >= 0 && sill + height <= v.height * (1 + 1e-9))) {
      throw new RangeError(
        `a vent must be [width, height, lower edge] inside a height of ${v.height} m, not [${row.join(', ')}]`,
      );
    }
    return { width, height, sill };
  });
  const layers = layersOf(v);
  const radiantShare = v.radiantShare ?? 0;
  if (layers.length === 0 && radiantShare > 0) {
    throw new RangeError(
      'walls that take up nothing take no radiation either: leave out radiantShare, or give plate or board',
    );
  }
  const spec: RoomSpec = {
    length: v.length,
    width: v.width,
    height: v.height,
    vents,
    discharge: v.discharge,
    layers,
    fire: v.fuel === 'heater' ? heaterFire(radiantShare) : burnerFire(v.fuel, radiantShare),
    soot: v.soot ?? 0,
    insideEmissivity: v.insideEmissivity ?? 0.95,
    outsideEmissivity: v.outsideEmissivity ?? 0.9,
    innerConvection: v.innerConvection ?? 1,
    outdoors: { temperature: v.outdoors, pressure: v.pressure ?? STANDARD_PRESSURE, wind: v.wind ?? 0 },
  };
  return buildRoom(spec);
}

/** Mean temperature of walls, roof and floor, on the side named. */
function wallMean(room: Room, state: RoomState, side: 'inside' | 'outside' | 'plate'): number {
  const { walls } = room;
  const [ceiling] = walls.ceiling;
  if (!ceiling) throw new RangeError('an enclosure without plate or board has no wall temperature');
  if (side === 'plate' && ceiling.nodes.plate === undefined) throw new RangeError('this enclosure has no plate');
  return areaMean(
    room.areas,
    perSurface((surface) => surfaceMean(walls[surface], (nodes) => state.x[nodes[side]!])),
  );
}

const steady = (v: EnclosureValues) => {
  const room = roomOf(v);
  return { room, state: steadyRoom(room.network, v.power) };
};

const through = (about: string) => `${about} of an enclosure with vents and a fire, steady`;

const later = { ...enclosure, time: quantity('time', 'from the start, everything at outdoor temperature') } as const;

const after = (v: Values<typeof later>) => {
  const room = roomOf(v);
  const [state] = roomThroughTime(room.network, { at: () => v.power, breaks: [] }, [v.time]);
  return { room, state };
};

export const enclosureChecks: Record<string, Check> = {
  enclosureGas: defineCheck(through('gas temperature'), enclosure, 'temperature', (v) => steady(v).state.gas),
  enclosureOutflow: defineCheck(
    through('mass flow out through all openings'),
    enclosure,
    'massFlow',
    (v) => steady(v).state.outflow,
  ),
  enclosureInflow: defineCheck(
    through('mass flow in through all openings'),
    enclosure,
    'massFlow',
    (v) => steady(v).state.inflow,
  ),
  enclosureNeutralHeight: defineCheck(
    through('height of the neutral plane above the floor'),
    enclosure,
    'length',
    (v) => {
      const { room, state } = steady(v);
      return neutralHeightIn(room.network, state, room.column);
    },
  ),
  enclosureWall: defineCheck(
    through('mean temperature of the walls'),
    { ...enclosure, side: choice(['inside', 'outside', 'plate'], 'of the walls') },
    'temperature',
    (v) => {
      const { room, state } = steady(v);
      return wallMean(room, state, v.side);
    },
  ),
  enclosureWallLoss: defineCheck(
    through('heat through the walls'),
    enclosure,
    'power',
    (v) => steady(v).state.wallLoss,
  ),
  enclosureGasAfter: defineCheck(
    'gas temperature of an enclosure after a time under a constant fire',
    later,
    'temperature',
    (v) => after(v).state.gas,
  ),
  enclosureWallAfter: defineCheck(
    'mean temperature of the walls of an enclosure after a time under a constant fire',
    { ...later, side: choice(['inside', 'outside', 'plate'], 'of the walls') },
    'temperature',
    (v) => {
      const { room, state } = after(v);
      return wallMean(room, state, v.side);
    },
  ),
};
