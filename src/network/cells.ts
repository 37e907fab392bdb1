import type { PartName } from '../design/design.js';
import type { PartGeometry } from '../design/geometry.js';
import type { Network } from './types.js';

/**
 * Zones and nodes of a part that is being built, in the order of the gas's way through the horizontal parts' length.
 */
export interface Cells {
  part: PartName;
  geometry: PartGeometry;
  /** all of them, column by column from the fire end, each from its floor up */
  zones: number[];
  /** zones of each cell along the part that share its floor and roof, lowest first; an upright has one column */
  columns: number[][];
  /** strips of the shell that run along the part, lowest first: their steel nodes, one a cell */
  strips: Strip[];
}

/** A strip of plate that runs along a part, or round an upright: its steel node in each cell. */
export interface Strip {
  face: string;
  level: number;
  /** of the girth of a shell or of the sides: the share of the part's height that it stands at */
  at?: number;
  /** thickness of its plate [m] */
  plate: number;
  nodes: number[];
}

/** A network, and which of its zones each part has become. */
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

/** A height range with the edges of the zones on its sides in it, rising, its own ends included. */
export function cutsBetween(network: Network, sides: number[][], low: number, high: number): number[] {
  const close = 1e-6;
  const edges = sides.flatMap((zones) => zones.map((z) => network.zones[z].floor));
  const inside = edges.filter((z) => z > low + close && z < high - close).sort((a, b) => a - b);
  return [low, ...inside.filter((z, i) => i === 0 || z > inside[i - 1] + close), high];
}

/** Zones of the chamber's cell at its fire end or far end: the one under a reverse plate first. */
export function chamberEnd(built: BuiltPit, end: 'fire' | 'far'): number[] {
  const at = (cells?: Cells) =>
    cells ? (end === 'fire' ? cells.columns[0] : cells.columns[cells.columns.length - 1]) : [];
  return [...at(built.plenum), ...at(built.chamber)];
}

/** Strips round the girth of a part, lowest first: of a shell, or of a box's sides. */
export function girthStrips({ strips }: Cells): Strip[] {
  return strips.filter(({ at }) => at !== undefined).sort((a, b) => a.at! - b.at!);
}

/** One thickness for two plates that conduct into each other, each over half the way: the harmonic mean [m]. */
export function jointPlate(a: number, b: number): number {
  return a === b ? a : (2 * a * b) / (a + b);
}

/** Girth of a strip: its area over the part's length [m]. */
export function girth(network: Network, cells: Cells, nodes: number[]): number {
  return nodes.reduce((sum, n) => sum + network.nodes[n].area, 0) / cells.geometry.length;
}
