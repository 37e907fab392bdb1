/**
 * What lies over the gas's way under the food: a reverse-flow plate, a row of plates with gaps between them, or a
 * deflector. SI.
 */
import type { Chamber } from './design.js';
import { gasSection } from './joints.js';
import { widthAt } from './overlap.js';
import { insideOf } from './walls.js';

interface Deck {
  name: 'reverse-flow plate' | 'row of plates' | 'deflector';
  /** above the inside floor, and of its plate [m] */
  height: number;
  plate: number;
}

/** What lies under the chamber's grates from side to side: a reverse-flow plate, a row of plates or a deflector. */
export function deckOf({ reverse, plates, deflector }: Chamber): Deck | undefined {
  if (reverse) return { name: 'reverse-flow plate', height: reverse.height, plate: reverse.plate };
  if (plates) return { name: 'row of plates', height: plates.height, plate: plates.plate };
  return deflector && { name: 'deflector', height: deflector.height, plate: deflector.plate };
}

/** Does gas rise along the chamber through gaps in its deck, out of one body of gas under it? */
export function hasGaps(chamber: Chamber | undefined): boolean {
  return chamber?.plates !== undefined || chamber?.deflector !== undefined;
}

/** A gap of a row of plates, as shares of the inside length from the fire end, and its area [m2]. */
export interface PlateGap {
  from: number;
  to: number;
  area: number;
}

/** Width of the chamber at its deck [m]. */
export function deckWidth(chamber: Chamber): number {
  return widthAt(gasSection(chamber), insideOf(chamber).floor + (deckOf(chamber)?.height ?? 0));
}

/**
 * Gaps along from the throat, each behind a plate; the plates are alike and fill what the gaps leave. Past a deflector
 * one gap.
 */
export function plateGaps(chamber: Chamber): PlateGap[] {
  const { plates, deflector } = chamber;
  const long = insideOf(chamber).length;
  const wide = deckWidth(chamber);
  // past a deflector all is gap
  if (deflector) return [{ from: deflector.length / long, to: 1, area: (long - deflector.length) * wide }];
  if (!plates) return [];
  const plate = (long - plates.gaps.reduce((sum, gap) => sum + gap, 0)) / plates.gaps.length;
  let end = 0;
  return plates.gaps.map((gap) => {
    const from = end + plate;
    end = from + gap;
    return { from: from / long, to: Math.min(1, end / long), area: gap * wide };
  });
}

/** Plan area of the plate [m2]: the chord at its height over the inside length, less the turn or the gaps. */
export function deckArea(chamber: Chamber): number {
  if (!deckOf(chamber)) return 0;
  const open = chamber.reverse?.turn ?? plateGaps(chamber).reduce((sum, { area }) => sum + area, 0);
  return Math.max(0, deckWidth(chamber) * insideOf(chamber).length - open);
}
