import { LOSSES } from '../study/quantities.js';
import type { ChartConfiguration } from 'chart.js';
import type { ComparedOption } from '../study/compare/compare.js';
import { convert, format } from '../units/index.js';
import { twinAxes } from './axes.js';
import { barLabels } from './barLabels.js';
import { barNames, baseOptions, bottomLegend } from './base.js';
import { HEAT_LOSS_LABELS } from '../words/labels.js';
import { plainText } from '../words/plainText.js';
import { COLOURS, PAPER } from '../draw/theme.js';

const HUES: Record<(typeof LOSSES)[number], string> = {
  firebox: COLOURS.vermilion,
  chamber: COLOURS.blue,
  upright: COLOURS.sky,
  stackWall: COLOURS.purple,
  stackGas: COLOURS.orange,
  leaks: COLOURS.green,
};

/** Part of the longest bar that its label may reach beyond it. */
const LABEL_ROOM = 1.16;
const LONGEST_LABEL = 30;

/**
 * Where the heat goes in each option that can hold the target: one bar an option, its parts end to end, BTU/h below and
 * kW above. Null when no option can.
 */
export function stackedLossChart(options: ComparedOption[], title: string): ChartConfiguration<'bar'> | null {
  const held = options.flatMap(({ label, result }) =>
    result.steady ? [{ label, loss: result.steady.heatLoss_W }] : [],
  );
  if (held.length === 0) return null;
  const places = LOSSES.filter((place) => held.some(({ loss }) => loss[place] > 0));
  const most = Math.max(...held.map(({ loss }) => loss.total));
  const power = twinAxes('Heat loss', 'power', { low: 0, high: most * LABEL_ROOM }, { sides: ['bottom', 'top'] });
  const base = baseOptions(
    title,
    'each bar is the fire that holds the target, by what becomes of its heat',
    bottomLegend(),
  );
  const totals = held.map(({ loss }) => format('power', loss.total));
  return {
    type: 'bar',
    data: {
      labels: held.map(({ label }) => plainText(label, LONGEST_LABEL)),
      datasets: places.map((place) => ({
        label: HEAT_LOSS_LABELS[place],
        data: held.map(({ loss }) => convert('power', Math.max(0, loss[place]), 'shop')),
        backgroundColor: HUES[place],
        borderColor: PAPER,
        borderWidth: { left: 0, right: 1.5, top: 0, bottom: 0 },
        stack: 'all',
        barPercentage: 0.8,
      })),
    },
    plugins: [barLabels(places.map((_, i) => (i === places.length - 1 ? totals : [])))],
    options: {
      ...base,
      indexAxis: 'y',
      scales: {
        x: { ...power.main, stacked: true },
        ...power.beside,
        y: { stacked: true, ...barNames() },
      },
    } as ChartConfiguration<'bar'>['options'],
  };
}
