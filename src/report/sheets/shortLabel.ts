import { plainText } from '../../charts/plainText.js';
import type { Comparison } from '../../study/compare.js';

/** Longest label over a column, and where more than this many options stand side by side. */
export const LONGEST = 26;
export const MANY = 4;
const LONGEST_OF_MANY = 15;

/** An option's label, as long as there is room for beside the others. */
export function shortLabel(label: string, { options }: Comparison): string {
  return plainText(label, options.length > MANY ? LONGEST_OF_MANY : LONGEST);
}
