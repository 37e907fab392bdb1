/** Names of a pit's parts, and of the places in them where temperatures are reported, in the order of the gas's way. */
export const PARTS = ['firebox', 'chamber', 'upright'] as const;

/** What has a shell of its own and gas in it. */
export type PartName = (typeof PARTS)[number];

/** Places where temperatures are reported. */
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

/** A station that the cook's thermometer may stand at. */
export type GaugeStation = (typeof GAUGES)[number];

/** The part that a station is in; a plenum is the chamber's. */
export function partOfStation(station: StationName): PartName {
  if (station === 'firebox') return 'firebox';
  return station === 'uprightLower' || station === 'uprightUpper' ? 'upright' : 'chamber';
}
