import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { LOSSES, lostAt } from '../study/quantities.js';
import { SIZE } from '../draw/theme.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { format } from '../units/index.js';
import { HEAT_LOSS_LABELS, percentOf } from '../words/labels.js';
import { chartedStates, stateBars } from './stateBars.js';

/**
 * Where the heat goes, as bars: held at the target beside the full fire, BTU/h below and kW above. Null when neither
 * state exists.
 */
export function heatLossChart(
  result: EstimateResult,
  name: string,
  width: number = SIZE.width,
  units: UnitChoice = 'both',
): ChartConfiguration<'bar'> | null {
  const system = systemOf(units);
  const states = chartedStates(result, system);
  if (states.length === 0) return null;
  const places = LOSSES.filter((place) => states.some(({ state }) => lostAt(state.heatLoss_W, place) !== 0));
  const values = ({ heatLoss_W }: SteadyState) => places.map((place) => lostAt(heatLoss_W, place));
  const bars = {
    title: `${name}: where the heat goes`,
    subtitle: states
      .map(({ label, state }) => `${label}: ${format('power', state.heatLoss_W.total, system)}`)
      .join('; '),
    labels: places.map((place) => HEAT_LOSS_LABELS[place]),
    quantity: 'Heat loss',
    kind: 'power' as const,
    values,
    texts: (state: SteadyState) =>
      values(state).map((watts) => `${format('power', watts, system)} · ${percentOf(watts, state.heatLoss_W.total)}`),
  };
  return stateBars(states, bars, width, units);
}
