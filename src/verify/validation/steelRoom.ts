/**
 * The thin steel room of Sjöström & Wickström (SP Technical Research Institute of Sweden): a propane fire in a box of 3
 * mm plate with a doorway, bare (C1) or with stone wool inside (B1), against time.
 */
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../../physics/constants.js';
import { burnerFire } from '../rooms/burner.js';
import { cellAtHeight } from '../../network/cells.js';
import { areaMean, buildRoom, perSurface, surfaceMean, type Room, type Surface } from '../rooms/room.js';
import { roomThroughTime, type HeatRelease, type RoomState } from '../rooms/solveRoom.js';
import { constantConductivity, type Layer } from '../rooms/wall.js';
import { plumeOf, radiantShareOf, roomOf, type Assumptions } from './assumptions.js';
import { AVERAGED_OVER, burnerBehind, hoodAsIs, type CorrectedRelease, type Reading } from './calorimeter.js';
import type { MeasuredRow } from './measured.js';

const PLATES: Readonly<Record<Surface, string>> = {
  ceiling: 'steel_ceiling_C',
  wallUpper: 'steel_wall_upper_C',
  wallLower: 'steel_wall_lower_C',
  floor: 'steel_floor_C',
};
const PROBES: Readonly<Record<Surface, string>> = {
  ceiling: 'PT_ceiling_C',
  wallUpper: 'PT_wall_upper_C',
  wallLower: 'PT_wall_lower_C',
  floor: 'PT_floor_C',
};
const GAS = ['gas_back_upper_C', 'gas_front_upper_C', 'gas_back_lower_C', 'gas_front_lower_C'] as const;

/** Columns that the table of the steel room must have. */
export const STEEL_ROOM_COLUMNS = {
  texts: ['test', 'wall', 'wool_side'],
  numbers: [
    ...[
      'plate_mm',
      'wool_mm',
      'room_L_m',
      'room_W_m',
      'room_H_m',
      'burner_side_m',
      'burner_top_m',
      'door_W_m',
      'door_H_m',
    ],
    ...[
      't_s',
      'HRR_kW',
      'HRR_convective_kW',
      'O2_door_1400',
      ...Object.values(PLATES),
      ...Object.values(PROBES),
      ...GAS,
    ],
  ],
} as const;

/** Steel and air start at 20-21 °C; the lower is taken [°C]. */
export const START = 20;

/** The wool's slices: twice as many move the probes by less than 1 % (tests). */
const SLICES = 40;
/** As stated with the data. */
const WOOL = { density: 200, specificHeat: 1000 } as const;

/**
 * Plate thermometers: 0.7 mm of alloy with 10 mm of insulation behind, against the wall, as the released inputs have
 * them.
 */
const PROBE = {
  area: 0.01,
  massPerArea: 8470 * 0.7e-3,
  specificHeat: 500,
  emissivity: 0.85,
  backing: { thickness: 0.01, conductivity: 0.1 },
} as const;

/** Moments at which a reading's averaging time is sampled. */
const SAMPLES = 9;

/** What was computed of the steel room at one row of its table. */
export interface SteelRoomMoment {
  row: MeasuredRow;
  /** means over the averaging time: rises above the start [K] */
  plates: Record<Surface, number>;
  probes: Record<Surface, number>;
  plateMean: number;
  probeMean: number;
  /** as the probes stand: mean of upper and lower, and upper */
  gas: number;
  gasUpper: number;
  areas: Record<Surface, number>;
  /** at the end of the averaging time */
  state: RoomState;
}

/** Heights of the gas probes that are told as upper and lower [m]. */
const GAS_HEIGHTS = { upper: [1.2, 1.5, 1.79], lower: [0.3, 0.6] } as const;

/** The square burner as a round one of its area, and how high its top is [m]. */
function burnerOf(row: MeasuredRow): { across: number; top: number } {
  return { across: row.number('burner_side_m') * Math.sqrt(4 / Math.PI), top: row.number('burner_top_m') };
}

function layersOf(row: MeasuredRow, a: Assumptions, slices: number): Layer[] {
  const plate: Layer = { type: 'plate', thickness: row.number('plate_mm') * 1e-3, specificHeat: a.steelSpecificHeat };
  const thickness = row.number('wool_mm') * 1e-3;
  if (thickness === 0) return [plate];
  return [{ type: 'solid', thickness, ...WOOL, conductivity: a.woolConductivity, slices }, plate];
}

