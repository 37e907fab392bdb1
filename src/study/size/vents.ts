/** Which vents fit a firebox, and how much of them is open while it holds. */
import type { Design } from '../../design/design.js';
import { whereClean, type CleanHold } from '../air/cleanHold.js';
import type { Solved } from '../estimate/steady.js';
import { LIMIT, type SizeSettings } from './limits.js';
import { stockVents, type StockVents } from './stock.js';

/** Opening that vents are first chosen for: in the middle of what is allowed, by ratio. */
export const MIDDLE = Math.sqrt(LIMIT.holdOpening.low! * LIMIT.holdOpening.high!);
/** Smallest open area at which holding is sought, as a share of the largest vents, and where that search begins. */
const SMALLEST = 0.003;
const GUESS = 0.06;

/** Vents that fit the design's firebox face beside each other; none where they stay as drawn. */
export function ventsThatFit(design: Design): StockVents[] {
  const { firebox, size } = design;
  if (size?.keep.includes('intakes')) return [];
  const { centre } = firebox.intakes[0];
  const low = firebox.centre - 0.5 * firebox.height;
  const high = firebox.centre + 0.5 * firebox.height;
  return stockVents({ width: firebox.width, height: 2 * Math.min(centre - low, high - centre) });
}

/** All that vents open [m2]. */
export const total = ({ count, area }: Pick<StockVents, 'count' | 'area'>) => count * area;

/** The most that a design's vents may open [m2]: the largest that fit, or those that stay; 0 where none fit. */
export function mostOpen(design: Design): number {
  const { firebox, size } = design;
  if (size?.keep.includes('intakes')) return firebox.intakes.reduce((sum, each) => sum + total(each), 0);
  const vents = ventsThatFit(design);
  return vents.length > 0 ? total(vents[vents.length - 1]) : 0;
}

/** How a design's vents open by an area [m2], whichever they will be. */
export function openedBy(design: Design, area: number): number | { count: number; area: number; open: number } {
  return design.size?.keep.includes('intakes') ? area / mostOpen(design) : { count: 1, area, open: 1 };
}

/** The open area at which the fire that holds burns clean [m2]; null: none does. */
export function cleanArea(
  designAt: (area: number) => Design,
  most: number,
  settings: SizeSettings,
  start?: Solved,
): CleanHold | null {
  return whereClean(designAt, { low: SMALLEST * most, high: most, guess: GUESS * most }, settings, start);
}
