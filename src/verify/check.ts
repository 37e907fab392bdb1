/** What a check is: a named function of the product with the units of its inputs and result. */
import type { CaseKind } from './quantities.js';

interface Common {
  /** one phrase for the list of checks */
  about: string;
}

interface NumberInput<Optional extends boolean = boolean> extends Common {
  type: 'number';
  kind: CaseKind;
  optional: Optional;
}

/** One of several names. */
export interface ChoiceInput<Option extends string = string, Optional extends boolean = boolean> extends Common {
  type: 'choice';
  options: readonly Option[];
  optional: Optional;
}

interface ListInput<Optional extends boolean = boolean> extends Common {
  type: 'list';
  kind: CaseKind;
  optional: Optional;
}

interface TableInput extends Common {
  type: 'table';
  kind: CaseKind;
}

/** JSON array of objects, each with fields of its own. */
export interface RecordsInput<
  Fields extends Readonly<Record<string, FieldInput>> = Readonly<Record<string, FieldInput>>,
> extends Common {
  type: 'records';
  fields: Fields;
}

type FieldInput = NumberInput | ChoiceInput | ListInput;
/** What a case may give to a check. */
export type Input = FieldInput | TableInput | RecordsInput;
/** What a check needs, by name. */
export type Inputs = Readonly<Record<string, Input>>;

type ValueOf<I> =
  I extends NumberInput<true>
    ? number | undefined
    : I extends NumberInput
      ? number
      : I extends ChoiceInput<infer Option, infer Optional>
        ? Option | (Optional extends true ? undefined : never)
        : I extends RecordsInput<infer Fields>
          ? { readonly [Name in keyof Fields]: ValueOf<Fields[Name]> }[]
          : I extends TableInput
            ? number[][]
            : I extends ListInput<true>
              ? number[] | undefined
              : number[];

/** What a check gets for its inputs, in SI. */
export type Values<I extends Inputs> = { readonly [Name in keyof I]: ValueOf<I[Name]> };

/** An input as read from a case, in SI; undefined: the case leaves it out. */
export type Value = number | string | number[] | number[][] | Readonly<Record<string, Value>>[] | undefined;

/** A function of the tool that cases are run through. */
export interface Check {
  about: string;
  inputs: Inputs;
  result: CaseKind;
  /** SI in, SI out; may throw a RangeError with the reason why the inputs have no answer */
  run(values: Readonly<Record<string, Value>>): number;
}

/** Number in SI of a kind. */
export function quantity(kind: CaseKind, about: string): NumberInput<false> {
  return { type: 'number', kind, about, optional: false };
}

/** Number that may be left out. */
export function optional(kind: CaseKind, about: string): NumberInput<true> {
  return { type: 'number', kind, about, optional: true };
}

/** One of a few words. */
export function choice<const Option extends string>(
  options: readonly Option[],
  about: string,
): ChoiceInput<Option, false> {
  return { type: 'choice', options, about, optional: false };
}

/** One of several words, or none. */
export function optionalChoice<const Option extends string>(
  options: readonly Option[],
  about: string,
): ChoiceInput<Option, true> {
  return { type: 'choice', options, about, optional: true };
}

/** JSON array of numbers. */
export function list(kind: CaseKind, about: string): ListInput<false> {
  return { type: 'list', kind, about, optional: false };
}

/** JSON array of numbers that may be left out. */
export function optionalList(kind: CaseKind, about: string): ListInput<true> {
  return { type: 'list', kind, about, optional: true };
}

/** An input that a case may leave out. */
export function mayBeLeftOut(input: Input): boolean {
  return 'optional' in input && input.optional;
}

/** JSON array of objects with these fields. */
export function records<const Fields extends Readonly<Record<string, FieldInput>>>(
  fields: Fields,
  about: string,
): RecordsInput<Fields> {
  return { type: 'records', fields, about };
}

/** JSON array of arrays of numbers, row by row. */
export function table(kind: CaseKind, about: string): TableInput {
  return { type: 'table', kind, about };
}

/** A check whose `run` is typed by its own inputs; values are validated against them before it is called. */
export function defineCheck<I extends Inputs>(
  about: string,
  inputs: I,
  result: CaseKind,
  run: (values: Values<I>) => number,
): Check {
  return { about, inputs, result, run: (values) => run(values as Values<I>) };
}
