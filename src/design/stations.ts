/** Names of a pit's parts, and of the places in them where temperatures are reported, in the order of the gas's way. */
export const PARTS = ['firebox', 'chamber', 'upright'] as const;

export type PartName = (typeof PARTS)[number];

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

/** A builder's name for a place where temperatures are reported. */
export type StationName = (typeof STATIONS)[number];

/** Where the cook's thermometer may sit. */
export const GAUGES = ['fireEnd', 'middle', 'stackEnd', 'uprightLower', 'uprightUpper'] as const;

export type GaugeStation = (typeof GAUGES)[number];

/** The part that a station is in; a plenum is the chamber's. */
export function partOfStation(station: StationName): PartName {
  if (station === 'firebox') return 'firebox';
  return station === 'uprightLower' || station === 'uprightUpper' ? 'upright' : 'chamber';
}
