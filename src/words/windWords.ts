import type { Design } from '../design/design.js';
import { windAtPit, windHeight } from '../design/windAtPit.js';
import type { Terrain } from '../physics/windProfile.js';
import type { Kind } from '../units/index.js';

const AROUND: Readonly<Record<Terrain, string>> = { open: 'open country', suburb: 'a suburb', city: 'a city' };

/**
 * The wind that a pit feels, and where that comes from: '3.9 mph at the pit: 9 mph at the weather station, brought to
 * 40 in up in a suburb'.
 */
export function windWords(design: Design, say: (kind: Kind, si: number) => string): string {
  const { wind, terrain } = design.site;
  const felt = `${say('speed', windAtPit(design))} at the pit`;
  if (terrain === undefined) return felt;
  return `${felt}: ${say('speed', wind)} at the weather station, brought to ${say('length', windHeight(design))} up in ${AROUND[terrain]}`;
}
