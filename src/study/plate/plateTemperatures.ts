/** Temperatures of plates at a state's unknowns. */
import type { PartName, Steel } from '../../design/design.js';
import { isSteel } from '../../network/materials.js';
import { meanByArea, type Pit } from '../../network/pit.js';
import type { ThermalNode } from '../../network/types.js';

/** Is a node a piece of a face's plate? */
function pieceOf(part: PartName, face: string): (node: ThermalNode) => boolean {
  return (node) => node.thickness > 0 && node.part === part && node.face === face;
}

/** The one station that a face lies at; undefined where it runs along several. */
export function stationOfFace({ model }: Pit, part: PartName, face: string): string | undefined {
  const stations = new Set(model.network.nodes.filter(pieceOf(part, face)).map(({ station }) => station));
  return stations.size === 1 ? [...stations][0] : undefined;
}

/**
 * Mean of a face by area [K]; undefined where nothing of it is left outdoors.
 *
 * @param station only what of it lies there
 */
export function faceTemperature(
  pit: Pit,
  x: Float64Array,
  { part, face, station }: { part: PartName; face: string; station?: string },
): number | undefined {
  const piece = pieceOf(part, face);
  const belongs = (node: ThermalNode) => piece(node) && (station === undefined || node.station === station);
  return meanByArea(pit, x, belongs) ?? undefined;
}

/** The hottest plate of a pit at x, of any part or between two, and the hottest under the full fire. */
export function hottestPlate(
  { model }: Pit,
  x: Float64Array,
  hot: Float64Array,
): { name: string; steel: Steel; hold_K: number; full_K: number } {
  const plates = model.network.nodes.flatMap(({ name, material, thickness }, index) =>
    thickness > 0 && isSteel(material) ? [{ name, steel: material, index }] : [],
  );
  const { name, steel } = plates.reduce((best, each) => (x[each.index] > x[best.index] ? each : best));
  const full = Math.max(...plates.map(({ index }) => hot[index]));
  const hold = Math.max(...plates.map(({ index }) => x[index]));
  return { name, steel, hold_K: hold, full_K: full };
}
