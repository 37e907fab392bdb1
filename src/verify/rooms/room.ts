/** A box of a room with openings to the outdoors and a fire in it, its gas mixed or in layers. */
import type { Network, NetworkFire } from '../../network/types.js';
import { buildBuilding } from './building.js';
import type { RoomWall } from './buildingSpec.js';
import type { Layer, WallNodes } from './wall.js';

interface Vent {
  width: number;
  height: number;
  /** height of its lower edge [m] */
  sill: number;
}

/** A single room with its vents, walls and fire; lengths in m. */
export interface RoomSpec {
  length: number;
  width: number;
  height: number;
  vents: readonly Vent[];
  discharge: number;
  /** of every wall, roof and floor, from the inside outwards; none: they take up and lose nothing */
  layers: readonly Layer[];
  fire: Omit<NetworkFire, 'zone'>;
  soot: number;
  insideEmissivity: number;
  outsideEmissivity: number;
  innerConvection: number;
  /** level layers of its gas; default: mixed over the height */
  levels?: number;
  /**
   * the fire's width and how high it stands [m], whether its plume strikes the ceiling, and a factor on what the plume
   * takes in
   */
  burner?: { across: number; top: number; strikes: boolean; bending?: number };
  /** room and fire radiate out of its openings, as they do through what is open of a pit */
  ventsRadiate?: boolean;
  outdoors: { temperature: number; pressure: number; wind: number };
}

/** What the walls of a single room are told by. */
export const SURFACES = ['ceiling', 'wallUpper', 'wallLower', 'floor'] as const;
/** One of them. */
export type Surface = (typeof SURFACES)[number];

/** A room's network, and which of its bodies make up each surface; areas in m2. */
export interface Room {
  network: Network;
  /** zones of its gas, lowest first */
  column: number[];
  /**
   * what makes up each surface: the four walls are cut at half height, openings taken from the half they lie in; none
   * in a room without walls
   */
  walls: Record<Surface, RoomWall[]>;
  areas: Record<Surface, number>;
}

/** A room with openings and a burner, of the pit's own zones, walls and openings. */
export function buildRoom(spec: RoomSpec): Room {
  const { length, width, height, layers, insideEmissivity, outsideEmissivity, levels = 1, burner } = spec;
  const lining = { layers, insideEmissivity, outsideEmissivity };
  const at = { room: 0, cell: 0 };
  const { network, rooms } = buildBuilding({
    rooms: [
      {
        name: 'room',
        shape: 'box',
        ...{ length, width, height, levels },
        floor: 0,
        cells: 1,
        strips: 2 * levels,
        ceiling: lining,
        side: lining,
        bottom: lining,
        soot: spec.soot,
      },
    ],
    openings: spec.vents.map((vent) => ({
      ...vent,
      from: at,
      to: 'outdoors',
      in: 'side',
      discharge: spec.discharge,
      sees: spec.ventsRadiate ?? false,
    })),
    fire: {
      gas: spec.fire,
      at,
      top: burner?.top ?? 0,
      across: burner?.across,
      strikes: burner?.strikes ?? false,
      bending: burner?.bending ?? 1,
    },
    outdoors: spec.outdoors,
    innerConvection: spec.innerConvection,
  });
  const [{ walls, columns }] = rooms;
  const upright = walls.filter(({ surface }) => surface === 'side');
  const upper = ({ low }: RoomWall) => low > height / 2 - 1e-9;
  const of: Record<Surface, RoomWall[]> = {
    ceiling: walls.filter(({ surface }) => surface === 'ceiling'),
    wallUpper: upright.filter(upper),
    wallLower: upright.filter((wall) => !upper(wall)),
    floor: walls.filter(({ surface }) => surface === 'floor'),
  };
  const areas = perSurface((surface) => of[surface].reduce((sum, { area }) => sum + area, 0));
  return { network, column: columns[0], walls: of, areas };
}

/** Mean over a surface, by area. */
export function surfaceMean(walls: readonly RoomWall[], of: (nodes: WallNodes) => number): number {
  const whole = walls.reduce((sum, { area }) => sum + area, 0);
  return walls.reduce((sum, { area, nodes }) => sum + area * of(nodes), 0) / whole;
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
export function perSurface<T>(of: (name: Surface) => T): Record<Surface, T> {
  return { ceiling: of('ceiling'), wallUpper: of('wallUpper'), wallLower: of('wallLower'), floor: of('floor') };
}
