/** Where a cook looks: grates, racks and thermometers that a design names, and the usual ones where it names none. */
import type { Chamber, Design, Grate, PartName, StationName, Upright } from './design.js';
import { deckOf } from './decks.js';
import { GAUGES, partOfStation, type GaugeStation } from './stations.js';
import { insideOf as gasOf } from './walls.js';

/** Share of the height at which a station's thermometer has its stem: common practice, no source. */
const DIAL_HEIGHT = 0.75;
/** Where a grate lies of which the design says nothing: a little below the middle, and clear of what is under it. */
const GRATE = { name: 'grate', height: 0.45, clear: 0.2 };
/** Where the racks of an upright hang of which it says nothing, as shares of its height. */
const RACKS = [1 / 3, 2 / 3];
/** Middles of the stations along a chamber, as shares of its length. */
const ALONG: readonly [StationName, number][] = [
  ['fireEnd', 1 / 6],
  ['middle', 1 / 2],
  ['stackEnd', 5 / 6],
];

/** A spot in a part where a temperature is told; heights above the ground in m. */
export interface Place {
  /** as `gauge` names it; readings along one grate share its name */
  name: string;
  kind: 'grate' | 'rack' | 'thermometer';
  part: PartName;
  /** the station that it is nearest to */
  station: StationName;
  /** share of the part's length from its fire end */
  along: number;
  /** above the ground [m] */
  height: number;
}

/**
 * All places of a pit that bear a name, but the stations' own dials; a grate is read in the middle of every station
 * that it covers.
 */
export function placesOf({ chamber, upright }: Design): Place[] {
  return [
    ...(chamber ? gratesOf(chamber).flatMap((grate) => alongGrate(grate)) : []),
    ...(upright ? racksOf(upright) : []),
    ...(chamber ? named(chamber, 'chamber') : []),
    ...(upright ? named(upright, 'upright') : []),
  ].filter(({ name }) => !isDial(name));
}

/** The dials of the stations in the cooking parts: where a thermometer of the station's name is, or else in its lid. */
export function dialsOf(design: Design): Place[] {
  return GAUGES.flatMap((station): Place[] => {
    const part = partOfStation(station);
    const own = design[part] as Chamber | Upright | undefined;
    if (!own) return [];
    const found = named(own, part).find(({ name }) => name === station);
    return [{ ...(found ?? usualDial(own, station)), station }];
  });
}

/** The place that the cook steers by; of a grate the middle one. */
export function gaugePlace(design: Design): Place {
  const found = dialsOf(design).find(({ name }) => name === design.gauge) ?? middleOf(placesOf(design), design.gauge);
  if (!found) throw new RangeError(`the design has no place '${design.gauge}' for its gauge`);
  return found;
}

/** Of the places of one name the middle one along the part. */
export function middleOf<T extends { name: string }>(places: readonly T[], name: string): T | undefined {
  const those = places.filter((place) => place.name === name);
  return those[(those.length - 1) >> 1];
}

/** Grates of a chamber; the usual one where it names none. */
export function gratesOf(chamber: Chamber): Grate[] {
  if (chamber.grates.length > 0) return chamber.grates;
  const { floor, roof } = insideOf(chamber);
  const whole = gasOf(chamber).height;
  const height = Math.max(roof - (1 - GRATE.height) * whole, floor + GRATE.clear * (roof - floor));
  return [{ name: GRATE.name, height, from: 0, to: 1, mass: 0, steel: 'carbon', area: 0 }];
}

/** Floor, over a reverse-flow plate if there is one, and roof of the room that food lies in [m above the ground]. */
export function insideOf(part: Chamber | Upright): { floor: number; roof: number } {
  const { floor, roof } = gasOf(part);
  const lifted = 'grates' in part ? (deckOf(part)?.height ?? 0) : 0;
  return { floor: floor + lifted, roof };
}

function isDial(name: string): name is GaugeStation {
  return (GAUGES as readonly string[]).includes(name);
}

function alongGrate({ name, height, from, to }: Grate): Place[] {
  const at = { name, kind: 'grate', part: 'chamber', height } as const;
  const covered = ALONG.filter(([, along]) => along >= from && along <= to);
  if (covered.length > 0) return covered.map(([station, along]) => ({ ...at, station, along }));
  const along = 0.5 * (from + to);
  return [{ ...at, station: nearestAlong(along), along }];
}

/** Racks are counted from the lowest. */
function racksOf(upright: Upright): Place[] {
  const { floor, roof } = insideOf(upright);
  const heights = upright.racks.length > 0 ? [...upright.racks] : RACKS.map((share) => floor + share * (roof - floor));
  return heights
    .sort((a, b) => a - b)
    .map((height, i) => ({
      name: `rack ${i + 1}`,
      kind: 'rack',
      part: 'upright',
      station: nearestUp(upright, height),
      along: 0.5,
      height,
    }));
}

function named(part: Chamber | Upright, name: PartName): Place[] {
  return part.thermometers.map(({ name: own, along, height }) => ({
    name: own,
    kind: 'thermometer',
    part: name,
    station: 'depth' in part ? nearestUp(part, height) : nearestAlong(along),
    along,
    height,
  }));
}

function usualDial(part: Chamber | Upright, station: GaugeStation): Place {
  const { floor, roof } = insideOf(part);
  const at = { name: station, kind: 'thermometer', part: partOfStation(station), station } as const;
  if (!('depth' in part)) {
    const along = ALONG.find(([name]) => name === station)![1];
    return { ...at, along, height: floor + DIAL_HEIGHT * (roof - floor) };
  }
  const half = (roof - floor) / 2;
  const low = station === 'uprightLower' ? floor : floor + half;
  return { ...at, along: 0.5, height: low + DIAL_HEIGHT * half };
}

function nearestAlong(along: number): StationName {
  return ALONG.reduce((best, each) => (Math.abs(each[1] - along) < Math.abs(best[1] - along) ? each : best))[0];
}

function nearestUp(upright: Upright, height: number): StationName {
  const { floor, roof } = insideOf(upright);
  return height < 0.5 * (floor + roof) ? 'uprightLower' : 'uprightUpper';
}
