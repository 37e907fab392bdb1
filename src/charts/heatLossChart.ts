import { LOSSES } from '../study/quantities.js';
import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { convert, format } from '../units/index.js';
import { twinAxes } from './axes.js';
import { barLabels } from './barLabels.js';
import { barNames, baseOptions, bottomLegend } from './base.js';
import { HEAT_LOSS_LABELS, percentOf } from '../words/labels.js';
import { STATE_STYLES } from '../draw/theme.js';

/** Part of the longest bar that its label may reach beyond it. */
const LABEL_ROOM = 1.3;

/**
 * Where the heat goes, as bars: held at the target beside the full fire, BTU/h below and kW above. Null when neither
 * state exists.
 */
export function heatLossChart(result: EstimateResult, name: string): ChartConfiguration<'bar'> | null {
  const states = heatLossStates(result);
  if (states.length === 0) return null;
  const places = LOSSES.filter((place) => states.some(({ state }) => state.heatLoss_W[place] !== 0));
  const most = Math.max(...states.flatMap(({ state }) => places.map((place) => state.heatLoss_W[place])));
  const power = twinAxes('Heat loss', 'power', { low: 0, high: most * LABEL_ROOM }, ['bottom', 'top']);
  const base = baseOptions(
    `${name}: where the heat goes`,
    states.map(({ label, state }) => `${label}: ${format('power', state.heatLoss_W.total)}`).join('; '),
  );
  return {
    type: 'bar',
    data: {
      labels: places.map((place) => HEAT_LOSS_LABELS[place]),
      datasets: states.map(({ label, state, colour }) => ({
        label,
        data: places.map((place) => convert('power', state.heatLoss_W[place], 'shop')),
        backgroundColor: colour,
        barPercentage: 0.86,
        categoryPercentage: 0.8,
      })),
    },
    plugins: [
      barLabels(
        states.map(({ state }) =>
          places.map((place) => {
            const watts = state.heatLoss_W[place];
            return `${format('power', watts)} · ${percentOf(watts, state.heatLoss_W.total)}`;
          }),
        ),
      ),
    ],
    options: {
      ...base,
      indexAxis: 'y',
      scales: {
        x: power.shop,
        si: power.si,
        y: barNames(),
      },
      plugins: {
        ...base.plugins,
        legend: bottomLegend(),
      },
    } as ChartConfiguration<'bar'>['options'],
  };
}

function heatLossStates({ design, steady, assumed }: EstimateResult) {
  const states: { label: string; state: SteadyState; colour: string }[] = [];
  const held = `holding ${format('temperature', design.fire.target)}`;
  if (steady) states.push({ label: held, state: steady, colour: STATE_STYLES.held.colour });
  if (assumed) states.push({ label: 'full fire', state: assumed, colour: STATE_STYLES.assumed.colour });
  return states;
}
