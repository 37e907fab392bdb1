/** What an option costs and saves against the baseline, and when the one has paid for the other, in words. */
import { formatTime, withCurrency, type UnitSystem } from '../../units/index.js';
import { paybackNumber } from '../costs.js';
import type { ComparedOption, Comparison } from './compare.js';
import { cooksText, tellingOf } from './told.js';

/** One clause; undefined where there is nothing to pay back, or a price is lacking. */
export function paybackClause(option: ComparedOption, comparison: Comparison, system: UnitSystem): string | undefined {
  const { payback } = option;
  if (!payback || paybackNumber(payback) === null) return undefined;
  const { extra, saved, cooks, usedUp } = payback;
  const apart = (keys: string[], difference: number) =>
    difference === 0 ? 'as much' : `${amountOf(keys, option, comparison, system)} ${difference > 0 ? 'more' : 'less'}`;
  const when = () => {
    if (usedUp !== null) return `, so that what it saves at first is gone after about ${cooksText(usedUp)} cooks`;
    if (cooks === 0) return '';
    return cooks === null ? ', never paid back' : `, paid back after about ${cooksText(cooks)} cooks`;
  };
  return [
    `in money: ${apart(['buildCost', 'steelCost'], extra)} to build`,
    `${apart(['cookCost'], -saved)} for the wood of a cook (${formatTime(comparison.settings.cook_s)})${when()}`,
  ].join(' and ');
}

/** How much a cost differs, as the table prints it; of the first of some costs that the comparison tells. */
function amountOf(keys: string[], { differences }: ComparedOption, comparison: Comparison, system: UnitSystem): string {
  const { currency = '' } = comparison.settings;
  const pair = keys.flatMap((key) => differences.find((each) => each.key === key) ?? [])[0];
  const pairs = comparison.options.flatMap((each) => each.differences.find(({ key }) => key === pair.key) ?? []);
  return withCurrency(
    tellingOf({ kind: 'money' }, pairs, system, currency).difference(pair).replace(/^[+-]/, ''),
    currency,
  );
}
