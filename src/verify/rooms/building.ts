/**
 * Rooms with a fire in one, built of what a pit is built of: cells along each, its gas in level layers or mixed over
 * the height, walls of several layers in strips, openings between rooms and to the outdoors cut where layers end.
 */
import { addWindows, finishZones } from '../../network/build.js';
import { cellAtHeight, cutsBetween } from '../../network/cells.js';
import { addAlong, addSliced, type Add } from '../../network/openingCuts.js';
import { shareBelow } from '../../network/slices.js';
import { OUTDOORS, type Network, type NetworkFire } from '../../network/types.js';
import { jetShape } from '../../physics/ceilingJet.js';
import { hydraulicDiameter } from '../../physics/forcedConvection.js';
import { meanBeamLength } from '../../physics/gasRadiation.js';
import { bareNetwork, bareZone } from './bareNetwork.js';
import type { Building, BuildingSpec, BuiltRoom, OpeningSpec, Place, RoomSpec } from './buildingSpec.js';
import { addWalls, joinRoom, openIn, widthAt, type Open } from './roomWalls.js';

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
