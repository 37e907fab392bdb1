import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult, OpeningState, SteadyState } from '../study/estimate/result.js';
import { SIZE } from '../draw/theme.js';
import { format } from '../units/index.js';
import { openingLabel } from '../words/labels.js';
import { chartedStates, stateBars } from './stateBars.js';

const MOST_BARS = 12;

/**
 * What flows through each opening, as bars: held at the target beside the full fire, lb/h below and kg/h above. To the
 * left of zero it flows against the opening's own direction. Null when neither state exists.
 */
export function ventChart(result: EstimateResult, name: string): ChartConfiguration<'bar'> | null {
  const states = chartedStates(result);
  if (states.length === 0) return null;
  const { shown, count } = mostTelling(states.flatMap(({ state }) => state.openings));
  const cut = shown.length < count ? `; the ${shown.length} of ${count} that pass most` : '';
  const flows = ({ openings }: SteadyState) =>
    shown.map((opening) => openings.find((each) => each.name === opening.name)?.flow_kg_per_s ?? 0);
  const bars = {
    title: `${name}: what flows through each opening`,
    subtitle: states.map(({ label }) => label).join('; ') + cut,
    labels: shown.map(openingLabel),
    quantity: 'Flow',
    kind: 'massFlow' as const,
    values: flows,
    texts: (state: SteadyState) => flows(state).map((flow) => format('massFlow', flow, 'shop', { digits: 2 })),
  };
  return stateBars(states, bars, SIZE.width);
}

/** The openings that a bar is drawn for, in the order of the gas; of many gaps those that pass most. */
function mostTelling(openings: OpeningState[]): { shown: OpeningState[]; count: number } {
  const largest = new Map<string, OpeningState>();
  for (const opening of openings) {
    const known = largest.get(opening.name);
    if (!known || size(opening) > size(known)) largest.set(opening.name, opening);
  }
  const all = [...largest.values()];
  const kept = [...all].sort((a, b) => size(b) - size(a)).slice(0, MOST_BARS);
  return { shown: all.filter((opening) => kept.includes(opening)), count: all.length };
}

function size({ flow_kg_per_s }: OpeningState): number {
  return Math.abs(flow_kg_per_s);
}
