import type { Design } from '../design/design.js';
import type { Geometry } from '../design/geometry.js';
import { Balances } from './balances.js';
import { atStem } from './stems.js';
import { buildNetwork, DEFAULT_RESOLUTION, type Resolution } from './build.js';
import type { BuiltPit } from './cells.js';
import { Model } from './model.js';
import { QuasiSteadySolver } from './quasiSteady.js';
import type { PlatePlace, ThermalNode } from './types.js';

/** A design made ready to be solved; shared by all studies of it. */
export interface Pit {
  design: Design;
  geometry: Geometry;
  built: BuiltPit;
  model: Model;
  balances: Balances;
  solver: QuasiSteadySolver;
  /** what a variant of a pit has changed about its network */
  changed?: (built: BuiltPit) => void;
}

/** Build network, balances and solvers of a design. */
export function makePit(design: Design, geometry: Geometry, resolution: Resolution = DEFAULT_RESOLUTION): Pit {
  const built = buildNetwork(design, geometry, resolution);
  const model = new Model(built.network);
  const balances = new Balances(model);
  return { design, geometry, built, model, balances, solver: new QuasiSteadySolver(balances) };
}

/** Mean temperature by area, at x, of the plates that belong [K]; null: none does. */
export function meanByArea(pit: Pit, x: Float64Array, belongs: (node: ThermalNode) => boolean): number | null {
  let sum = 0;
  let area = 0;
  const { nodes } = pit.built.network;
  for (let i = 0; i < nodes.length; i++) {
    if (!belongs(nodes[i])) continue;
    sum += nodes[i].area * x[i];
    area += nodes[i].area;
  }
  return area > 0 ? sum / area : null;
}

/** The same of a station's outside walls. */
export function stationSteel(pit: Pit, x: Float64Array, station: string): number {
  return meanByArea(pit, x, (node) => node.station === station) ?? Number.NaN;
}

/** The same of what stands at one place of its girth; null: nothing does. */
export function steelAt(pit: Pit, x: Float64Array, station: string, place: PlatePlace): number | null {
  return meanByArea(pit, x, (node) => node.station === station && node.place === place);
}

/** Gas of a station by height, lowest first: of the cells along it the mean [m above the ground], [K]. */
export function stationLayers(
  pit: Pit,
  x: Float64Array,
  station: string,
): { from_m: number; to_m: number; gas_K: number }[] {
  const zones = pit.built.network.zones.flatMap((zone, z) => (zone.station === station ? [{ ...zone, z }] : []));
  const floors = [...new Set(zones.map(({ floor }) => floor))].sort((a, b) => a - b);
  return floors.map((floor) => {
    const level = zones.filter((zone) => zone.floor === floor);
    const sum = level.reduce((heat, { z }) => heat + x[pit.model.gas + z], 0);
    return { from_m: floor, to_m: level[0].roof, gas_K: sum / level.length };
  });
}

/** Gas where a stem stands at x [K]. */
export function gasAtStem({ model }: Pit, x: Float64Array, stem: number): number {
  return atStem(model, stem, x, model.gas);
}

/** Volume-mean gas temperature of a station's cells at x [K]. */
export function stationGas(pit: Pit, x: Float64Array, station: string): number {
  let sum = 0;
  let volume = 0;
  const { zones } = pit.built.network;
  for (let z = 0; z < zones.length; z++) {
    if (zones[z].station !== station) continue;
    sum += zones[z].volume * x[pit.model.gas + z];
    volume += zones[z].volume;
  }
  return sum / volume;
}
