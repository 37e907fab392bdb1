import { plainText } from '../../words/plainText.js';
import type { Comparison } from '../../study/compare/compare.js';

/** Longest label over a column, and where more than this many options stand side by side. */
export const LONGEST = 26;
/** More options than this get shorter labels. */
export const MANY = 4;
const LONGEST_OF_MANY = 15;

/** An option's label, as long as there is room for beside the others, and unlike theirs. */
export function shortLabel(label: string, { options }: Comparison): string {
  const room = options.length > MANY ? LONGEST_OF_MANY : LONGEST;
  const cut = plainText(label, room);
  const alike = options.filter((option) => plainText(option.label, room) === cut);
  if (alike.length < 2) return cut;
  const number = ` (${alike.findIndex((option) => option.label === label) + 1})`;
  return plainText(label, room - number.length) + number;
}
