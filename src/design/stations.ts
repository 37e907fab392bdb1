import type { PartName, StationName } from './design.js';

/** Names of the places where temperatures are reported, in the order of the gas's way. */
export const STATIONS = [
  'firebox',
  'plenumFireEnd',
  'plenumMiddle',
  'plenumStackEnd',
  'fireEnd',
  'middle',
  'stackEnd',
  'uprightLower',
  'uprightUpper',
] as const;

/** What each is a station of. */
const PART_OF: Readonly<Record<StationName, PartName | 'plenum'>> = {
  firebox: 'firebox',
  plenumFireEnd: 'plenum',
  plenumMiddle: 'plenum',
  plenumStackEnd: 'plenum',
  fireEnd: 'chamber',
  middle: 'chamber',
  stackEnd: 'chamber',
  uprightLower: 'upright',
  uprightUpper: 'upright',
};

/** The part that a station is in; a plenum is that of the chamber. */
export function partOfStation(station: StationName): PartName {
  const part = PART_OF[station];
  return part === 'plenum' ? 'chamber' : part;
}

/** Does food lie there? */
export function isForCooking(station: StationName): boolean {
  return PART_OF[station] === 'chamber' || PART_OF[station] === 'upright';
}
