/** A room or corridor as a pit's parts are built: cells along it, each cut level or mixed over its height. */
import { cellAtHeight, cutsBetween } from '../../network/cells.js';
import type { Add } from '../../network/openingCuts.js';
import { addAlong } from '../../network/openingCuts.js';
import { OUTDOORS, type Network } from '../../network/types.js';
import { bareZone } from './bareNetwork.js';
import type { Vent } from './room.js';
import { addWall, type Layer, type WallNodes } from './wall.js';

/** What a surface is made of, from the inside outwards. */
interface Lining {
  layers: readonly Layer[];
  insideEmissivity: number;
  outsideEmissivity: number;
}

export interface BoxSpec {
  name: string;
  /** inside, along it; floor at height 0 [m] */
  length: number;
  width: number;
  height: number;
  /** cells along it, level slices of its gas */
  cells: number;
  levels: number;
  ceiling: Lining;
  side: Lining;
  end: Lining;
  floor: Lining;
  /** doorways, taken from the walls of a cell over their height */
  doorways: readonly { cell: number; vent: Vent; in: 'side' | 'end' }[];
}

export interface Box {
  /** zones of each cell along it, lowest first */
  columns: number[][];
  walls: {
    cell: number;
    level: number;
    nodes: WallNodes;
    area: number;
    surface: 'ceiling' | 'side' | 'end' | 'floor';
  }[];
}

/** Add zones, walls, columns and the sections between its cells. `finishZones` and `addWindows` are the caller's. */
export function addBox(network: Network, spec: BoxSpec, add: Add): Box {
  const { name, length, width, height, cells, levels } = spec;
  const each = length / cells;
  const rise = height / levels;
  const box: Box = { columns: [], walls: [] };
  for (let i = 0; i < cells; i++) {
    const column: number[] = [];
    for (let j = 0; j < levels; j++) {
      const floor = j * rise;
      const zone = bareZone(name, { floor, roof: floor + rise, section: width * rise });
      column.push(network.zones.push({ ...zone, volume: each * width * rise, length }) - 1);
    }
    box.columns.push(column);
    const ends = (i === 0 ? 1 : 0) + (i === cells - 1 ? 1 : 0);
    if (levels > 1) {
      const between = column.slice(1);
      network.columns.push({
        zones: column,
        areas: between.map(() => each * width),
        edges: between.map(() => 2 * each + ends * width),
        clear: true,
      });
    }
    column.forEach((zone, j) => {
      const open = (where: 'side' | 'end') =>
        spec.doorways
          .filter((door) => door.cell === i && door.in === where)
          .reduce((sum, { vent }) => {
            const top = Math.min((j + 1) * rise, vent.sill + vent.height);
            return sum + vent.width * Math.max(0, top - Math.max(j * rise, vent.sill));
          }, 0);
      const wall = (surface: 'ceiling' | 'side' | 'end' | 'floor', area: number) => {
        if (area <= 0) return;
        const upright = surface === 'side' || surface === 'end';
        const level = (length * width) / (2 * (length + width));
        const nodes = addWall(network, zone, {
          name: `${name} ${surface}`,
          area,
          shape: upright ? 'vertical' : surface === 'ceiling' ? 'up' : 'down',
          length: upright ? height : level,
          windLength: upright ? height : Math.sqrt(each * width),
          ...spec[surface],
        });
        box.walls.push({ cell: i, level: j, nodes, area, surface });
      };
      wall('side', 2 * each * rise - open('side'));
      wall('end', ends * width * rise - open('end'));
      if (j === levels - 1) wall('ceiling', each * width);
      if (j === 0) wall('floor', each * width);
    });
  }
  addAlong(network, box.columns, name, add);
  return box;
}

/** A doorway from a cell of a box to outdoors, cut where its layers end. */
export function addDoorway(network: Network, column: number[], vent: Vent, discharge: number): void {
  const cuts = cutsBetween(network, [column], vent.sill, vent.sill + vent.height);
  for (let i = 1; i < cuts.length; i++) {
    const centre = 0.5 * (cuts[i - 1] + cuts[i]);
    const extent = cuts[i] - cuts[i - 1];
    network.openings.push({
      name: 'doorway',
      role: 'doorway',
      from: cellAtHeight(network, column, centre),
      to: OUTDOORS,
      area: vent.width * extent,
      discharge,
      centre,
      extent,
      windPressure: 0,
      sees: true,
    });
  }
}
