/** A box of a room with openings to the outdoors and a fire in it, as a network of one zone. */
import { addWindows } from '../../network/build.js';
import { joinPlates } from '../../network/patches.js';
import { OUTDOORS, type FaceShape, type Network, type NetworkFire } from '../../network/types.js';
import { jetShape } from '../../physics/ceilingJet.js';
import { hydraulicDiameter } from '../../physics/forcedConvection.js';
import { meanBeamLength } from '../../physics/gasRadiation.js';
import { bareNetwork, bareZone } from './bareNetwork.js';
import { addWall, type Layer, type WallNodes } from './wall.js';

export interface Vent {
  width: number;
  height: number;
  /** height of its lower edge [m] */
  sill: number;
}

export interface RoomSpec {
  length: number;
  width: number;
  height: number;
  vents: readonly Vent[];
  discharge: number;
  /** of every wall, roof and floor, from the inside outwards; none: they take up and lose nothing */
  layers: readonly Layer[];
  /** in zone 0 */
  fire: NetworkFire;
  soot: number;
  insideEmissivity: number;
  outsideEmissivity: number;
  innerConvection: number;
  /** a fire whose plume strikes the ceiling: its width, and how far under the ceiling it is [m] */
  struck?: { across: number; height: number };
  /** room and fire radiate out of its openings, as they do through what is open of a pit */
  ventsRadiate?: boolean;
  outdoors: { temperature: number; pressure: number; wind: number };
}

export const SURFACES = ['ceiling', 'wallUpper', 'wallLower', 'floor'] as const;
export type Surface = (typeof SURFACES)[number];

export interface Room {
  network: Network;
  /** nodes of each surface; undefined in a room without walls */
  walls?: Record<Surface, WallNodes>;
  areas: Record<Surface, number>;
}

/** Inside areas; the four walls are one surface cut at half height, openings taken from the half they lie in. */
export function surfaceAreas({ length, width, height, vents }: RoomSpec): Record<Surface, number> {
  const open = (low: number, high: number) =>
    vents.reduce((sum, v) => sum + v.width * Math.max(0, Math.min(high, v.sill + v.height) - Math.max(low, v.sill)), 0);
  const half = height / 2;
  const side = 2 * (length + width) * half;
  const level = length * width;
  return { ceiling: level, wallUpper: side - open(half, height), wallLower: side - open(0, half), floor: level };
}

const STANDING: Readonly<Record<Surface, FaceShape>> = {
  ceiling: 'up',
  wallUpper: 'vertical',
  wallLower: 'vertical',
  floor: 'down',
};

/** A room with an opening and a burner, of the pit's own zones, walls and openings. */
export function buildRoom(spec: RoomSpec): Room {
  const { length, width, height, layers } = spec;
  const areas = surfaceAreas(spec);
  const inside = SURFACES.reduce((sum, name) => sum + areas[name], 0);
  const volume = length * width * height;
  const network: Network = {
    ...bareNetwork(spec.outdoors),
    fire: { ...spec.fire },
    innerConvection: spec.innerConvection,
  };
  network.zones.push({
    ...bareZone('room', { floor: 0, roof: height, section: width * height }),
    volume,
    length,
    hydraulicDiameter: hydraulicDiameter(volume, inside),
    beamLength: meanBeamLength(volume, inside),
    soot: spec.soot,
  });
  spec.vents.forEach((vent, n) => {
    network.openings.push({
      name: `opening ${n + 1}`,
      role: 'doorway',
      from: 0,
      to: OUTDOORS,
      area: vent.width * vent.height,
      discharge: spec.discharge,
      centre: vent.sill + vent.height / 2,
      extent: vent.height,
      windPressure: 0,
      sees: spec.ventsRadiate,
    });
  });
  addWindows(network);
  if (layers.length === 0) return { network, areas };
  const level = length * width;
  const lengths = { vertical: [height, height], level: [level / (2 * (length + width)), Math.sqrt(level)] } as const;
  const wall = (name: Surface): WallNodes => {
    const shape = STANDING[name];
    const [free, wind] = shape === 'vertical' ? lengths.vertical : lengths.level;
    return addWall(network, 0, {
      name,
      area: areas[name],
      shape,
      length: free,
      windLength: wind,
      layers,
      insideEmissivity: spec.insideEmissivity,
      outsideEmissivity: spec.outsideEmissivity,
    });
  };
  const walls = {
    ceiling: wall('ceiling'),
    wallUpper: wall('wallUpper'),
    wallLower: wall('wallLower'),
    floor: wall('floor'),
  };
  if (spec.struck) {
    const { across, height: over } = spec.struck;
    const faces = network.faces.flatMap((f, i) => (f.zone === 0 && f.shape === 'up' ? [i] : []));
    network.fire = {
      ...network.fire,
      roof: { faces, across, height: over, jet: jetShape({ length, width, height: over }) },
    };
  }
  joinAlongGirth(network, walls, spec);
  return { network, walls, areas };
}

/** Plate conducts from the ceiling down the walls to the floor. */
function joinAlongGirth(network: Network, walls: Record<Surface, WallNodes>, spec: RoomSpec): void {
  const plate = spec.layers.find((layer) => layer.type === 'plate');
  if (!plate) return;
  const edge = 2 * (spec.length + spec.width);
  const level = (spec.length * spec.width) / edge;
  const quarter = spec.height / 4;
  const joints: [Surface, Surface, number][] = [
    ['ceiling', 'wallUpper', level + quarter],
    ['wallUpper', 'wallLower', 2 * quarter],
    ['wallLower', 'floor', quarter + level],
  ];
  for (const [upper, lower, distance] of joints) {
    const ends = { a: walls[upper].plate!, b: walls[lower].plate! };
    joinPlates(network, { ...ends, edge, thickness: plate.thickness, distance, steel: 'carbon' });
  }
}

/** Mean over all surfaces, by area. */
export function areaMean(areas: Record<Surface, number>, values: Record<Surface, number>): number {
  let sum = 0;
  let whole = 0;
  for (const name of SURFACES) {
    sum += areas[name] * values[name];
    whole += areas[name];
  }
  return sum / whole;
}

/** The same number for every surface, from a function of its name. */
export function perSurface(of: (name: Surface) => number): Record<Surface, number> {
  return { ceiling: of('ceiling'), wallUpper: of('wallUpper'), wallLower: of('wallLower'), floor: of('floor') };
}
