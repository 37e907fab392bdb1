/** Temperatures of plates at a state's unknowns: the one place here that knows how a network names them. */
import type { PartName, Steel } from '../../design/design.js';
import { isSteel } from '../../network/materials.js';
import type { Pit } from '../../network/pit.js';
import type { ThermalNode } from '../../network/types.js';

interface PlateNode extends ThermalNode {
  index: number;
}

function nodesOf({ model }: Pit, part: PartName, face: string): PlateNode[] {
  const begins = `${part} ${face}`;
  return model.network.nodes
    .map((node, index) => ({ ...node, index }))
    .filter(({ name, thickness }) => thickness > 0 && (name === begins || name.startsWith(`${begins} `)));
}

/** The one station that a face lies at; undefined where it runs along several. */
export function stationOfFace(pit: Pit, part: PartName, face: string): string | undefined {
  const stations = new Set(nodesOf(pit, part, face).map(({ station }) => station));
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
  const own = nodesOf(pit, part, face).filter((node) => station === undefined || node.station === station);
  const whole = own.reduce((sum, { area }) => sum + area, 0);
  return whole > 0 ? own.reduce((sum, { area, index }) => sum + area * x[index], 0) / whole : undefined;
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
