import type { Comparison } from '../study/compare/compare.js';
import type { UnitSystem } from '../units/index.js';
import { GROUP_WORDS, wordsOf } from '../words/quantityWords.js';
import { compareRows, plainDifference, plainUnit, plainValue } from './compareRows.js';
import { csvOf } from './csv.js';
import { inertCell } from './curveCells.js';

/** The table of a comparison as CSV (RFC 4180): a row a quantity; value, difference and percent of every option. */
export function compareCsv(comparison: Comparison, system: UnitSystem): string {
  const { options, baseline, settings } = comparison;
  const head = [
    'group',
    'quantity',
    'unit',
    ...options.map(({ label }) => label),
    ...options
      .filter(({ label }) => label !== baseline)
      .flatMap(({ label }) => [`${label}: difference`, `${label}: percent`, `${label}: told as none`]),
  ];
  const rows = compareRows(comparison).map(({ measure, cells }) => [
    GROUP_WORDS[measure.group],
    wordsOf(measure, 'compared'),
    ascii(plainUnit(measure, system, settings.currency)),
    ...cells.map(({ value }) => plainValue(measure, value, system)),
    ...cells
      .filter((_, i) => options[i].label !== baseline)
      .flatMap((cell) => [
        plainDifference(measure, cell.difference, system),
        cell.share === null ? '' : String(Number((100 * cell.share).toPrecision(6))),
        cell.none ? 'yes' : '',
      ]),
  ]);
  return csvOf([head.map(inertCell), ...rows.map((row) => row.map((cell, i) => (i < 3 ? inertCell(cell) : cell)))]);
}

/** Units in letters that every spreadsheet reads. */
function ascii(unit: string): string {
  return unit.replace('°', 'deg').replace('²', '2').replace('³', '3');
}
