/** What a field of a design file is: its row, and what its value comes to. */
import type * as z from 'zod';
import { type Range } from '../ranges.js';
import type { Fields } from '../reading.js';

/** A block as far as it has been read, in SI. */
export type Soft = Readonly<Record<string, unknown>>;

/** One row of the design file: what may stand there and how it is read. */
export interface Field<T = unknown> {
  /**
   * what may stand in a file
   *
   * @internal so that who uses the library's types needs no zod
   */
  zod: z.ZodType;
  /**
   * The value in SI, undefined where there is none; faults and defaults go into the reading, and a number that is
   * absent or faulty is NaN.
   *
   * @param own the block that the field stands in, as far as it has been read
   * @param around the block around that one
   */
  read: (fields: Fields, key: string, own: Soft, around: Soft) => T;
  /** of a number */
  row?: Row;
  /** of a block, or of each item of a list */
  rows?: Rows;
  /** of a choice that the page offers: what it is called there, and the names */
  offer?: { label: string; names: readonly string[] };
  /** false in a block that has no place for it: a round part has no width */
  belongs?: (own: Soft, around: Soft) => boolean;
}

/** Fields by their keys. */
export type Rows = Readonly<Record<string, Field>>;

/** The value of a field, once read. */
type ValueOf<F> = F extends Field<infer T> ? T : never;

/** What a block's rows come to: fields that may be absent are optional. */
export type Read<R> = Loose<{ [K in keyof R]: ValueOf<R[K]> }>;

/** The same type with what may be undefined optional. */
export type Loose<T> = Flat<
  { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
    [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
  }
>;

/** The same type written out, for messages of the compiler. */
export type Flat<T> = { [K in keyof T]: T[K] };

/**
 * How an unknown is off, and so how it is fitted and carried over to another design: 'times' by a factor, 'is' by an
 * amount. In the order in which unknowns are told.
 */
export const UNKNOWN_SCALES = {
  heat: 'times',
  radiant: 'is',
  soot: 'is',
  rise: 'times',
  moisture: 'is',
  wind: 'times',
  innerConvection: 'is',
  oxygenUse: 'is',
  stemFill: 'is',
  inside: 'is',
  entrainment: 'times',
  downflow: 'is',
  outsideConvection: 'times',
  levelConvection: 'times',
  outside: 'is',
  discharge: 'is',
  doorGap: 'times',
  woodHeat: 'times',
  flame: 'times',
  charcoal: 'is',
  glow: 'times',
} as const;

/** Kinds of estimates that a spread may move. */
export type UnknownKind = keyof typeof UNKNOWN_SCALES;

/** How the page shows a number. */
export interface Slider {
  /** one for a single item and one for item # of several; {next} is the part after the firebox */
  label: string | readonly [single: string, several: string];
  /** from, to and step in the usual unit of the trade; none: stock plate */
  steps?: readonly [from: number, to: number, step: number];
  /** stands among the heights above the ground */
  height?: true;
}

/** A number of a design. */
export interface Row {
  range: Range;
  /**
   * how it is printed, where not in the usual units of its kind: as a bare number, in other units, with other digits
   */
  print?: { bare?: true; digits?: number; shop?: string; si?: string };
  slider?: Slider;
  /** an unknown that a spread study draws and a fit may settle, as a builder says it in at most 30 letters */
  unknown?: { kind: UnknownKind; label: string };
}
