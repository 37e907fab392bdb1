/** Limits of a size, how they are said and how far a size is inside them. */
import { rangeOf } from '../../words/quantityWords.js';
import { plainText } from '../../words/plainText.js';
import { writtenWhere } from '../../words/warningPlace.js';
import { COUNTED, LIMIT, limitOf, marginOf, type LimitKey, type Margin } from '../../study/size/limits.js';
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, inWords, type UnitSystem } from '../../units/index.js';
import { INDENT, table } from './table.js';
import { note } from './paragraphs.js';

/** A share in whole per cent. */
export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function valueText(key: LimitKey, value: number, system: UnitSystem): string {
  if (LIMIT[key].unit === 'm/s') return speed(value, system);
  if (key === 'holdOpening') return percent(value);
  if (key === 'smoke' || key === 'gapSmoke') return `${Number((100 * value).toPrecision(2))} %`;
  if (key === 'draft') return format('pressure', value, system, { digits: 2 });
  if (LIMIT[key].high === 0) return value === 0 ? 'none' : String(value);
  return value.toPrecision(3);
}

function speed(value: number, system: UnitSystem): string {
  return format('speed', value, system, { digits: 2, ...(system === 'shop' ? { unit: 'ft/s' } : {}) });
}

function bandText(key: LimitKey, system: UnitSystem): string {
  const { low, high } = LIMIT[key];
  if (high === 0) return 'none';
  if (low === 0) return 'above zero';
  if (low !== undefined && high !== undefined) {
    return rangeOf(valueText(key, low, system), valueText(key, high, system));
  }
  return low !== undefined ? `at least ${valueText(key, low, system)}` : `at most ${valueText(key, high!, system)}`;
}

/** A margin that is no longer told as a number [-]. */
const AMPLE = 3;

/** How far a number is inside its limit, in a word or per cent. */
export function marginText({ key, value, margin }: Margin): string {
  const { low, high, told } = LIMIT[key];
  if (low === 0 || high === 0) return margin >= 0 ? 'in' : told ? 'told' : 'OUT';
  if (margin > AMPLE) return 'ample';
  if (margin >= 0) return percent(margin);
  const own = marginOf(key, value).margin;
  // an estimate may warn of what keeps its limit; and a flow backwards is no share of one
  if (own >= 0 || value <= 0) return 'OUT';
  return own < -1 ? `OUT ${Number((value / high!).toPrecision(2))} times` : `OUT ${percent(-own)}`;
}

/** A limit that is not kept, in words. */
export function outWords({ key, value }: Margin, system: UnitSystem): string {
  const { words, high } = LIMIT[key];
  return high === 0 ? words : `${words} ${valueText(key, value, system)}, wanted ${bandText(key, system)}`;
}

/** What an estimate warns of and has no number of its own, where all of it is well: one row. */
const ALL_ELSE = 'what else an estimate warns of';

/** Every limit, and what the choice and the drawing come to against it, with the margin. */
export function marginsText(
  { asDrawn, wanted, chosen }: SizeResult,
  choice: SizeChoice,
  system: UnitSystem,
  full: boolean,
): string {
  const of = (margins: readonly Margin[], key: LimitKey) => margins.find((each) => each.key === key);
  const cells = (margin: Margin | undefined) =>
    margin ? [bareDraft(valueText(margin.key, margin.value, system)), marginText(margin)] : ['-', ''];
  const sources = wanted.limits.map(({ source }) => source);
  const draftUnit = format('pressure', 1, system).replace(/^\S+ /, '');
  const bareDraft = (text: string) => text.replace(` ${draftUnit}`, '');
  const rows = wanted.limits.map(({ key, words }) => ({
    key,
    sized: of(choice.margins, key),
    cells: [
      key === 'draft' ? `${words}, ${draftUnit}` : words,
      bandText(key, system),
      ...cells(of(choice.margins, key)),
      ...cells(of(asDrawn.margins, key)),
    ],
  }));
  const clean = (key: LimitKey) =>
    COUNTED.includes(key) && [choice, asDrawn].every(({ margins }) => (of(margins, key)?.margin ?? 0) >= 0);
  const shown = full ? rows : rows.filter(({ key }) => !clean(key));
  const rest = shown.length < rows.length ? [[ALL_ELSE, 'none', 'none', 'in', 'none', 'in']] : [];
  return [
    `LIMITS of the ${chosen === null ? 'nearest' : 'chosen'} size, beside the design as drawn; the share of the limit that is in hand`,
    table(['', 'wanted', 'size', 'margin', 'as drawn', 'margin'], [...shown.map((row) => row.cells), ...rest], INDENT),
    ...asDrawn.failed.map((why) => note(`As drawn: ${why}.`)),
    ...toldLines(choice),
    note(
      `Limits are ${sources.includes('common practice, no source') ? 'common practice without a source, or our estimates' : 'estimates'}. ` +
        `'Holding' means with air for ${wanted.cleanAir.ratio} times what the wood needs (estimate, ` +
        `${wanted.cleanAir.low} to ${wanted.cleanAir.high}; --clean-air changes it). 'Just lit' is gas over steel still cold.`,
    ),
  ].join('\n');
}

/** What no size mends, as an estimate of the choice warns of it. */
function toldLines({ warned }: SizeChoice): string[] {
  const told = (warned ?? []).filter(({ code }) => LIMIT[limitOf(code)].told);
  return told.map((each) =>
    note(`No size mends this: ${plainText(`${writtenWhere(each)}: ${inWords(each.message)}`, 600)}.`),
  );
}
