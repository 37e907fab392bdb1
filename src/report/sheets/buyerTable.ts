/** The table of the buyer's sheet: what a pit does, or what each option does and how it differs. */
import { gaugeLabel } from '../../words/labels.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { ComparedOption, Comparison } from '../../study/compare/compare.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { MISSING } from '../../study/compare/told.js';
import { format, type UnitSystem } from '../../units/index.js';
import { compareRows, isSame, tellingOfRow, type CompareRow } from '../compareRows.js';
import { headlineOf, headlineText, rangeText, wordsOf } from '../../words/quantityWords.js';
import { shortLabel } from './shortLabel.js';
import { shownOptions } from './shownOptions.js';
import type { TableData } from '../text/table.js';

/** What a buyer weighs up, in the order he asks. */
const ASKED = [
  'gauge_s',
  'soaked_s',
  'woodToSoaked_kg',
  'hold.wood_kg_per_s',
  'hold.fire_W',
  'hold.grate_K',
  'hold.endToEnd_K',
  'hold.hottestOutside_K',
  'swing.thermometer_K',
  'plate.push_m',
  'plate.halfGone_years',
  'steel_kg',
];
/** What he pays, where the design has prices. */
const COSTS = ['buildCost', 'cookCost', 'payback'];

/** What differs between the options as a table, and what doesn't in a sentence. */
export function optionsTable(
  comparison: Comparison,
  alone: boolean,
  system: UnitSystem,
): { table: TableData; same: string } {
  const shown = shownOptions(comparison);
  const several = shown.length > 1;
  const rows = compareRows(comparison);
  const together = rows.some(({ measure }) => measure.key === 'buildCost');
  const asked = [
    ...[...ASKED, 'lining_kg', ...(together ? [] : ['steelCost']), ...COSTS].flatMap((key) =>
      rows.filter(({ measure }) => measure.key === key),
    ),
    ...(several ? plateRows(rows) : []),
  ];
  const others = shown.slice(1).map((option) => comparison.options.indexOf(option));
  const differing = asked.filter((row) => !isSame(row, others, system));
  // where nothing differs the numbers themselves are what is left to show
  const sorted = differing.length > 0 ? differing : asked;
  const hidden = comparison.options.length - shown.length;
  const more = hidden > 0 ? `; ${hidden} more ${alone ? 'left out' : 'on the sheets behind'}` : '';
  const { design } = baselineOf(comparison).result;
  const target = format('temperature', design.fire.target, system);
  const { currency } = comparison.settings;
  const base = comparison.options.indexOf(shown[0]);
  const same = asked
    .filter((row) => !sorted.includes(row))
    .map((row) => `${words(row, design.gauge)} ${tellingOfRow(row, system, currency).quantity(row.cells[base].value)}`);
  const table: TableData = {
    caption: several
      ? `What each option does at ${target}, and how it differs from ${shortLabel(comparison.baseline, comparison)}${more}`
      : `What it does at ${target}`,
    head: ['', ...(several ? shown.map(({ label }) => shortLabel(label, comparison)) : ['shop units', 'metric'])],
    rows: sorted.map((row) => {
      if (!several) {
        return [
          words(row, design.gauge),
          ...(['shop', 'si'] as const).map((each) => middleText(row, baselineOf(comparison), each, currency)),
        ];
      }
      const telling = tellingOfRow(row, system, currency);
      return [
        [words(row, design.gauge), telling.unit].filter((text) => text !== '').join(', '),
        ...shown.map((option) => {
          const cell = row.cells[comparison.options.indexOf(option)];
          const value = telling.number(cell.value);
          const difference = option.label === comparison.baseline ? '' : telling.difference(cell);
          return difference === '' || difference === MISSING ? value : `${value}\n${difference}`;
        }),
      ];
    }),
  };
  return { table, same: same.length === 0 ? '' : `The same in all: ${same.join(', ')}.` };
}

/** Which plate each part and door has: what is of one plate in every option shares a row. A stack keeps its wall. */
function plateRows(rows: readonly CompareRow[]): CompareRow[] {
  const byPlates = new Map<string, CompareRow>();
  for (const row of rows) {
    if (row.measure.group !== 'plate' || row.measure.part === 'stack') continue;
    const plates = row.cells.map(({ value }) => value).join();
    const known = byPlates.get(plates)?.measure;
    byPlates.set(plates, known ? { ...row, measure: { ...known, at: `${known.at}, ${row.measure.at}` } } : row);
  }
  return [...byPlates.values()];
}

/** A number of one design: where its spread was studied the middle of it, and what 8 of 10 cases lie in. */
function middleText(row: CompareRow, { result }: ComparedOption, system: UnitSystem, currency?: string): string {
  const telling = tellingOfRow(row, system, currency);
  const number = result.spread?.numbers.find(({ key }) => key === row.measure.key);
  if (number?.p50 == null) return telling.quantity(row.cells[0].value);
  const text = headlineText(headlineOf(number.key, result.design), number.p50, system);
  return `${text} (${rangeText(number, result.design, system)})`;
}

function words({ measure }: CompareRow, gauge: EstimateResult['design']['gauge']): string {
  return measure.name === 'gauge_s' ? `${gaugeLabel(gauge)} first reads it, at least` : wordsOf(measure, 'buyer');
}
