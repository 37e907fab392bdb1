import { plainText } from '../../words/plainText.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { SharedWarning } from '../../words/warningRank.js';
import { shortLabel } from './shortLabel.js';

/** Warnings as lines of a list, with the options they belong to where not all have them. */
export function warningItems(comparison: Comparison, warnings: readonly SharedWarning[]): string[] {
  const { options } = comparison;
  return warnings.map(({ where, message, labels }) => {
    const whose = labels.map((label) => shortLabel(label, comparison)).join(', ');
    const whom = options.length === 1 ? '' : labels.length === options.length ? 'all: ' : `${whose}: `;
    return `${whom}${plainText(where)}: ${plainText(message, 600)}`;
  });
}
