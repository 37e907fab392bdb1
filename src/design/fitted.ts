/** Estimates that measured cooks have narrowed down, as a design carries them. Made by `fit`, written and read as YAML. */

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

export interface Fitted {
  logs: FittedLog[];
  values: FittedValue[];
  /** correlation of the values with each other, a row a value, in their order */
  correlation: number[][];
}
