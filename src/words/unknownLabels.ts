/** At most 30 letters each: they stand in tables. */
const WORDS: Record<string, string> = {
  'fire.heat': 'how big the fire really is',
  'fire.radiant': 'heat that leaves as radiation',
  'fire.soot': 'soot in the firebox gas',
  'fire.rise': 'how fast the fire comes up',
  'wood.heat': 'heat that a pound of wood gives',
  'fire.splits.flame': 'how soon a split flames off',
  'fire.splits.charcoal': 'heat that comes of charcoal',
  'fire.splits.glow': 'how long charcoal glows',
  'wood.moisture': 'how wet the wood is',
  'site.wind': 'wind at the pit',
  innerConvection: 'how well gas heats the walls',
  'estimates.oxygenUse': 'oxygen a wood fire can use',
  'estimates.stemFill': 'lag of the thermometer stem',
  'estimates.insideEmissivity': 'emissivity inside, sooted',
  'estimates.entrainment': 'gas that rising gas takes in',
  'estimates.downflow': 'gas that sinks along the walls',
  'firebox.intakes.discharge': 'discharge of the intakes',
  'throat.discharge': 'discharge of the throat',
  'upright.opening.discharge': 'discharge into the upright',
};

/** An unknown of a design as a builder says it, by its path in the design file. */
export function unknownLabel(path: string): string {
  const part = path.split('.')[0].replace(/s(\[\d+\])?$/, '');
  if (path.endsWith('.doorGap')) return `gap of the ${part} door`;
  if (path.endsWith('.emissivity')) return `emissivity outside, ${part}`;
  return WORDS[path] ?? path;
}
