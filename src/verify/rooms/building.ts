/**
 * Rooms with a fire in one, built of what a pit is built of: cells along each, its gas in level layers or mixed over the height,
 * walls of several layers in strips, openings between rooms and to the outdoors cut where layers end.
 */
import { addWindows, finishZones } from '../../network/build.js';
import { cellAtHeight, cutsBetween } from '../../network/cells.js';
import { addAlong, addSliced, type Add } from '../../network/openingCuts.js';
import { joinPlates } from '../../network/patches.js';
import { shareBelow } from '../../network/slices.js';
import { OUTDOORS, type Network, type NetworkFire } from '../../network/types.js';
import { jetShape } from '../../physics/ceilingJet.js';
import { hydraulicDiameter } from '../../physics/forcedConvection.js';
import { meanBeamLength } from '../../physics/gasRadiation.js';
import { bareNetwork, bareZone } from './bareNetwork.js';
import { addWall, type Layer, type WallNodes } from './wall.js';

/** What a surface is made of, from the inside outwards; no layers: it takes up and loses nothing. */
export interface Lining {
  layers: readonly Layer[];
  insideEmissivity: number;
  outsideEmissivity: number;
}

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

export interface FireSpec {
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

export interface BuildingSpec {
  rooms: readonly RoomSpec[];
  openings: readonly OpeningSpec[];
  fire: FireSpec;
  outdoors: { temperature: number; pressure: number; wind: number };
  innerConvection: number;
  entrainment?: number;
  downflow?: number;
}

export type Surface = 'ceiling' | 'side' | 'end' | 'floor';

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

export interface BuiltRoom {
  spec: RoomSpec;
  /** zones of each cell along it, lowest first */
  columns: number[][];
  walls: RoomWall[];
}

export interface Building {
  network: Network;
  rooms: BuiltRoom[];
  /** per opening: which of the network's it has become */
  openings: number[][];
}

/** @param more what else stands in the rooms, added before gas is told what bounds it */
export function buildBuilding(spec: BuildingSpec, more: (building: Building) => void = () => undefined): Building {
  const network: Network = {
    ...bareNetwork(spec.outdoors),
    fire: { ...spec.fire.gas, zone: 0 },
    innerConvection: spec.innerConvection,
    ...(spec.entrainment === undefined ? {} : { entrainment: spec.entrainment }),
    ...(spec.downflow === undefined ? {} : { downflow: spec.downflow }),
  };
  const add: Add = (o) => void network.openings.push({ discharge: 1, extent: 0, windPressure: 0, ...o });
  const rooms = spec.rooms.map((room, i) => addRoom(network, room, openIn(spec, i), add));
  const building = {
    network,
    rooms,
    openings: spec.openings.map((opening) => addOpening(network, rooms, opening, add)),
  };
  setFire(building, spec);
  more(building);
  finishZones(network);
  for (const { columns, walls, spec: own } of rooms) if (walls.length === 0) unwalled(network, columns, own);
  addWindows(network);
  return building;
}

/** Area that openings take from a strip of a wall of a cell between two heights. */
type Open = (cell: number, where: 'side' | 'end' | 'roof' | 'floor', low: number, high: number) => number;

function openIn({ openings }: BuildingSpec, room: number): Open {
  return (cell, where, low, high) =>
    openings.reduce((sum, { from, to, in: wall, width, height, sill }) => {
      if (wall === 'roof') {
        const end = where === 'roof' ? from : where === 'floor' ? to : undefined;
        const here = end !== undefined && end !== 'outdoors' && end.room === room && end.cell === cell;
        return here ? sum + width * height : sum;
      }
      const here = [from, to].some((end) => end !== 'outdoors' && end.room === room && end.cell === cell);
      if (!here || wall !== where) return sum;
      return sum + width * Math.max(0, Math.min(high, sill + height) - Math.max(low, sill));
    }, 0);
}

function addRoom(network: Network, spec: RoomSpec, open: Open, add: Add): BuiltRoom {
  const { name, length, width, height, cells, levels, floor } = spec;
  const round = spec.shape === 'cylinder';
  const each = length / cells;
  const section = round ? (Math.PI / 4) * height ** 2 : width * height;
  const below = (share: number) => shareBelow(round, share);
  const room: BuiltRoom = { spec, columns: [], walls: [] };
  for (let i = 0; i < cells; i++) {
    const column = Array.from({ length: levels }, (_, j) => {
      const own = section * (below((j + 1) / levels).section - below(j / levels).section);
      const space = { floor: floor + (j * height) / levels, roof: floor + ((j + 1) * height) / levels, section: own };
      const { soot } = spec;
      return network.zones.push({ ...bareZone(name, space), volume: own * each, length, soot }) - 1;
    });
    room.columns.push(column);
    const ends = (i === 0 ? 1 : 0) + (i === cells - 1 ? 1 : 0);
    if (levels > 1) {
      const wide = column.slice(1).map((_, j) => widthAt(spec, (j + 1) / levels));
      network.columns.push({
        zones: column,
        areas: wide.map((across) => each * across),
        edges: wide.map((across) => 2 * each + ends * across),
        clear: true,
      });
    }
    addWalls(network, room, i, ends, open);
  }
  joinRoom(network, room);
  addAlong(network, room.columns, name, add);
  return room;
}

function widthAt({ shape, width, height }: RoomSpec, share: number): number {
  return shape === 'cylinder' ? 2 * height * Math.sqrt(share * (1 - share)) : width;
}

function addWalls(network: Network, room: BuiltRoom, cell: number, ends: number, open: Open): void {
  const { spec, columns } = room;
  const { name, length, width, height, levels, strips, floor } = spec;
  const round = spec.shape === 'cylinder';
  const each = length / spec.cells;
  const girth = round ? Math.PI * height : 2 * height;
  const section = round ? (Math.PI / 4) * height ** 2 : width * height;
  const level = (length * width) / (2 * (length + width));
  const wall = (surface: Surface, zone: number, area: number, low: number, high: number, lining: Lining) => {
    if (area <= 0 || lining.layers.length === 0) return;
    const shape =
      surface === 'ceiling'
        ? 'up'
        : surface === 'floor'
          ? 'down'
          : round && surface === 'side'
            ? 'horizontalCylinder'
            : 'vertical';
    const flat = shape === 'up' || shape === 'down';
    const nodes = addWall(network, zone, {
      name: `${name} ${surface}`,
      area,
      shape,
      length: flat ? level : height,
      windLength: flat ? Math.sqrt(each * width) : height,
      ...lining,
    });
    room.walls.push({ surface, cell, zone, low, high, area, nodes });
  };
  const column = columns[cell];
  for (let k = 0; k < strips; k++) {
    const [low, high] = [floor + (k * height) / strips, floor + ((k + 1) * height) / strips];
    const zone = column[Math.floor((k * levels) / strips)];
    const [from, to] = [shareBelow(round, k / strips), shareBelow(round, (k + 1) / strips)];
    const along = girth * each * (to.wall - from.wall) - open(cell, 'side', low, high);
    const across = ends * section * (to.section - from.section) - open(cell, 'end', low, high);
    if (spec.end === undefined && !round) wall('side', zone, along + across, low, high, spec.side);
    else {
      wall('side', zone, along, low, high, spec.side);
      wall('end', zone, across, low, high, spec.end ?? spec.side);
    }
  }
  if (round) return;
  const [bottom, top] = [column[0], column[column.length - 1]];
  const plan = each * width;
  wall('ceiling', top, plan - open(cell, 'roof', 0, 0), floor + height, floor + height, spec.ceiling);
  wall('floor', bottom, plan - open(cell, 'floor', 0, 0), floor, floor, spec.bottom);
}

/** Plates conduct from the ceiling down the sides to the floor, and from cell to cell. */
function joinRoom(network: Network, { spec, walls }: BuiltRoom): void {
  const thickness = (lining: Lining) => lining.layers.find((layer) => layer.type === 'plate')?.thickness ?? 0;
  const plate = thickness(spec.side);
  if (plate === 0) return;
  const { length, width, height, cells, strips } = spec;
  const each = length / cells;
  const round = spec.shape === 'cylinder';
  const at = (cell: number, surface: Surface) => walls.filter((wall) => wall.cell === cell && wall.surface === surface);
  const join = (a: RoomWall | undefined, b: RoomWall | undefined, edge: number, distance: number, thick = plate) => {
    const ends = { a: a?.nodes.plate, b: b?.nodes.plate };
    if (ends.a === undefined || ends.b === undefined) return;
    joinPlates(network, { a: ends.a, b: ends.b, edge, thickness: thick, distance, steel: 'carbon' });
  };
  const arc = (k: number) =>
    round
      ? 0.5 * Math.PI * height * (shareBelow(true, (k + 1) / strips).wall - shareBelow(true, k / strips).wall)
      : height / strips;
  const level = (length * width) / (2 * (length + width));
  for (let i = 0; i < cells; i++) {
    const sides = at(i, 'side');
    const ends = (i === 0 ? 1 : 0) + (i === cells - 1 ? 1 : 0);
    const edge = 2 * each + (spec.end === undefined && !round ? ends * width : 0);
    for (let k = 1; k < strips; k++) join(sides[k], sides[k - 1], edge, 0.5 * (arc(k) + arc(k - 1)));
    if (!round) {
      join(at(i, 'ceiling')[0], sides[strips - 1], edge, level + 0.5 * arc(strips - 1));
      join(at(i, 'floor')[0], sides[0], edge, level + 0.5 * arc(0));
    }
    if (i === 0) continue;
    const before = at(i - 1, 'side');
    sides.forEach((wall, k) => join(before[k], wall, 2 * arc(k), each));
    for (const surface of ['ceiling', 'floor'] as const) join(at(i - 1, surface)[0], at(i, surface)[0], width, each);
  }
}

function addOpening(network: Network, rooms: readonly BuiltRoom[], o: OpeningSpec, add: Add): number[] {
  const first = network.openings.length;
  const column = ({ room, cell }: Place) => rooms[room].columns[cell];
  const from = column(o.from);
  const area = o.width * o.height;
  const { discharge, sees } = o;
  if (o.in === 'roof') {
    const top = from[from.length - 1];
    const centre = network.zones[top].roof;
    const to = o.to === 'outdoors' ? OUTDOORS : column(o.to)[0];
    const jet = Math.sqrt(area);
    add({ name: 'roof opening', role: 'passage', from: top, to, area, centre, discharge, sees, level: true, jet });
  } else if (o.to === 'outdoors') {
    const cuts = cutsBetween(network, [from], o.sill, o.sill + o.height);
    for (let i = 1; i < cuts.length; i++) {
      const centre = 0.5 * (cuts[i - 1] + cuts[i]);
      const extent = cuts[i] - cuts[i - 1];
      const zone = cellAtHeight(network, from, centre);
      const cut = { area: o.width * extent, centre, extent, discharge, sees };
      add({ name: 'doorway', role: 'doorway', from: zone, to: OUTDOORS, ...cut });
    }
  } else {
    addSliced(network, add, {
      name: 'doorway between',
      role: 'doorway',
      from,
      to: column(o.to),
      area,
      centre: o.sill + o.height / 2,
      extent: o.height,
      discharge,
      sees,
      jet: o.width,
    });
  }
  return Array.from({ length: network.openings.length - first }, (_, i) => first + i);
}

/** The fire in its layer, what its plume strikes and takes in, and what it shines on through openings between rooms. */
function setFire({ network, rooms }: Building, { fire, openings }: BuildingSpec): void {
  const { spec, columns, walls } = rooms[fire.at.room];
  const column = columns[fire.at.cell];
  const at = spec.floor + fire.top;
  const own: NetworkFire = { ...fire.gas, zone: cellAtHeight(network, column, at) };
  network.fire = own;
  const { across } = fire;
  const height = spec.height - fire.top;
  if (across !== undefined && column.length > 1) own.plume = { at, across, bending: fire.bending };
  if (across !== undefined && fire.strikes) {
    const struck =
      spec.shape === 'cylinder'
        ? walls.filter(({ surface, high }) => surface === 'side' && high > spec.floor + spec.height - 1e-9)
        : walls.filter(({ surface }) => surface === 'ceiling');
    const inside = new Set(struck.map(({ nodes }) => nodes.inside));
    const faces = network.faces.flatMap(({ node, zone }, i) => (zone !== OUTDOORS && inside.has(node) ? [i] : []));
    if (faces.length > 0) own.roof = { faces, across, height, jet: jetShape({ ...spec, height }) };
  }
  const seen = openings.filter(
    ({ from, to, sees, in: wall }) =>
      sees &&
      wall !== 'roof' &&
      to !== 'outdoors' &&
      [from, to].some((end) => rooms[end.room] === rooms[fire.at.room] && columns[end.cell] === column),
  );
  own.throatArea = seen.reduce((sum, { width, height: high }) => sum + width * high, 0);
  own.seen = seen.map(({ from, to, width, height: high }) => {
    const other = (from.room === fire.at.room ? to : from) as Place;
    return { zones: rooms[other.room].columns[other.cell], share: (width * high) / own.throatArea };
  });
}

/** Gas between walls that take up nothing: bounded by what would be there. */
function unwalled(network: Network, columns: number[][], { length, width, height, shape }: RoomSpec): void {
  const [volume, area] =
    shape === 'cylinder'
      ? [(Math.PI / 4) * height ** 2 * length, Math.PI * height * (length + height / 2)]
      : [length * width * height, 2 * (length * width + height * (length + width))];
  for (const zone of columns.flat()) {
    network.zones[zone].hydraulicDiameter = hydraulicDiameter(volume, area);
    network.zones[zone].beamLength = meanBeamLength(volume, area);
  }
}
