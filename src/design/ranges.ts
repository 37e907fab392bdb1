/**
 * What a number may be.
 *
 * The ranges of a design's fields are wide but sane: they catch a slipped unit or digit, they do not judge a design.
 * They are common practice of the trade with room on both sides, no source. Bounds are inclusive and written as a
 * builder would.
 */
import { parseQuantity, type Kind } from '../units/index.js';

/** What a number may be: its kind and its bounds, as text and in SI. */
export interface Range {
  kind: Kind;
  /** bounds as text, for messages */
  low: string;
  high: string;
  /** bounds in SI */
  min: number;
  max: number;
}

/** @example range('length', '6 in', '20 ft') */
export function range(kind: Kind, low: string, high: string): Range {
  return { kind, low, high, min: siOf(kind, low), max: siOf(kind, high) };
}

/** A quantity that we wrote ourselves, in SI. */
export function siOf(kind: Kind, text: string): number {
  const read = parseQuantity(kind, text);
  if (!read.ok) throw new Error(`${kind}: '${text}' ${read.problem}`);
  return read.si;
}

/** Plate of a part, wall of a tube or a pipe. */
export const PLATE = range('plate', '0.5 mm', '2 in');

/** Largest share of a tube's or stack's diameter that its two walls may take. */
export const MOST_WALL = 0.9;
