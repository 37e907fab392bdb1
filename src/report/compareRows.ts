import { GROUP_WORDS, wordsOf } from '../words/quantityWords.js';
import type { ComparedOption, Comparison, Difference } from '../study/compare/compare.js';
import { PAYBACK, paybackNumber } from '../study/costs.js';
import { measuresOf, type Measure } from '../study/compare/measures.js';
import { cooksText, tellingOf, type Telling } from '../study/compare/told.js';
import { convert, unitOf, type UnitSystem } from '../units/index.js';

/** A number that options are compared by, and what it is in each. */
export interface CompareRow {
  measure: Measure;
  /** one an option, in their order; the baseline's own has no difference */
  cells: Difference[];
}

/** The rows of a comparison's table: what is measured, and every option's number beside the baseline's. */
export function compareRows(comparison: Comparison): CompareRow[] {
  const rows = measuresOf(comparison.options, comparison.settings).map((measure) => ({
    measure,
    cells: comparison.options.map((option) => differenceOf(option, measure.key)),
  }));
  const costs = rows.findLastIndex(({ measure }) => measure.group === 'money');
  return rows.toSpliced(costs + 1, 0, ...paybackRow(comparison));
}

/** When each option is paid back, where any of them has something to pay back. */
function paybackRow({ options }: Comparison): CompareRow[] {
  const values = options.map(({ payback }) => paybackNumber(payback));
  if (values.every((value) => value === null)) return [];
  const apart = { key: PAYBACK.key, baseline: null, difference: null, share: null, none: false };
  return [{ measure: { ...PAYBACK, group: 'money' }, cells: values.map((value) => ({ ...apart, value })) }];
}

function differenceOf({ differences }: ComparedOption, key: string): Difference {
  return differences.find((each) => each.key === key)!;
}

/** How the cells of a row are told, all to one last digit. */
export function tellingOfRow({ measure, cells }: CompareRow, system: UnitSystem, currency = ''): Telling {
  return tellingOf(measure, cells, system, currency);
}

/** Is a number the same in options, told by their places, as in the baseline? Of one option alone nothing is. */
export function isSame(row: CompareRow, options: readonly number[], system: UnitSystem): boolean {
  const telling = tellingOfRow(row, system);
  return options.length > 0 && options.every((i) => telling.difference(row.cells[i]) === 'same');
}

/**
 * Rows that are the same in all, with the number of one of them: `plate (firebox 1/4 in, stack 11 ga), steel (...)`.
 */
export function sameWords(rows: readonly CompareRow[], base: number, system: UnitSystem, currency?: string): string {
  const groups = [...new Set(rows.map(({ measure }) => measure.group))];
  return groups
    .map((group) => {
      const own = rows.filter(({ measure }) => measure.group === group);
      const told = own.map((row) => {
        const number = tellingOfRow(row, system, currency).quantity(row.cells[base].value);
        return `${wordsOf(row.measure, 'compared')} ${number}`;
      });
      return `${GROUP_WORDS[group].toLowerCase()} (${told.join(', ')})`;
    })
    .join(', ');
}

/** What a row is called, its unit with it. */
export function rowHead({ measure }: CompareRow, { unit }: Telling): string {
  const words = wordsOf(measure, 'compared');
  return unit === '' ? words : `${words} [${unit}]`;
}

/** The unit of a row's plain numbers. */
export function plainUnit({ kind, unit }: Measure, system: UnitSystem, currency = ''): string {
  if (kind === 'cooks') return 'cooks';
  return kind === 'money' ? currency : (unit[system] ?? unitOf(kind, system));
}

/** A value as a plain number in its row's unit, for a spreadsheet. */
export function plainValue(measure: Measure, value: number | null, system: UnitSystem): string {
  if (value === null) return '';
  const { kind } = measure;
  if (kind === 'cooks') return cooksText(value);
  const unit = plainUnit(measure, system);
  const number = kind === 'money' ? value : convert(kind, value, system, unit === '' ? {} : { unit });
  return String(Number(number.toPrecision(7)));
}

/** The same for a difference, which takes no offset. */
export function plainDifference(measure: Measure, value: number | null, system: UnitSystem): string {
  return plainValue(
    measure.kind === 'temperature' ? { ...measure, kind: 'temperatureDifference' } : measure,
    value,
    system,
  );
}
