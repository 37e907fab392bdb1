/**
 * Where a cook looks: thermometers of the stations, grates, racks. Each is a stem that reads the gas and walls around
 * it.
 */
import type { Design, PartName } from '../design/design.js';
import { dialsOf, middleOf, placesOf, type Place } from '../design/places.js';
import type { BuiltPit } from './cells.js';
import type { Network } from './types.js';

/**
 * Share of the height at which the dial of a station sits where no food lies: in the firebox, under a reverse-flow
 * plate.
 */
const DIAL_HEIGHT = 0.75;

/** A zone and how much of what a stem reads is of it. */
interface Part {
  zone: number;
  share: number;
}

/** Add the stems of all stations, then those of grates, racks and thermometers that bear a name. */
export function addStems(built: BuiltPit, design: Design): void {
  const { network } = built;
  const dials = dialsOf(design);
  const stations = [...new Set(network.zones.flatMap(({ station }) => station ?? []))];
  for (const station of stations) {
    const dial = dials.find((each) => each.station === station);
    const at = dial ? stemAt(built, dial) : usualAt(built, station);
    network.stems.push({ station, ...at });
  }
  for (const place of placesOf(design)) network.stems.push({ station: place.station, place, ...stemAt(built, place) });
  const dial = stations.indexOf(design.gauge);
  network.gauge = dial < 0 ? stemOf(network, '', design.gauge) : dial;
  if (network.gauge < 0) throw new RangeError(`the design has no place '${design.gauge}' for its gauge`);
}

/** Which stem reads at a station's dial, or at a grate, rack or thermometer by its name; of a grate the middle one. */
export function stemOf({ stems }: Network, station: string, name?: string): number {
  if (name === undefined) return stems.findIndex((stem) => stem.station === station);
  const those = stems.flatMap(({ place }, i) => (place ? [{ name: place.name, i }] : []));
  return middleOf(those, name)?.i ?? -1;
}

function usualAt({ network, firebox, plenum }: BuiltPit, station: string): { parts: Part[]; height: number } {
  const columns = [firebox, plenum]
    .flatMap((cells) => cells?.columns ?? [])
    .filter((column) => network.zones[column[0]].station === station);
  const column = columns[(columns.length - 1) >> 1];
  const { floor } = network.zones[column[0]];
  const height = floor + DIAL_HEIGHT * (network.zones[column[column.length - 1]].roof - floor);
  return { parts: levelsAt(network, column, height), height };
}

/**
 * Along a chamber on the straight line between the middles of two cells, beyond the outer ones theirs; so by height.
 */
function stemAt(built: BuiltPit, { part, along, height }: Place): { parts: Part[]; height: number } {
  const { columns } = built[part as Exclude<PartName, 'firebox'>]!;
  const at = Math.min(columns.length - 1, Math.max(0, along * columns.length - 0.5));
  const i = Math.min(Math.floor(at + 1e-9), columns.length - 1);
  const on = Math.max(0, at - i);
  const parts = [
    ...levelsAt(built.network, columns[i], height).map((each) => ({ ...each, share: each.share * (1 - on) })),
    ...(on > 1e-9
      ? levelsAt(built.network, columns[i + 1], height).map((each) => ({ ...each, share: each.share * on }))
      : []),
  ];
  return { parts: parts.filter(({ share }) => share > 0), height };
}

/**
 * What of a height of a column belongs to which zone: straight between the middles of two, beyond the outer ones all to
 * one.
 */
export function levelsAt({ zones }: Network, column: readonly number[], z: number): Part[] {
  const middle = (i: number) => zones[column[i]].centre;
  let i = 0;
  while (i < column.length - 2 && z > middle(i + 1)) i++;
  if (column.length === 1) return [{ zone: column[0], share: 1 }];
  const share = Math.min(1, Math.max(0, (z - middle(i)) / (middle(i + 1) - middle(i))));
  return [
    { zone: column[i], share: 1 - share },
    { zone: column[i + 1], share },
  ];
}
