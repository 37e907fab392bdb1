import type { ComparedOption, Comparison } from './compare.js';

/** The option that the others are held against. */
export function baselineOf({ options, baseline }: Comparison): ComparedOption {
  return options.find(({ label }) => label === baseline)!;
}
