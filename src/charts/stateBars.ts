import type { ChartConfiguration } from 'chart.js';
import { STATE_STYLES } from '../draw/theme.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { convert, format, type Kind } from '../units/index.js';
import { twinAxes } from './axes.js';
import { barLabels } from './barLabels.js';
import { barNames, baseOptions, bottomLegend } from './base.js';

export interface ChartedState {
  label: string;
  state: SteadyState;
  colour: string;
  dash: readonly number[];
}

/** The states that a result has: held at the target, and under the full fire. */
export function chartedStates({ design, steady, assumed }: EstimateResult): ChartedState[] {
  const held = `holding ${format('temperature', design.fire.target)}`;
  return [
    ...(steady ? [{ label: held, state: steady, ...STATE_STYLES.held }] : []),
    ...(assumed ? [{ label: 'full fire', state: assumed, ...STATE_STYLES.assumed }] : []),
  ];
}

/** What the bars of both states show. */
interface StateBars {
  title: string;
  subtitle: string;
  labels: string[];
  quantity: string;
  kind: Kind;
  range: { low: number; high: number };
  /** a bar's length in SI for each label, and the text behind it */
  values: (state: SteadyState) => number[];
  texts: (state: SteadyState) => string[];
}

/** Lying bars, the two states beside each other, shop units below and SI above. */
export function stateBars(states: ChartedState[], bars: StateBars): ChartConfiguration<'bar'> {
  const { title, subtitle, labels, quantity, kind, range, values, texts } = bars;
  const axes = twinAxes(quantity, kind, range, ['bottom', 'top']);
  const base = baseOptions(title, subtitle);
  return {
    type: 'bar',
    data: {
      labels,
      datasets: states.map(({ label, state, colour }) => ({
        label,
        data: values(state).map((value) => convert(kind, value, 'shop')),
        backgroundColor: colour,
        barPercentage: 0.86,
        categoryPercentage: 0.8,
      })),
    },
    plugins: [barLabels(states.map(({ state }) => texts(state)))],
    options: {
      ...base,
      indexAxis: 'y',
      scales: { x: axes.shop, si: axes.si, y: barNames() },
      plugins: { ...base.plugins, legend: bottomLegend() },
    } as ChartConfiguration<'bar'>['options'],
  };
}
