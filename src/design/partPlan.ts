/** A part's plan, whatever kind it is. */
import type { HorizontalPart, Upright } from './design.js';

/** Only the upright has a depth. */
export function isUpright(part: HorizontalPart | Upright): part is Upright {
  return 'depth' in part;
}

/** A part's plan: across, and along the gas's way. */
export function plan(part: HorizontalPart | Upright): [number, number] {
  return isUpright(part) ? [part.width, part.depth] : [part.width, part.length];
}

/** The smallest of width, length or depth, and height [m]. */
export function leastSize(part: HorizontalPart | Upright): number {
  return Math.min(...plan(part), part.height);
}
