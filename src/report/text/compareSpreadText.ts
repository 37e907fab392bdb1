import { plainText } from '../../words/plainText.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { SureDifference } from '../../study/compare/compareSpread.js';
import { MISSING, type Telling } from '../../study/compare/told.js';
import type { UnitSystem } from '../../units/index.js';
import { compareRows, rowHead, tellingOfRow, type CompareRow } from '../compareRows.js';
import { wordsOf } from '../../words/quantityWords.js';
import { table } from './table.js';
import { paragraph } from './paragraphs.js';

const LONGEST_LABEL = 40;

/** How sure the differences are: a table for each option, and in words what is sure, what is none and what is open. */
export function compareSpreadText(comparison: Comparison, system: UnitSystem): string[] {
  const { spread, baseline } = comparison;
  if (!spread) return [];
  // a plate is what it is in every case
  const rows = compareRows(comparison).filter(({ measure }) => measure.group !== 'plate');
  const blocks = spread.options
    .filter(({ label }) => label !== baseline)
    .map(({ label, measures }) => {
      const told = rows.flatMap((row) => {
        const sure = measures.find(({ key }) => key === row.measure.key);
        return sure ? [{ row, sure }] : [];
      });
      return [
        paragraph(sentence(label, told, spread.cases, comparison)),
        table(
          ['', '8 of 10 differences', 'more in', 'less in', 'same in', 'not there in'],
          told.map(({ row, sure }) => {
            const telling = tellingOfRow(row, system, comparison.settings.currency);
            return [
              rowHead(row, telling),
              rangeText(sure, spread.cases, telling),
              ...[sure.more, sure.less, sure.same, sure.missing].map((count) => (count === 0 ? '-' : String(count))),
            ];
          }),
          { indent: '  ' },
        ),
      ].join('\n');
    });
  const head = `HOW SURE: ${spread.cases} cases, all options with the same fire, wood, wind and other unknowns in each (seed ${spread.seed})`;
  return [[head, ...blocks].join('\n\n')];
}

function rangeText(
  { difference: { p10, p90 }, same, missing }: SureDifference,
  cases: number,
  telling: Telling,
): string {
  if (p10 === null || p90 === null) return MISSING;
  return same === cases - missing ? 'same' : `${telling.signed(p10)} to ${telling.signed(p90)}`;
}

/** Measures that the words leave to the table: parts of others. */
const PARTS = new Set(['losses', 'outside']);

function sentence(
  label: string,
  told: { row: CompareRow; sure: SureDifference }[],
  cases: number,
  { baseline }: Comparison,
): string {
  const words = told.filter(({ row }) => !PARTS.has(row.measure.group));
  const names = (which: (sure: SureDifference) => boolean) =>
    words.filter(({ sure }) => which(sure)).map(({ row }) => wordsOf(row.measure, 'named'));
  const more = names((sure) => sure.more === cases);
  const less = names((sure) => sure.less === cases);
  const same = names((sure) => sure.same === cases);
  const never = names((sure) => sure.missing === cases);
  const open = words.filter(({ sure }) => ![sure.more, sure.less, sure.same, sure.missing].includes(cases));
  const clauses = [
    ...(never.length > 0 ? [`in no case there for both: ${never.join(', ')}`] : []),
    ...(more.length > 0 ? [`more, longer or hotter in every case: ${more.join(', ')}`] : []),
    ...(less.length > 0 ? [`less, shorter or cooler in every case: ${less.join(', ')}`] : []),
    ...(same.length > 0 ? [`the same in every case: ${same.join(', ')}`] : []),
    ...(open.length > 0
      ? [`open: ${open.map(({ row, sure }) => `${wordsOf(row.measure, 'named')} (${counts(sure)})`).join(', ')}`]
      : []),
  ];
  return `${plainText(label, LONGEST_LABEL)} against ${plainText(baseline, LONGEST_LABEL)}, ${cases} cases; ${clauses.join('; ')}.`;
}

function counts({ more, less, same, missing }: SureDifference): string {
  return [
    ...(more > 0 ? [`more in ${more}`] : []),
    ...(less > 0 ? [`less in ${less}`] : []),
    ...(same > 0 ? [`same in ${same}`] : []),
    ...(missing > 0 ? [`not there for both in ${missing}`] : []),
  ].join(', ');
}
