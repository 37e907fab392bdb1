/** How a case describes rooms: its inputs, read into what the builder takes. */
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { choice, optional, optionalChoice, optionalList, quantity, records, type Values } from '../check.js';
import { MIRRORED } from '../relations/mirrored.js';
import { burnerFire, heaterFire } from '../rooms/burner.js';
import type { BuildingSpec, Lining, Place } from '../rooms/buildingSpec.js';
import { constantConductivity, type Layer } from '../rooms/wall.js';

/** Number of a room. */
export const roomNumber = (about: string) => quantity('number', `${about}; rooms count from 1`);

/** What describes rooms. */
export const building = {
  linings: records(
    {
      thickness: optionalList('length', 'of its boards, from the inside outwards'),
      conductivity: optionalList('conductivity', 'of each board'),
      density: optionalList('density', 'of each board'),
      specificHeat: optionalList('specificHeat', 'of each board'),
      plate: optional('length', 'thickness of carbon steel plate outside the boards'),
      insideEmissivity: optional('number', '0.95 when left out'),
      outsideEmissivity: optional('number', '0.9 when left out'),
    },
    'what walls are made of',
  ),
  rooms: records(
    {
      shape: optionalChoice(['box', 'cylinder'], 'a cylinder lies; box when left out'),
      length: quantity('length', 'inside'),
      width: optional('length', 'inside; of a cylinder its height when left out'),
      height: quantity('length', 'inside; of a cylinder its bore'),
      base: optional('length', 'of its floor above the ground; 0 when left out'),
      walls: quantity('number', 'number of the lining of its sides, from 1'),
      ceiling: optional('number', 'lining; as the sides when left out'),
      ends: optional('number', 'lining; as the sides when left out'),
      bottom: optional('number', 'lining of its floor; as the sides when left out'),
      cells: optional('number', 'along it; 1 when left out'),
      layers: optional(
        'number',
        'level layers of its gas; 1, mixed, when left out. A pit has 5 in its chamber and 1 in its firebox',
      ),
      soot: optional('perLength', 'absorption coefficient of soot; 0 when left out'),
    },
    'rooms',
  ),
  openings: records(
    {
      from: roomNumber('room on its one side'),
      to: optional('number', 'room on its other side; the outdoors when left out'),
      wall: optionalChoice(
        ['side', 'end', 'roof'],
        'of the first room; end when left out. A roof opening leads into the room above',
      ),
      width: quantity('length', 'of the opening'),
      height: quantity('length', 'of the opening; of one in a roof its other side'),
      sill: optional('length', 'its lower edge above the ground; 0 when left out'),
      along: optional('share', 'where along the first room, 0 to 1; 1 when left out'),
      alongOther: optional('share', 'where along the second; 0 when left out'),
      discharge: optional('number', 'discharge coefficient; 0.7 when left out'),
      radiates: optionalChoice(['yes', 'no'], 'do gas, walls and fire radiate through it? yes when left out'),
    },
    'openings',
  ),
  power: quantity('power', 'heat released, from time 0 on'),
  fuel: choice(['methane', 'propane', 'heater'], 'what releases it; a heater makes no gas'),
  radiantShare: optional('number', 'share of the heat that leaves as radiation; 0 when left out'),
  fireRoom: optional('number', 'room of the fire; 1 when left out'),
  fireAlong: optional('share', 'where along it, 0 to 1; 0.5 when left out'),
  fireTop: optional('length', 'of the burner above its floor; 0 when left out'),
  fireAcross: optional(
    'length',
    'diameter of the fire; when left out its plume strikes no ceiling and takes in no gas',
  ),
  fireStands: optionalChoice(['free', 'by a wall', 'in a corner'], 'free when left out'),
  plumeFactor: optional('number', 'on what its plume takes in from layer to layer; 1 when left out'),
  times: optionalList('time', 'of a fire that changes; it burns as `power` says when left out'),
  powers: optionalList('power', 'at these times, straight lines between, held after the last'),
  outdoors: quantity('temperature', 'air and surroundings'),
  pressure: optional('pressure', 'outdoors; one standard atmosphere when left out'),
  wind: optional('speed', 'outdoors; still air when left out'),
  time: optional('time', 'from everything at outdoor temperature; steady when left out'),
  innerConvection: optional('number', 'factor on inner convection; 1 when left out'),
  entrainment: optional('number', 'factor on what a stream through a side opening takes in; 1 when left out'),
  downflow: optional('number', 'factor on what sinks along cold walls; 1 when left out'),
} as const;

/** Inputs of a case of rooms, as read. */
export type BuildingValues = Values<typeof building>;

const SLICES = 12;
const MOST = 50;

/** A count or a number of something, checked. */
export function whole(name: string, value: number, most: number): number {
  if (Number.isInteger(value) && value >= 1 && value <= most) return value;
  throw new RangeError(`${name} must be a whole number from 1 to ${most}, not ${value}`);
}

/** A size above nothing, checked. */
export function above(name: string, value: number): number {
  if (value > 0) return value;
  throw new RangeError(`${name} must be above zero, not ${value}`);
}

