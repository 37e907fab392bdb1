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
