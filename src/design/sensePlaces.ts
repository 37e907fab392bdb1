/**
 * Whether grates, racks and thermometers are inside their parts, bear names of their own, and which of them the gauge
 * means.
 */
import { format, nearestName } from '../units/index.js';
import type { Chamber, Design, PartName, Upright } from './design.js';
import { deckOf } from './decks.js';
import { dialsOf, insideOf, placesOf } from './places.js';
import type { Reading } from './reading.js';
import { isHollow } from './senseParts.js';
import type { Path } from './path.js';
import { GAUGES, partOfStation, STATIONS, type StationName } from './stations.js';

/** Racks of one height are one rack [m]. */
const SAME_HEIGHT = 0.001;

const inches = (si: number): string => format('length', si, 'shop', { unit: 'in', digits: 4 });

/** Grates, racks and thermometers are inside their parts and bear names of their own. */
export function checkPlaces(design: Design, reading: Reading): void {
  const { chamber, upright } = design;
  chamber?.grates.forEach((grate, i) => {
    const path: Path = ['chamber', 'grates', i];
    checkHeight(chamber, 'chamber', grate.height, [...path, 'height'], reading);
    if (grate.to <= grate.from) {
      reading.fault([...path, 'to'], {
        message: `is not past where the grate begins, ${format('share', grate.from)} along`,
        allowed: `more than ${format('share', grate.from)}, up to 100 %`,
        example: 'from: 0 %, to: 60 %',
        value: reading.at(path).has('to') ? undefined : null,
      });
    }
  });
  upright?.racks.forEach((height, i) => {
    const path: Path = ['upright', 'racks', i];
    checkHeight(upright, 'upright', height, path, reading);
    const twin = upright.racks.findIndex((other) => Math.abs(other - height) < SAME_HEIGHT);
    if (twin >= 0 && twin < i) {
      reading.fault(path, { message: `is the height of rack ${twin + 1} of the list`, allowed: 'each height once' });
    }
  });
  for (const name of ['chamber', 'upright'] as const) {
    const part = design[name];
    part?.thermometers.forEach(({ height }, i) => {
      checkHeight(part, name, height, [name, 'thermometers', i, 'height'], reading);
    });
  }
  checkNames(design, reading);
}

function checkHeight(part: Chamber | Upright, name: PartName, height: number, path: Path, reading: Reading): void {
  if (!isHollow(part)) return;
  const { floor, roof } = insideOf(part);
  if (!(height <= floor || height >= roof)) return;
  const deck = 'grates' in part ? deckOf(part) : undefined;
  const over = deck ? ` over its ${deck.name}` : '';
  reading.fault(path, {
    message: `is ${height <= floor ? 'below the floor' : 'above the roof'} of the ${name}: inside it reaches${over} from ${inches(floor)} to ${inches(roof)} above the ground`,
    allowed: `more than ${inches(floor)}, less than ${inches(roof)}`,
    example: inches(0.5 * (floor + roof)),
  });
}

/** One name, one place: a cook who steers by it must know which. */
function checkNames(design: Design, reading: Reading): void {
  const { chamber } = design;
  const taken = new Map<string, string>();
  placesOf({ ...design, chamber: undefined }).forEach(({ name, kind }) => {
    if (kind === 'rack') taken.set(name, 'a rack of the upright');
  });
  const names: [name: string, what: string, part: PartName, path: Path][] = [
    ...(chamber?.grates ?? []).map(({ name }, i): [string, string, PartName, Path] => [
      name,
      'a grate',
      'chamber',
      ['chamber', 'grates', i, 'name'],
    ]),
    ...(['chamber', 'upright'] as const).flatMap((part) =>
      (design[part]?.thermometers ?? []).map(({ name }, i): [string, string, PartName, Path] => [
        name,
        'a thermometer',
        part,
        [part, 'thermometers', i, 'name'],
      ]),
    ),
  ];
  if (chamber && chamber.grates.length === 0) taken.set('grate', 'the usual grate');
  for (const [name, what, part, path] of names) {
    if (reading.hasFault(path)) continue;
    const example = what === 'a grate' ? 'main' : 'lid left';
    if (name.trim() === '') {
      reading.fault(path, { message: 'is empty', allowed: 'a name that the gauge can give', example, value: null });
      continue;
    }
    const station = STATIONS.find((each) => each === name);
    if (station && !(what === 'a thermometer' && isDialOf(station, part))) {
      reading.fault(path, {
        message: `is the name of a station${what === 'a thermometer' ? ` of the ${partOfStation(station)}` : ', which has a dial'}`,
        allowed: 'a name of its own',
        example,
      });
    } else if (taken.has(name)) {
      reading.fault(path, {
        message: `is already the name of ${taken.get(name)!}`,
        allowed: 'a name of its own',
        example: `${name} 2`,
      });
    }
    taken.set(name, `${what} of the ${part}`);
  }
}

function isDialOf(station: StationName, part: PartName): boolean {
  return (GAUGES as readonly string[]).includes(station) && partOfStation(station) === part;
}

/** The cook's thermometer is at a station, grate, rack or thermometer that there is. */
export function checkGauge(design: Design, reading: Reading): void {
  const { gauge } = design;
  const names = [...new Set([...dialsOf(design), ...placesOf(design)].map(({ name }) => name))];
  if (names.includes(gauge) || reading.hasFault(['gauge'])) return;
  const station = GAUGES.find((each) => each === gauge);
  reading.fault(['gauge'], {
    code: 'unknown-name',
    message: station
      ? `is a station of ${partOfStation(station) === 'upright' ? 'an upright' : 'a chamber'}, and this pit has none`
      : 'names no station, thermometer, grate or rack of this pit',
    allowed: names.join(', '),
    nearest: nearestName(gauge, names),
  });
}
