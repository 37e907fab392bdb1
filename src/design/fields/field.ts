/**
 * What a design file is made of. A field is declared once, by one of the functions here, and all else follows from that
 * row: the JSON Schema says what may stand there, the reader turns it into SI or names the fault, `check` and the
 * sheets print it, the page gets its slider, and a fit or a spread study moves what is unknown.
 */
import * as z from 'zod';
import { PLAIN_KINDS } from '../../units/index.js';
import { siOf, type Range } from '../ranges.js';
import type { Soft, Field, Loose, Row } from './fieldType.js';
import { optional } from './blocks.js';

// Generated code is refused under a strict content policy, and costs more than it saves when a file is read once.
z.config({ jitless: true });

interface Default<T> {
  /** what stands where the file says nothing: as a builder would write it, or from what has been read already, in SI */
  default?: string | ((own: Soft, around: Soft) => T);
  /** how that is told, where not as written; empty: it is not */
  says?: string;
  /** the default is an estimate, with this spread where one is known */
  guess?: true | string;
}

/** What a number's field may have beside its range and words. */
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

/** An estimate without a unit: its default, how far it spreads, and what it is called where it counts as an unknown. */
export function factor(
  range: Range,
  words: string,
  given: Pick<NumberOptions, 'default' | 'guess'>,
  unknown: NonNullable<NumberOptions['unknown']>,
): Field<number> {
  return quantity(range, words, { ...given, print: { bare: true }, unknown });
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

/** Values that are known already; undefined for a field that goes no further than the file. */
export type Given<G> = Loose<{ [K in keyof G as G[K] extends undefined ? never : K]: G[K] }>;
