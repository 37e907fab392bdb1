import { plainText } from '../charts/plainText.js';
import { headline } from '../report/headline.js';
import type { EstimateResult } from '../study/result.js';
import { element, part } from './dom.js';
import type { Option } from './workbench.js';

/** The command's own sentences, and the warnings under them. */
export function showVerdict({ full, broken }: Option): void {
  if (broken !== null) {
    part('sentences').replaceChildren(
      element('p', {}, `Our fault, not yours: ${plainText(broken, 200)}. The numbers are those of the design before.`),
    );
    return;
  }
  if (!full) return;
  part('sentences').replaceChildren(...headline(full, 'shop').map((sentence) => element('p', {}, sentence)));
  part('warnings').replaceChildren(
    ...full.warnings.map(({ where, message }) =>
      element('li', {}, element('strong', {}, `${plainText(where)}: `), plainText(message, 600)),
    ),
  );
}

/** For a listener: the verdict, and how many warnings there are. */
export function shortVerdict(result: EstimateResult): string {
  const count = result.warnings.length;
  const warnings = count === 0 ? '' : ` ${count} ${count === 1 ? 'warning' : 'warnings'}.`;
  return headline(result, 'shop').join(' ') + warnings;
}
