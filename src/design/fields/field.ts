/**
 * What a design file is made of. A field is declared once, by one of the functions here, and all else follows from that row: the
 * JSON Schema says what may stand there, the reader turns it into SI or names the fault, `check` and the sheets print it, the page
 * gets its slider, and a fit or a spread study moves what is unknown.
 */
import * as z from 'zod';
import { PLAIN_KINDS } from '../../units/index.js';
import { siOf, type Range } from '../ranges.js';
import type { Fields } from '../reading.js';

// Generated code is refused under a strict content policy, and costs more than it saves when a file is read once.
z.config({ jitless: true });

/** A block as far as it has been read, in SI. */
export type Soft = Readonly<Record<string, unknown>>;

export interface Field<T = unknown> {
  /**
   * what may stand in a file
   *
   * @internal so that who uses the library's types needs no zod
   */
  zod: z.ZodType;
  /**
   * The value in SI, undefined where there is none; faults and defaults go into the reading, and a number that is absent or
   * faulty is NaN.
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

export type Rows = Readonly<Record<string, Field>>;

/** The value of a field, once read. */
export type ValueOf<F> = F extends Field<infer T> ? T : never;

/** What a block's rows come to: fields that may be absent are optional. */
export type Read<R> = Loose<{ [K in keyof R]: ValueOf<R[K]> }>;
type Loose<T> = Flat<
  { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
    [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
  }
>;
type Flat<T> = { [K in keyof T]: T[K] };

/**
 * How an unknown is off, and so how it is fitted and carried over to another design: 'times' by a factor, 'is' by an amount. In the
 * order in which unknowns are told.
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
  outside: 'is',
  discharge: 'is',
  doorGap: 'times',
  woodHeat: 'times',
  flame: 'times',
  charcoal: 'is',
  glow: 'times',
} as const;

export type EstimateKind = keyof typeof UNKNOWN_SCALES;

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
  /** how it is printed, where not in the usual units of its kind: as a bare number, in other units, with other digits */
  print?: { bare?: true; digits?: number; shop?: string; si?: string };
  slider?: Slider;
  /** an unknown that a spread study draws and a fit may settle, as a builder says it in at most 30 letters */
  unknown?: { kind: EstimateKind; label: string };
}

interface Default<T> {
  /** what stands where the file says nothing: as a builder would write it, or from what has been read already, in SI */
  default?: string | ((own: Soft, around: Soft) => T);
  /** how that is told, where not as written; empty: it is not */
  says?: string;
  /** the default is an estimate, with this spread where one is known */
  guess?: true | string;
}

export interface NumberOptions extends Default<number>, Pick<Row, 'print' | 'slider' | 'unknown'> {
  examples?: string[];
  /** may be a pipe by its nominal size: only the diameter of something round */
  pipe?: true;
}

/** 'Wall roughness. Default: 0.1 mm.'; 'Soot (estimate, default 0.5 per m, spread 0-1.2).' */
function told(words: string, { default: otherwise, says, guess }: Default<unknown>): string {
  const text = says ?? (typeof otherwise === 'string' ? otherwise : '');
  if (text === '') return words;
  if (guess === undefined) return `${words} Default: ${text}.`;
  return `${words.replace(/\.$/, '')} (estimate, default ${text}${guess === true ? '' : `, spread ${guess}`}).`;
}

/**
 * A number with its unit; a share or a factor may stand without.
 *
 * @example quantity(range('length', '0 in', '4 in'), 'By how much the leaf laps over.', { default: '1/2 in' })
 */
export function quantity(range: Range, words: string, options: NumberOptions = {}): Field<number> {
  const { default: otherwise, examples, pipe, print, slider, unknown } = options;
  const written = PLAIN_KINDS.has(range.kind) ? z.union([z.number(), z.string()]) : z.string();
  const description = `${told(words, options)} Accepted: ${range.low} to ${range.high}.`;
  const zod = written.meta({ description, ...(examples ? { examples } : {}) });
  const usual = typeof otherwise === 'string' ? siOf(range.kind, otherwise) : NaN;
  return {
    zod: otherwise === undefined ? zod : zod.optional(),
    row: { range, print, slider, unknown },
    read: (fields, key, own, around) => {
      if (otherwise === undefined || fields.has(key)) return fields.required(key, range, { pipe });
      fields.defaulted(key);
      return typeof otherwise === 'function' ? otherwise(own, around) : usual;
    },
  };
}

/** A list of numbers with their units; empty where the file has none. */
export function quantities(range: Range, words: string, most: number): Field<number[]> {
  const description = `${words} Accepted: ${range.low} to ${range.high}.`;
  return {
    zod: z.array(z.string()).max(most).meta({ description }).optional(),
    row: { range },
    read: (fields, key) => fields.numbers(key, range),
  };
}

/** A whole number of `what`. */
export function count(what: string, range: Range, words: string, options: NumberOptions): Field<number> {
  const field = quantity(range, words, options);
  const written = z.number().meta({ description: told(words, options) });
  return {
    ...field,
    zod: written.optional(),
    read: (fields, key, own, around) => {
      const value = field.read(fields, key, own, around);
      if (Number.isFinite(value) && !Number.isInteger(value)) {
        const allowed = `a whole number of ${what}`;
        fields.fault(key, { code: 'wrong-type', message: 'is no whole number', allowed });
      }
      return value;
    },
  };
}

/**
 * One of several names; one that must be given counts as the first of them where it is not known.
 *
 * @param options.also other words for one of the names
 */
export function choice<const T extends string>(
  names: readonly T[],
  words: string,
  options: Default<T> & Pick<Field, 'offer'> & { also?: Readonly<Record<string, T>> } = {},
): Field<T> {
  const { default: otherwise, offer, also = {} } = options;
  const written = z.enum([...names, ...Object.keys(also)] as [string, ...string[]]);
  const zod = written.meta({ description: told(words, options) });
  return {
    zod: otherwise === undefined ? zod : zod.optional(),
    offer,
    read: (fields, key, own, around) => {
      const usual =
        typeof otherwise === 'function' ? otherwise(own, around) : ((otherwise as T | undefined) ?? names[0]);
      if (!fields.has(key) && otherwise !== undefined) fields.defaulted(key);
      const raw = fields.text(key, '');
      return names.find((each) => each === raw) ?? (Object.hasOwn(also, raw) ? also[raw] : usual);
    },
  };
}

/** One of several names, or none. */
export function maybe<const T extends string>(names: readonly T[], words: string): Field<T | undefined> {
  return {
    ...optional(choice(names, words)),
    read: (fields, key) => names.find((each) => each === fields.raw(key)),
  };
}

/** A list of some of several names; all of them where the file says nothing, or none. */
export function names<const T extends string>(
  all: readonly T[],
  words: string,
  otherwise: 'all' | 'none' = 'all',
): Field<T[]> {
  const zod = z.array(z.enum(all)).min(1).max(all.length).meta({ description: words });
  const usual = otherwise === 'all' ? all : [];
  return {
    zod: zod.optional(),
    read: (fields, key) => {
      if (!fields.has(key)) {
        fields.defaulted(key);
        return [...usual];
      }
      const raw = fields.raw(key);
      return Array.isArray(raw) ? all.filter((name) => raw.includes(name)) : [...usual];
    },
  };
}

/** One of several bare numbers, the first of them where the file says nothing. */
export function literals<T extends number>(values: readonly T[], words: string): Field<T> {
  const zod = z.literal(values).meta({ description: `${words} Default: ${values[0]}.` });
  return {
    zod: zod.optional(),
    read: (fields, key) => {
      if (!fields.has(key)) fields.defaulted(key);
      return values.find((each) => each === fields.raw(key)) ?? values[0];
    },
  };
}

/** A few words of the builder's own; empty where there are none. */
export function text(words: string): Field<string> {
  const zod = z.string().max(200).meta({ description: words });
  return { zod, read: (fields, key) => fields.text(key, '') };
}

/** One of the names that the design itself gives to its places; whether it does is a matter of sense. */
export function placeName(words: string, options: Default<string> & { examples: string[] }): Field<string> {
  const { default: otherwise, examples } = options;
  const zod = z
    .string()
    .max(200)
    .meta({ description: told(words, options), examples });
  return {
    zod: zod.optional(),
    read: (fields, key, own, around) => {
      const usual = typeof otherwise === 'function' ? otherwise(own, around) : (otherwise ?? '');
      if (!fields.has(key)) fields.defaulted(key);
      return fields.text(key, usual);
    },
  };
}

/** True or false; false where the file says nothing. */
export function flag(words: string): Field<boolean> {
  const zod = z.boolean().meta({ description: `${words} Default: false.` });
  return { zod: zod.optional(), read: (fields, key) => fields.flag(key, false) };
}

export interface Block<T = unknown, R extends Rows = Rows> extends Field<T> {
  rows: R;
  /** the block's own fields, wherever they stand */
  open: (fields: Fields, around: Soft) => T;
}

/**
 * A block of fields.
 *
 * @param open reads what rows alone can't say; without it every row is read by itself
 */
export function block<R extends Rows>(words: string | null, rows: R): Block<Read<R>, R>;
export function block<R extends Rows, T>(words: string, rows: R, open: Block<T>['open']): Block<T, R>;
export function block<R extends Rows>(
  words: string | null,
  rows: R,
  open: Block['open'] = (fields, around) => readRows(rows, fields, around),
): Block<unknown, R> {
  const zod = objectOf(rows);
  return {
    zod: words === null ? zod : zod.meta({ description: words }),
    rows,
    open,
    read: (fields, key, own) => open(fields.child(key), own),
  };
}

/**
 * A block and nothing else in it.
 *
 * @internal
 */
export function objectOf(rows: Readonly<Record<string, Pick<Field, 'zod'>>>): z.ZodType {
  return z.strictObject(Object.fromEntries(Object.entries(rows).map(([key, { zod }]) => [key, zod])));
}

/** A list of blocks; empty where the file has none. */
export function list<T>(block: Block<T>, least: number, most: number, words?: string): Field<T[]> {
  const { zod, rows, open } = block;
  const items = least > 0 ? z.array(zod).min(least).max(most) : z.array(zod).max(most);
  return {
    zod: words === undefined ? items : items.meta({ description: words }),
    rows,
    read: (fields, key, own) => fields.list(key).map((each) => open(each, own)),
  };
}

/** A field that a file may leave out; it has no value then. */
export function optional<T>(field: Field<T>): Field<T | undefined> {
  return {
    ...field,
    zod: field.zod.optional(),
    read: (fields, key, own, around) => (fields.has(key) ? field.read(fields, key, own, around) : undefined),
  };
}

/** A block or a list that a file may leave out: every field of it has its default then. */
export function usual<T>(field: Field<T>): Field<T> {
  return { ...field, zod: field.zod.optional() };
}

/** A field that only some of its blocks have a place for. */
export function where<T>(belongs: NonNullable<Field['belongs']>, field: Field<T>): Field<T | undefined> {
  return {
    ...field,
    belongs,
    read: (fields, key, own, around) => (belongs(own, around) ? field.read(fields, key, own, around) : undefined),
  };
}

/** Values that are known already; undefined for a field that goes no further than the file. */
type Given<G> = Loose<{ [K in keyof G as G[K] extends undefined ? never : K]: G[K] }>;

/**
 * A block's fields in the order of its rows.
 *
 * @param given what was read beforehand
 * @param first fields that the defaults of earlier ones follow from
 */
export function readRows<R extends Rows, G extends Partial<Record<keyof R, unknown>> = object>(
  rows: R,
  fields: Fields,
  around: Soft,
  given = {} as G,
  first: readonly string[] = [],
): Flat<Omit<Read<R>, keyof G> & Given<G>> {
  const own: Record<string, unknown> = { ...given };
  for (const key of [...first, ...Object.keys(rows)]) {
    if (!Object.hasOwn(own, key)) own[key] = rows[key].read(fields, key, own, around);
  }
  const read = Object.keys(rows).flatMap((key) => (own[key] === undefined ? [] : [[key, own[key]] as const]));
  return Object.fromEntries(read) as Flat<Omit<Read<R>, keyof G> & Given<G>>;
}

/** Every number of some rows, by its path: `firebox.intakes.centre`, without the places of a list. */
export function numbersIn(rows: Rows, before = ''): [path: string, row: Row][] {
  return Object.entries(rows).flatMap(([key, field]): [string, Row][] => [
    ...(field.row ? [[before + key, field.row] as [string, Row]] : []),
    ...(field.rows ? numbersIn(field.rows, `${before}${key}.`) : []),
  ]);
}
