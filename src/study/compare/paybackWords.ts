/** What an option costs and saves against the baseline, and when the one has paid for the other, in words. */
import { formatTime, withCurrency, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { paybackNumber, type Payback } from '../costs.js';
import type { ComparedOption, Comparison } from './compare.js';
import { cooksText, tellingOf } from './told.js';

/** One clause; undefined where there is nothing to pay back, or a price is lacking. */
export function paybackClause(option: ComparedOption, comparison: Comparison, system: UnitSystem): string | undefined {
  const { payback } = option;
  if (!payback || paybackNumber(payback) === null) return undefined;
  const of = (keys: string[]) => amountOf(keys, option, comparison, system);
  return paybackWords(payback, {
    build: () => of(['buildCost', 'steelCost']),
    cook: () => of(['cookCost']),
    cook_s: comparison.settings.cook_s,
  });
}

/** @param told how much each of the two differs, as it is told, and how long a cook is */
export function paybackWords(
  { extra, saved, cooks, usedUp }: Payback,
  told: { build: () => string; cook: () => string; cook_s: number },
): string {
  const apart = (amount: () => string, difference: number) =>
    difference === 0 ? 'as much' : `${amount()} ${difference > 0 ? 'more' : 'less'}`;
  const when = () => {
    if (usedUp !== null) return `, so that what it saves at first is gone after about ${cooksText(usedUp)} cooks`;
    if (cooks === 0) return '';
    return cooks === null ? ', never paid back' : `, paid back after about ${cooksText(cooks)} cooks`;
  };
  return listed([
    `in money: ${apart(told.build, extra)} to build`,
    `${apart(told.cook, -saved)} for the wood of a cook (${formatTime(told.cook_s)})${when()}`,
  ]);
}

/** How much a cost differs, as the table prints it; of the first of some costs that the comparison tells. */
function amountOf(keys: string[], { differences }: ComparedOption, comparison: Comparison, system: UnitSystem): string {
  const { currency = '' } = comparison.settings;
  const pair = keys.flatMap((key) => differences.find((each) => each.key === key) ?? [])[0];
  const pairs = comparison.options.flatMap((each) => each.differences.find(({ key }) => key === pair.key) ?? []);
  return amount(tellingOf({ kind: 'money' }, pairs, system, currency).difference(pair), currency);
}

/** How much two amounts of money differ that are not told themselves. */
export function amountApart(value: number, baseline: number, currency: string, system: UnitSystem): string {
  const { signed } = tellingOf({ kind: 'money' }, [{ baseline, value, none: false }], system, currency);
  return amount(signed(value - baseline), currency);
}

const amount = (signed: string, currency: string) => withCurrency(signed.replace(/^[+-]/, ''), currency);
