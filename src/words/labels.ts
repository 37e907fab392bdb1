import type { GaugeStation, PartName, StationName } from '../design/design.js';
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

/** An opening as a builder says it: a gap at `uprightUpper` is one at `upper`. */
export function openingLabel({ name, station }: Pick<OpeningState, 'name' | 'station'>): string {
  const place = station === undefined ? undefined : (IN_UPRIGHT[station] ?? STATIONS[station]);
  return plainText(place === undefined ? name : name.replace(` at ${station}`, ` at ${place}`));
}

const IN_UPRIGHT: Partial<Record<StationName, string>> = { uprightLower: 'lower', uprightUpper: 'upper' };

const GAUGES: Record<GaugeStation, string> = {
  fireEnd: 'fire-end thermometer',
  middle: 'middle thermometer',
  stackEnd: 'stack-end thermometer',
  uprightLower: 'lower thermometer of the upright',
  uprightUpper: 'upper thermometer of the upright',
};

/** The cook's thermometer, by where it sits. */
export function gaugeLabel(gauge: GaugeStation): string {
  return GAUGES[gauge];
}

/** The places that lose heat, in the order of the gas path. */
export const HEAT_LOSS_LABELS = {
  firebox: 'firebox walls',
  chamber: 'chamber walls',
  upright: 'upright walls',
  stackWall: 'stack wall',
  stackGas: 'gas out of the stack',
  leaks: 'smoke out of door gaps',
} as const satisfies Record<PartName | 'stackWall' | 'stackGas' | 'leaks', string>;

/** A share as whole percent; one that would round to nothing says that it's small. */
export function percentOf(part: number, total: number): string {
  const percent = (100 * part) / total;
  return percent !== 0 && Math.abs(percent) < 0.5 ? 'under 1 %' : `${Math.round(percent)} %`;
}
