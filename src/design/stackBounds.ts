/**
 * Between which lengths a stack may be chosen: what a builder asks of its top, and what is usual where nothing is
 * asked.
 */
import type { Design, Stack } from './design.js';

/**
 * A stack ends at least so high above the ground [m], so that smoke clears a cook's head: 6 ft, common practice, no
 * source.
 */
export const OVER_HEAD = 1.8288;
/** A stack stands at least so far over the lid [m], where nothing is asked: 24 in, common practice, no source. */
export const OVER_LID = 0.6096;

/** Roof of the part that a stack stands on, above the ground [m]. */
export function lidOf(design: Design, { part }: Stack): number {
  const { centre, height } = design[part]!;
  return centre + 0.5 * height;
}

/**
 * Shortest and longest stack [m], so that the tops of all stacks, which are of one length, keep between their bounds.
 *
 * @returns most: Infinity where nothing is asked
 */
export function stackLengths(design: Design): { least: number; most: number } {
  const { least, most, over = 'lid' } = design.size?.stack ?? {};
  const from = (stack: Stack) => (over === 'lid' ? lidOf(design, stack) : over === 'head' ? OVER_HEAD : 0);
  const longest = most === undefined ? Infinity : Math.min(...design.stacks.map((s) => from(s) + most - s.base));
  if (least !== undefined)
    return { least: Math.max(...design.stacks.map((s) => from(s) + least - s.base)), most: longest };
  const usual = Math.max(...design.stacks.map((s) => Math.max(OVER_HEAD, lidOf(design, s) + OVER_LID) - s.base));
  return { least: Math.min(usual, longest), most: longest };
}
