/** Fields that hold fields: blocks, lists of them, and those that may be absent or belong to some shapes alone. */
import * as z from 'zod';
import type { Fields } from '../reading.js';
import type { Soft, Field, Rows, Read, Flat, Row } from './fieldType.js';
import type { Given } from './field.js';

/** A field that holds fields of its own. */
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
