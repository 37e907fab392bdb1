import type { ChartConfiguration } from 'chart.js';
import type { Comparison } from '../study/compare/compare.js';
import { measuresOf } from '../study/compare/measures.js';
import { axis } from './axes.js';
import { baseOptions, bottomLegend } from './base.js';
import { wordsOf } from '../words/quantityWords.js';
import { plainText } from '../words/plainText.js';
import { COLOURS, FONT_SIZE, INK } from '../draw/theme.js';

const LONGEST_LABEL = 30;
/** Groups whose measures are parts of others, or follow from the geometry alone. */
const LEFT_OUT = new Set(['plate', 'losses', 'outside', 'steel']);
/** More rows than this can't be read. */
const MOST = 16;

/** In how many cases an option has more, as much, or less than the baseline; null without a spread study. */
export function certaintyChart(comparison: Comparison, option: number, name: string): ChartConfiguration<'bar'> | null {
  const { spread, baseline, options, settings } = comparison;
  if (!spread || spread.options[option].label === baseline) return null;
  const { label, measures: sure } = spread.options[option];
  const rows = measuresOf(options, settings)
    .filter(({ group }) => !LEFT_OUT.has(group))
    .flatMap((measure) => {
      const found = sure.find(({ key }) => key === measure.key);
      return found && found.missing < spread.cases ? [{ measure, found }] : [];
    })
    .slice(0, MOST);
  if (rows.length === 0) return null;
  const share = (count: number) => (100 * count) / spread.cases;
  const base = baseOptions(
    `${name}: how sure the differences are`,
    `${plainText(label, LONGEST_LABEL)} against ${plainText(baseline, LONGEST_LABEL)}; ${spread.cases} cases, both with the same unknowns in each`,
    bottomLegend(),
  );
  const bars = [
    { label: 'less', key: 'less', colour: COLOURS.blue },
    { label: 'no difference', key: 'same', colour: '#c3cad3' },
    { label: 'more', key: 'more', colour: COLOURS.vermilion },
  ] as const;
  return {
    type: 'bar',
    data: {
      labels: rows.map(({ measure }) => wordsOf(measure, 'named')),
      datasets: bars.map(({ label: text, key, colour }) => ({
        label: text,
        data: rows.map(({ found }) => share(found[key])),
        backgroundColor: colour,
        barPercentage: 0.8,
        categoryPercentage: 0.9,
        stack: 'cases',
      })),
    },
    options: {
      ...base,
      indexAxis: 'y',
      scales: {
        x: {
          ...axis('bottom', 'Share of the cases [%]', [0, 20, 40, 60, 80, 100], { min: 0, max: 100 }),
          stacked: true,
        },
        y: {
          stacked: true,
          grid: { display: false },
          ticks: { color: INK, font: { size: FONT_SIZE.label }, autoSkip: false },
        },
      },
    } as ChartConfiguration<'bar'>['options'],
  };
}
