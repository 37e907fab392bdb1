/** Walls of rooms: strips up their sides, ceilings and floors, and how their plates conduct into each other. */
import { joinPlates } from '../../network/patches.js';
import { shareBelow } from '../../network/slices.js';
import type { Network } from '../../network/types.js';
import type { BuildingSpec, BuiltRoom, Lining, RoomSpec, RoomWall, Surface } from './buildingSpec.js';
import { addWall } from './wall.js';

/** Area that openings take from a strip of a wall of a cell between two heights. */
export type Open = (cell: number, where: 'side' | 'end' | 'roof' | 'floor', low: number, high: number) => number;

/** What openings take from the walls of a room. */
export function openIn({ openings }: BuildingSpec, room: number): Open {
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

/** Width of a room at a share of its height [m]. */
export function widthAt({ shape, width, height }: RoomSpec, share: number): number {
  return shape === 'cylinder' ? 2 * height * Math.sqrt(share * (1 - share)) : width;
}

/** Add the walls of a cell, in strips, less what is open in them. */
export function addWalls(network: Network, room: BuiltRoom, cell: number, ends: number, open: Open): void {
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
export function joinRoom(network: Network, { spec, walls }: BuiltRoom): void {
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
