import type { PartName, StationName } from '../design/design.js';
import type { OpeningState } from '../study/estimate/result.js';
import { plainText } from './plainText.js';

const STATIONS: Record<StationName, string> = {
  firebox: 'firebox',
  plenumFireEnd: 'under plate, fire end',
  plenumMiddle: 'under plate, middle',
  plenumStackEnd: 'under plate, far end',
  fireEnd: 'fire end',
  middle: 'middle',
  stackEnd: 'stack end',
  uprightLower: 'upright, lower',
  uprightUpper: 'upright, upper',
};

/** A station as a builder says it. */
export function stationLabel(name: string): string {
  return STATIONS[name as StationName] ?? name;
}

/** Places of a part's outside, from the top down. */
export const PLACES = { roof: 'roof', upperSide: 'upper side', lowerSide: 'lower side', floor: 'floor' } as const;

interface PlaceName {
  name: string;
  kind: 'grate' | 'rack' | 'thermometer';
  station: string;
}

/** A grate, rack or thermometer as a builder says it: `grate, fire end`, `rack 2`, `lid left`. */
export function placeLabel({ name, kind, station }: PlaceName): string {
  return kind === 'grate' ? `${plainText(name)}, ${stationLabel(station)}` : plainText(name);
}

/** A grate in a sentence: `the grate`, `the main grate`. */
export function grateWords(name: string): string {
  const own = plainText(name);
  return /grate/i.test(own) ? `the ${own}` : `the ${own} grate`;
}

/** The hottest of the outside: `firebox roof`, `chamber upper side at the fire end`. */
export function outsideLabel(at: { part: string; station: string | null; place: keyof typeof PLACES | null }): string {
  const part = at.place === null ? plainText(at.part) : `${plainText(at.part)} ${PLACES[at.place]}`;
  return at.station === null || at.station === at.part ? part : `${part}, ${stationLabel(at.station)}`;
}

/** An opening as a builder says it: a gap at `uprightUpper` is one at `upper`. */
export function openingLabel({ name, gap, station }: Pick<OpeningState, 'name' | 'gap' | 'station'>): string {
  if (gap === undefined || station === undefined) return plainText(name);
  return plainText(`${gap}, ${IN_UPRIGHT[station] ?? STATIONS[station]}`);
}

const IN_UPRIGHT: Partial<Record<StationName, string>> = { uprightLower: 'lower', uprightUpper: 'upper' };

const GAUGES: Readonly<Record<string, string>> = {
  fireEnd: 'fire-end thermometer',
  middle: 'middle thermometer',
  stackEnd: 'stack-end thermometer',
  uprightLower: 'lower thermometer of the upright',
  uprightUpper: 'upper thermometer of the upright',
};

/** What the cook steers by, by where it sits: behind 'the'. */
export function gaugeLabel(gauge: string): string {
  if (Object.hasOwn(GAUGES, gauge)) return GAUGES[gauge];
  return `thermometer at ${gauge === 'grate' ? 'the grate' : plainText(gauge)}`;
}

/** The places that lose heat, in the order of the gas path. */
export const HEAT_LOSS_LABELS = {
  firebox: 'firebox walls',
  chamber: 'chamber walls',
  upright: 'upright walls',
  stackWall: 'stack wall',
  stackGas: 'gas out of the stack',
  leaks: 'out of gaps and open vents',
} as const satisfies Record<PartName | 'stackWall' | 'stackGas' | 'leaks', string>;

/** A share as whole percent; one that would round to nothing says that it's small. */
export function percentOf(part: number, total: number): string {
  const percent = (100 * part) / total;
  return percent !== 0 && Math.abs(percent) < 0.5 ? 'under 1 %' : `${Math.round(percent)} %`;
}
