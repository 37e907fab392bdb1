import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult, OpeningState, SteadyState } from '../study/estimate/result.js';
import { convert, format } from '../units/index.js';
import { twinAxes } from './axes.js';
import { barLabels } from './barLabels.js';
import { barNames, baseOptions, bottomLegend } from './base.js';
import { openingLabel } from '../words/labels.js';
import { STATE_STYLES } from '../draw/theme.js';

/** Room for labels beyond the longest bar, as a part of it. */
const LABEL_ROOM = 1.25;
const MOST_BARS = 14;

/**
 * What flows through each opening, as bars: held at the target beside the full fire, lb/h below and kg/h above. To the left
 * of zero it flows against the opening's own direction. Null when neither state exists.
 */
export function ventChart(result: EstimateResult, name: string): ChartConfiguration<'bar'> | null {
  const { design, steady, assumed } = result;
  const held = `holding ${format('temperature', design.fire.target)}`;
  const states: { label: string; state: SteadyState; colour: string }[] = [
    ...(steady ? [{ label: held, state: steady, colour: STATE_STYLES.held.colour }] : []),
    ...(assumed ? [{ label: 'full fire', state: assumed, colour: STATE_STYLES.assumed.colour }] : []),
  ];
  if (states.length === 0) return null;
  const shown = mostTelling(states.flatMap(({ state }) => state.openings));
  const flow = (state: SteadyState, { name }: OpeningState) =>
    state.openings.find((each) => each.name === name)?.flow_kg_per_s ?? 0;
  const flows = states.flatMap(({ state }) => shown.map((opening) => flow(state, opening)));
  const [low, high] = [Math.min(0, ...flows) * 1.4, Math.max(0, ...flows) * LABEL_ROOM];
  const mass = twinAxes('Flow', 'massFlow', { low, high }, ['bottom', 'top']);
  const base = baseOptions(`${name}: what flows through each opening`, states.map(({ label }) => label).join('; '));
  return {
    type: 'bar',
    data: {
      labels: shown.map(openingLabel),
      datasets: states.map(({ label, state, colour }) => ({
        label,
        data: shown.map((opening) => convert('massFlow', flow(state, opening), 'shop')),
        backgroundColor: colour,
        barPercentage: 0.86,
        categoryPercentage: 0.8,
      })),
    },
    plugins: [
      barLabels(
        states.map(({ state }) =>
          shown.map((opening) => format('massFlow', flow(state, opening), 'shop', { digits: 2 })),
        ),
      ),
    ],
    options: {
      ...base,
      indexAxis: 'y',
      scales: {
        x: mass.shop,
        si: mass.si,
        y: barNames(),
      },
      plugins: {
        ...base.plugins,
        legend: bottomLegend(),
      },
    } as ChartConfiguration<'bar'>['options'],
  };
}

/** The openings that a bar is drawn for, in the order of the gas; of many gaps those that pass most. */
function mostTelling(openings: OpeningState[]): OpeningState[] {
  const largest = new Map<string, OpeningState>();
  for (const opening of openings) {
    const known = largest.get(opening.name);
    if (!known || size(opening) > size(known)) largest.set(opening.name, opening);
  }
  const kept = [...largest.values()].sort((a, b) => size(b) - size(a)).slice(0, MOST_BARS);
  return [...largest.values()].filter((opening) => kept.includes(opening));
}

function size({ flow_kg_per_s }: OpeningState): number {
  return Math.abs(flow_kg_per_s);
}
