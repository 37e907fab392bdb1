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

/** The part that a thermometer is in. */
export function partOfGauge(gauge: GaugeStation): 'chamber' | 'upright' {
  return gauge === 'uprightLower' || gauge === 'uprightUpper' ? 'upright' : 'chamber';
}
