/**
 * Estimates that measured cooks have narrowed down, as a design carries them. Made by `fit`, written and read as YAML.
 */

/** A log that the values rest on. */
export interface FittedLog {
  /** file name */
  name: string;
  /** first 16 hex digits of the SHA-256 of its bytes: the same log must not count twice */
  hash: string;
  /** name of the design that it was measured on */
  design: string;
  /** length that was fitted [s] */
  fitted_s: number;
  /** temperature readings in it */
  readings: number;
  /** root mean square error on the part that was not fitted [K]; null: nothing was held back */
  error_K: number | null;
}

/** One estimate, by the path that the table of estimates has for it. */
export interface FittedValue {
  path: string;
  /** 'is': the value itself, SI; 'times': a factor on what a design gives */
  scale: 'is' | 'times';
  value: number;
  /** 90 % interval, in the same scale */
  low: number;
  high: number;
  /** what the design had when it was fitted, SI; for 'times' it tells only */
  was: number;
}

/** What a fit found and the logs that it rests on, as a design names it. */
export interface Fitted {
  logs: FittedLog[];
  values: FittedValue[];
  /** correlation of the values with each other, a row a value, in their order */
  correlation: number[][];
}

/** A value as a design carries it, once it was read. */
export interface FittedValueUse extends FittedValue {
  /**
   * what the design itself has there, SI; null: the value is not used, since the design has no such field or its own
   * number
   */
  own: number | null;
}

/** What a design rests on: the block as it was read, with what it replaced. */
export interface FittedUse extends Fitted {
  values: FittedValueUse[];
}

/** Does a log with this hash count already? Fitted twice it would seem to tell twice as much. */
export function sameLog(fitted: Fitted | undefined, hash: string): FittedLog | undefined {
  return fitted?.logs.find((log) => log.hash === hash);
}

/** The values of a block that a design uses, with their correlation. */
export function valuesInUse({ values, correlation }: FittedUse): { values: FittedValueUse[]; correlation: number[][] } {
  const used = values.flatMap(({ own }, i) => (own === null ? [] : [i]));
  return { values: used.map((i) => values[i]), correlation: used.map((i) => used.map((j) => correlation[i][j])) };
}
