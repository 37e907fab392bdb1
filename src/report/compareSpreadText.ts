import { plainText, wrap } from '../charts/plainText.js';
import type { Comparison } from '../study/compare.js';
import type { SureDifference } from '../study/compareSpread.js';
import type { UnitSystem } from '../units.js';
import { compareRows, differenceText, rowHead, type CompareRow } from './compareRows.js';
import { table } from './table.js';

const WIDTH = 98;
const LONGEST_LABEL = 40;

/** How sure the differences are: a table for each option, and in words what is sure, what is none and what is open. */
export function compareSpreadText(comparison: Comparison, system: UnitSystem): string[] {
  const { spread, baseline } = comparison;
  if (!spread) return [];
  const rows = compareRows(comparison);
  const blocks = spread.options
    .filter(({ label }) => label !== baseline)
    .map(({ label, measures }) => {
      const told = rows.flatMap((row) => {
        const sure = measures.find(({ key }) => key === row.measure.key);
        return sure && sure.missing < spread.cases ? [{ row, sure }] : [];
      });
      return [
        wrap(sentence(label, told, spread.cases, comparison), WIDTH),
        table(
          ['', '8 of 10 differences', 'more in', 'less in', 'same in'],
          told.map(({ row, sure }) => [
            rowHead(row, system, comparison.settings.currency),
            sure.same + sure.missing === spread.cases ? 'same' : rangeText(row, sure, system),
            ...[sure.more, sure.less, sure.same].map((count) => (count === 0 ? '-' : String(count))),
          ]),
          { indent: '  ' },
        ),
      ].join('\n');
    });
  const head = `HOW SURE: ${spread.cases} cases, all options with the same fire, wood, wind and other unknowns in each (seed ${spread.seed})`;
  return [[head, ...blocks].join('\n\n')];
}

function rangeText(row: CompareRow, { difference }: SureDifference, system: UnitSystem): string {
  const text = (value: number | null) =>
    differenceText(
      row.measure,
      { key: row.measure.key, baseline: 0, value: 0, difference: value, share: null, none: value === 0 },
      system,
    );
  return `${text(difference.p10)} to ${text(difference.p90)}`;
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
    words.filter(({ sure }) => which(sure)).map(({ row }) => nameOf(row));
  const all = ({ missing }: SureDifference) => cases - missing;
  const more = names((sure) => sure.more === all(sure));
  const less = names((sure) => sure.less === all(sure));
  const same = names((sure) => sure.same === all(sure));
  const open = words.filter(({ sure }) => ![sure.more, sure.less, sure.same].includes(all(sure)));
  const clauses = [
    ...(more.length > 0 ? [`more, longer or hotter in every case: ${more.join(', ')}`] : []),
    ...(less.length > 0 ? [`less, shorter or cooler in every case: ${less.join(', ')}`] : []),
    ...(same.length > 0 ? [`the same in every case: ${same.join(', ')}`] : []),
    ...(open.length > 0 ? [`open: ${open.map(({ row, sure }) => `${nameOf(row)} (${counts(sure)})`).join(', ')}`] : []),
  ];
  return `${plainText(label, LONGEST_LABEL)} against ${plainText(baseline, LONGEST_LABEL)}, ${cases} cases; ${clauses.join('; ')}.`;
}

function nameOf({ measure, words }: CompareRow): string {
  return measure.group === 'temperatures' && measure.key.startsWith('hold.thermometer')
    ? `thermometer, ${words}`
    : words;
}

function counts({ more, less, same }: SureDifference): string {
  return [
    ...(more > 0 ? [`more in ${more}`] : []),
    ...(less > 0 ? [`less in ${less}`] : []),
    ...(same > 0 ? [`same in ${same}`] : []),
  ].join(', ');
}
