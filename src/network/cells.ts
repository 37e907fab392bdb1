import type { PartName } from '../design/design.js';
import type { PartGeometry } from '../design/geometry.js';
import type { Network } from './types.js';

/** Zones and nodes of a part that is being built, in the order of the gas's way through the horizontal parts' length. */
export interface Cells {
  part: PartName;
  geometry: PartGeometry;
  /** first is at the fire end or at the bottom */
  zones: number[];
  /** steel node of each 'along' face in each cell, by face name */
  along: Map<string, number[]>;
}

export interface BuiltPit {
  network: Network;
  firebox: Cells;
  chamber?: Cells;
  plenum?: Cells;
  upright?: Cells;
  /** zones of each stack, lowest first */
  stacks: number[][];
}

/** The cells of a part, and of its plenum, whose height range holds z; a part without levels has one. */
export function cellAtHeight(network: Network, zones: number[], z: number): number {
  let best = zones[0];
  let least = Infinity;
  for (const zone of zones) {
    const { floor, roof } = network.zones[zone];
    const off = Math.max(floor - z, z - roof, 0);
    if (off < least) {
      least = off;
      best = zone;
    }
  }
  return best;
}

/** Zones of the chamber's cell at its fire end or far end: the one under a reverse plate first. */
export function chamberEnd(built: BuiltPit, end: 'fire' | 'far'): number[] {
  const at = (cells?: Cells) => (cells ? [end === 'fire' ? cells.zones[0] : cells.zones[cells.zones.length - 1]] : []);
  return [...at(built.plenum), ...at(built.chamber)];
}

/** Girth of an along-face: its area over the part's length [m]. */
export function girth(network: Network, cells: Cells, nodes: number[]): number {
  return nodes.reduce((sum, n) => sum + network.nodes[n].weight, 0) / cells.geometry.length;
}
