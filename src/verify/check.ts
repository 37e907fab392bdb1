/** What a check is: a named function of the product with the units of its inputs and result. */
import type { CaseKind } from './quantities.js';

interface Common {
  /** one phrase for the list of checks */
  about: string;
}

export interface NumberInput<Optional extends boolean = boolean> extends Common {
  type: 'number';
  kind: CaseKind;
  optional: Optional;
}

export interface ChoiceInput<Option extends string = string> extends Common {
  type: 'choice';
  options: readonly Option[];
}

export interface ListInput<Optional extends boolean = boolean> extends Common {
  type: 'list';
  kind: CaseKind;
  optional: Optional;
}

export interface TableInput extends Common {
  type: 'table';
  kind: CaseKind;
}

export type Input = NumberInput | ChoiceInput | ListInput | TableInput;
export type Inputs = Readonly<Record<string, Input>>;

type ValueOf<I> =
  I extends NumberInput<true>
    ? number | undefined
    : I extends NumberInput
      ? number
      : I extends ChoiceInput<infer Option>
        ? Option
        : I extends TableInput
          ? number[][]
          : I extends ListInput<true>
            ? number[] | undefined
            : number[];

export type Values<I extends Inputs> = { readonly [Name in keyof I]: ValueOf<I[Name]> };

export type Value = number | string | number[] | number[][] | undefined;

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
export function choice<const Option extends string>(options: readonly Option[], about: string): ChoiceInput<Option> {
  return { type: 'choice', options, about };
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
  return (input.type === 'number' || input.type === 'list') && input.optional;
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