/** Network of a test's room with a plate thermometer on every surface. */
export function steelRoom(
  row: MeasuredRow,
  a: Assumptions,
  slices = SLICES,
): Room & { probes: Record<Surface, number> } {
  const room = buildRoom({
    length: row.number('room_L_m'),
    width: row.number('room_W_m'),
    height: row.number('room_H_m'),
    vents: [{ width: row.number('door_W_m'), height: row.number('door_H_m'), sill: 0 }],
    ...roomOf(a),
    layers: layersOf(row, a, slices),
    fire: burnerFire('propane', radiantShareOf('propane', a)),
    burner: { ...burnerOf(row), ...plumeOf(a) },
    outdoors: { temperature: START + ZERO_CELSIUS, pressure: STANDARD_PRESSURE, wind: 0 },
  });
  return { ...room, probes: perSurface((surface) => addProbe(room, surface)) };
}

/** Middle height of a surface [m]. */
function surfaceMid(walls: Room['walls'][Surface]): number {
  return 0.5 * (Math.min(...walls.map(({ low }) => low)) + Math.max(...walls.map(({ high }) => high)));
}

function addProbe({ network, walls }: Room, surface: Surface): number {
  const { area, massPerArea, specificHeat, emissivity, backing } = PROBE;
  const node = network.nodes.length;
  const mean = surfaceMid(walls[surface]);
  const on = walls[surface].find(({ low, high }) => low <= mean && high >= mean)!;
  const { zone } = on;
  const behind = on.nodes.inside;
  const { shape } = network.faces.find((face) => face.node === behind)!;
  const side = Math.sqrt(area);
  const name = 'plate thermometer';
  network.nodes.push({
    name,
    part: name,
    mass: massPerArea * area,
    material: 'constant',
    specificHeat,
    thickness: 0,
    area: 0,
  });
  network.faces.push({ node, zone, area, shape, length: side, windLength: side, emissivity, sunShare: 0, wet: 0 });
  const conductivity = constantConductivity(backing.conductivity);
  network.links.push({ a: node, b: behind, factor: area / backing.thickness, conductivity });
  return node;
}

function readingsOf(rows: readonly MeasuredRow[]): Reading[] {
  return rows.map((row) => ({ time: row.number('t_s'), heat: row.number('HRR_kW') * 1e3 }));
}

/** Heat released in a test of the steel room, the hood's delay taken out. */
export const correctedRelease = (rows: readonly MeasuredRow[], litAt?: number): CorrectedRelease =>
  burnerBehind(readingsOf(rows), litAt);
/** The same as the hood shows it. */
export const releaseAsIs = (rows: readonly MeasuredRow[]): HeatRelease => hoodAsIs(readingsOf(rows));

/** @param rows of one test, rising in time; slices of the wool, where there is any */
export function runSteelRoom(
  rows: readonly MeasuredRow[],
  release: HeatRelease,
  a: Assumptions,
  slices = SLICES,
): SteelRoomMoment[] {
  const { network, column, walls, areas, probes } = steelRoom(rows[0], a, slices);
  const around = Array.from({ length: SAMPLES }, (_, n) => AVERAGED_OVER * ((n + 0.5) / SAMPLES - 0.5));
  const times = rows.flatMap((row) => around.map((shift) => row.number('t_s') + shift));
  const states = roomThroughTime(network, release, times);
  return rows.map((row, n) => {
    const own = states.slice(n * SAMPLES, (n + 1) * SAMPLES);
    const rise = (of: (state: RoomState) => number) =>
      own.reduce((sum, state) => sum + of(state), 0) / SAMPLES - ZERO_CELSIUS - START;
    const gasAt = (half: keyof typeof GAS_HEIGHTS) => {
      const zones = GAS_HEIGHTS[half].map((height) => cellAtHeight(network, column, height));
      return rise(({ gases }) => zones.reduce((sum, zone) => sum + gases[zone], 0) / zones.length);
    };
    const plates = perSurface((surface) => rise(({ x }) => surfaceMean(walls[surface], ({ plate }) => x[plate!])));
    const probed = perSurface((surface) => rise(({ x }) => x[probes[surface]]));
    return {
      row,
      plates,
      probes: probed,
      plateMean: areaMean(areas, plates),
      probeMean: areaMean(areas, probed),
      gas: 0.5 * (gasAt('upper') + gasAt('lower')),
      gasUpper: gasAt('upper'),
      areas,
      state: own[SAMPLES - 1],
    };
  });
}

/** Measured rises of a row [K]. */
export function measuredRises(row: MeasuredRow, areas: Record<Surface, number>) {
  const rise = (column: string) => row.number(column) - START;
  const plates = perSurface((surface) => rise(PLATES[surface]));
  const probes = perSurface((surface) => rise(PROBES[surface]));
  const mean = (columns: readonly string[]) => columns.reduce((sum, column) => sum + rise(column), 0) / columns.length;
  return {
    plates,
    plateMean: areaMean(areas, plates),
    probeMean: areaMean(areas, probes),
    gasUpper: mean(GAS.slice(0, 2)),
    gasMean: mean(GAS),
  };
}
