/** Rooms with a fire in one as they are described, and as they stand once built. */
import type { Network, NetworkFire } from '../../network/types.js';
import type { Layer, WallNodes } from './wall.js';

/** What a surface is made of, from the inside outwards; no layers: it takes up and loses nothing. */
export interface Lining {
  layers: readonly Layer[];
  insideEmissivity: number;
  outsideEmissivity: number;
}

/** A room of a building. */
export interface RoomSpec {
  name: string;
  /** a cylinder lies; width and height are both its bore */
  shape: 'box' | 'cylinder';
  /** inside [m] */
  length: number;
  width: number;
  height: number;
  /** of its floor above the ground [m] */
  floor: number;
  /** cells along it, level layers of its gas, and strips of its walls, a multiple of the layers */
  cells: number;
  levels: number;
  strips: number;
  ceiling: Lining;
  side: Lining;
  /** default: as the sides, and one surface with them */
  end?: Lining;
  bottom: Lining;
  soot: number;
}

/** A cell of a room, both counted from 0. */
export interface Place {
  room: number;
  cell: number;
}

/** An opening in a wall, or in the roof of one room under the floor of another. */
export interface OpeningSpec {
  from: Place;
  to: Place | 'outdoors';
  in: 'side' | 'end' | 'roof';
  /** of one in a roof: its two sides [m] */
  width: number;
  height: number;
  /** of its lower edge above the ground [m] */
  sill: number;
  discharge: number;
  /** gas, walls and fire radiate through it */
  sees: boolean;
}

interface FireSpec {
  gas: Omit<NetworkFire, 'zone'>;
  at: Place;
  /** of its top above the floor of its room [m] */
  top: number;
  /** its diameter [m]; where none is given its plume neither strikes the ceiling nor takes gas from layer to layer */
  across?: number;
  /** does its plume strike the ceiling? */
  strikes: boolean;
  /** factor on what its plume takes in */
  bending: number;
}

/** Rooms with what joins them and what burns in one. */
export interface BuildingSpec {
  rooms: readonly RoomSpec[];
  openings: readonly OpeningSpec[];
  fire: FireSpec;
  outdoors: { temperature: number; pressure: number; wind: number };
  innerConvection: number;
  entrainment?: number;
  downflow?: number;
}

/** Sides of a room. */
export type Surface = 'ceiling' | 'side' | 'end' | 'floor';

/** A piece of wall beside one zone. */
export interface RoomWall {
  surface: Surface;
  cell: number;
  zone: number;
  /** heights above the ground [m] */
  low: number;
  high: number;
  area: number;
  nodes: WallNodes;
}

/** A room and the zones and walls that it has become. */
export interface BuiltRoom {
  spec: RoomSpec;
  /** zones of each cell along it, lowest first */
  columns: number[][];
  walls: RoomWall[];
}

/** The network of all rooms. */
export interface Building {
  network: Network;
  rooms: BuiltRoom[];
  /** per opening: which of the network's it has become */
  openings: number[][];
}
