/** Where a cook looks: thermometers of the stations, grates, racks. Each is a stem that reads the gas and walls around it. */
import type { Design, PartName } from '../design/design.js';
import type { BuiltPit, Cells } from './cells.js';
import type { Network } from './types.js';

/** Share of the height at which a station's thermometer has its stem: common practice, no source. */
const DIAL_HEIGHT = 0.75;
/** Where a grate lies of which the design says nothing: a little below the middle, and clear of what is under it. */
const GRATE = { height: 0.45, clear: 0.2 };
/** Where the racks of an upright hang of which it says nothing, as shares of its height. */
const RACKS = [1 / 3, 2 / 3];

/** Add the stems of all stations, then those of grates and racks. */
export function addStems(built: BuiltPit, design: Design): void {
  const { network } = built;
  const stations = [...new Set(network.zones.flatMap(({ station }) => station ?? []))];
  for (const station of stations) {
    const column = columnOf(built, station);
    const [floor, roof] = reachOf(network, column);
    network.stems.push({ station, ...placeIn(network, column, floor + DIAL_HEIGHT * (roof - floor)) });
  }
  network.gauge = network.stems.findIndex((s) => s.station === design.gauge);
  if (network.gauge < 0) throw new RangeError(`the design has no station '${design.gauge}' for its gauge`);
  if (built.chamber) addGrate(built, built.chamber);
  if (built.upright) addRacks(network, built.upright);
}

/** A grate runs the whole length: it is read at every station. */
function addGrate(built: BuiltPit, cells: Cells): void {
  const { network } = built;
  const { geometry } = cells;
  const [floor, roof] = reachOf(network, cells.columns[0]);
  const height = Math.max(
    geometry.floor + GRATE.height * (geometry.roof - geometry.floor),
    floor + GRATE.clear * (roof - floor),
  );
  const stations = [...new Set(cells.zones.map((zone) => network.zones[zone].station!))];
  stations.forEach((station, i) => {
    const along = (i + 0.5) / stations.length;
    const place = { name: 'grate', part: cells.part, along, height };
    network.stems.push({ station, place, ...placeIn(network, columnOf(built, station), height) });
  });
}

function addRacks(network: Network, cells: Cells): void {
  const [column] = cells.columns;
  const [floor, roof] = reachOf(network, column);
  RACKS.forEach((share, i) => {
    const height = floor + share * (roof - floor);
    const at = placeIn(network, column, height);
    const station = network.zones[at.share < 0.5 ? at.zone : at.other].station!;
    const place = { name: `rack ${i + 1}`, part: cells.part as PartName, along: 0.5, height };
    network.stems.push({ station, place, ...at });
  });
}

/** Zones of a station that stand on each other, in the middle one of its cells along the part. */
function columnOf({ network, firebox, plenum, chamber, upright }: BuiltPit, station: string): number[] {
  const columns = [firebox, plenum, chamber, upright]
    .flatMap((cells) => cells?.columns ?? [])
    .map((column) => column.filter((zone) => network.zones[zone].station === station))
    .filter((column) => column.length > 0);
  return columns[(columns.length - 1) >> 1];
}

function reachOf({ zones }: Network, column: number[]): [floor: number, roof: number] {
  return [zones[column[0]].floor, zones[column[column.length - 1]].roof];
}

/** Gas at a height of a column: on the straight line between the middles of two zones, beyond the outer ones theirs. */
function placeIn(network: Network, column: number[], z: number): { zone: number; other: number; share: number } {
  const middle = (i: number) => network.zones[column[i]].centre;
  let i = 0;
  while (i < column.length - 2 && z > middle(i + 1)) i++;
  if (column.length === 1) return { zone: column[0], other: column[0], share: 0 };
  const share = Math.min(1, Math.max(0, (z - middle(i)) / (middle(i + 1) - middle(i))));
  return { zone: column[i], other: column[i + 1], share };
}