function liningOf(v: BuildingValues['linings'][number], n: number): Lining {
  const { thickness = [], conductivity = [], density = [], specificHeat = [], plate } = v;
  const name = `lining ${n + 1}`;
  if (new Set([thickness, conductivity, density, specificHeat].map(({ length }) => length)).size > 1) {
    throw new RangeError(`${name} needs a conductivity, a density and a specificHeat for each thickness`);
  }
  const boards = thickness.map((each, i): Layer => ({
    type: 'solid',
    thickness: above(`${name}, thickness`, each),
    density: above(`${name}, density`, density[i]),
    specificHeat: above(`${name}, specificHeat`, specificHeat[i]),
    conductivity: constantConductivity(above(`${name}, conductivity`, conductivity[i])),
    slices: SLICES,
  }));
  const steel: Layer[] = plate === undefined ? [] : [{ type: 'plate', thickness: above(`${name}, plate`, plate) }];
  const { insideEmissivity = 0.95, outsideEmissivity = 0.9 } = v;
  return { layers: [...boards, ...steel], insideEmissivity, outsideEmissivity };
}

/** @param share of a room's length: the cell that it lies in */
export function placeOf(rooms: BuildingSpec['rooms'], name: string, room: number, share: number): Place {
  const index = whole(name, room, rooms.length) - 1;
  if (!(share >= 0 && share <= 1)) throw new RangeError(`a place along a room lies from 0 to 1, not at ${share}`);
  const { cells } = rooms[index];
  return { room: index, cell: Math.min(cells - 1, Math.floor(share * cells)) };
}

/** Rooms as the builder takes them. @throws RangeError when they make no sense */
export function specOf(v: BuildingValues): BuildingSpec {
  const linings = v.linings.map(liningOf);
  const lining = (name: string, n: number) => linings[whole(name, n, linings.length) - 1];
  const rooms = v.rooms.map((room, i): BuildingSpec['rooms'][number] => {
    const name = `room ${i + 1}`;
    const { shape = 'box', height } = room;
    const width = room.width ?? (shape === 'cylinder' ? height : NaN);
    for (const [field, value] of Object.entries({ length: room.length, width, height }))
      above(`${name}, ${field}`, value);
    if (shape === 'cylinder' && width !== height)
      throw new RangeError(`${name} is a cylinder: its width is its height`);
    const levels = whole(`${name}, layers`, room.layers ?? 1, MOST);
    const side = lining(`${name}, walls`, room.walls);
    const part = (field: 'ceiling' | 'ends' | 'bottom') =>
      room[field] === undefined ? side : lining(`${name}, ${field}`, room[field]);
    return {
      name,
      ...{ shape, length: room.length, width, height, levels },
      floor: room.base ?? 0,
      cells: whole(`${name}, cells`, room.cells ?? 1, MOST),
      // walls are told by half, and a cylinder's by its layers
      strips: levels === 1 && shape === 'cylinder' ? 5 : 2 * levels,
      ...{ side, ceiling: part('ceiling'), bottom: part('bottom') },
      end: room.ends === undefined ? undefined : part('ends'),
      soot: room.soot ?? 0,
    };
  });
  const openings = v.openings.map((o, i): BuildingSpec['openings'][number] => {
    const name = `opening ${i + 1}`;
    const from = placeOf(rooms, `${name}, from`, o.from, o.along ?? 1);
    const to: Place | 'outdoors' =
      o.to === undefined ? 'outdoors' : placeOf(rooms, `${name}, to`, o.to, o.alongOther ?? 0);
    const wall = o.wall ?? 'end';
    const [width, height, sill] = [above(`${name}, width`, o.width), above(`${name}, height`, o.height), o.sill ?? 0];
    if (wall !== 'roof') {
      for (const place of [from, to]) {
        if (place === 'outdoors') continue;
        const { name: room, floor, height: high } = rooms[place.room];
        if (sill >= floor - 1e-9 && sill + height <= floor + high + 1e-9) continue;
        throw new RangeError(
          `${name} reaches from ${sill} to ${sill + height} m above the ground, ${room} from ${floor} to ${floor + high}`,
        );
      }
    }
    return { from, to, in: wall, width, height, sill, discharge: o.discharge ?? 0.7, sees: o.radiates !== 'no' };
  });
  if (!openings.some(({ to }) => to === 'outdoors')) throw new RangeError('no opening leads outdoors');
  const radiantShare = v.radiantShare ?? 0;
  return {
    rooms,
    openings,
    fire: {
      gas: v.fuel === 'heater' ? heaterFire(radiantShare) : burnerFire(v.fuel, radiantShare),
      at: placeOf(rooms, 'fireRoom', v.fireRoom ?? 1, v.fireAlong ?? 0.5),
      top: v.fireTop ?? 0,
      across: v.fireAcross,
      strikes: true,
      bending: (v.plumeFactor ?? 1) * MIRRORED[v.fireStands ?? 'free'],
    },
    outdoors: {
      temperature: above('outdoors', v.outdoors),
      pressure: v.pressure ?? STANDARD_PRESSURE,
      wind: v.wind ?? 0,
    },
    innerConvection: v.innerConvection ?? 1,
    entrainment: v.entrainment,
    downflow: v.downflow,
  };
}
