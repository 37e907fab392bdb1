import { plainText } from '../../words/plainText.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { SharedWarning } from '../../words/warningRank.js';
import { inWords, type UnitSystem } from '../../units/index.js';
import { whereWords } from '../../words/warningWords.js';
import { shortLabel } from './shortLabel.js';

/** Warnings as lines of a list, with the options they belong to where not all have them. */
export function warningItems(
  comparison: Comparison,
  warnings: readonly SharedWarning[],
  units: UnitSystem | 'both' = 'both',
): string[] {
  const { options } = comparison;
  return warnings.map(({ where, fire, message, labels }) => {
    const whose = labels.map((label) => shortLabel(label, comparison)).join(', ');
    const whom = options.length === 1 ? '' : labels.length === options.length ? 'all: ' : `${whose}: `;
    const { design } = options.find(({ label }) => label === labels[0])!.result;
    return `${whom}${whereWords({ where, fire }, design)}: ${plainText(inWords(message, units), 600)}`;
  });
}
