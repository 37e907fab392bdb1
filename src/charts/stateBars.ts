import type { ChartConfiguration } from 'chart.js';
import { textWidth } from '../draw/textWidth.js';
import { FONT_SIZE, STATE_STYLES } from '../draw/theme.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format, type Kind, type UnitSystem } from '../units/index.js';
import { wrapLines } from '../words/plainText.js';
import { twinAxes } from './axes.js';
import { barLabels } from './barLabels.js';
import { barNames, baseOptions, bottomLegend } from './base.js';

interface ChartedState {
  label: string;
  state: SteadyState;
  colour: string;
  dash: readonly number[];
}

/** The states that a result has: held at the target, and under the full fire. */
export function chartedStates(
  { design, steady, assumed }: EstimateResult,
  system: UnitSystem = 'shop',
): ChartedState[] {
  const held = `holding ${format('temperature', design.fire.target, system)}`;
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
  /** a bar's length in SI for each label, and the text behind it */
  values: (state: SteadyState) => number[];
  texts: (state: SteadyState) => string[];
}

/** Below this width of a picture the names beside bars are broken into lines of so many letters. */
const NARROW = { width: 480, letters: 14 };
/** Beside a plot and the names of its bars, and between a bar, its text and the edge [px]. */
const AROUND = 48;
const BESIDE = 16;

/**
 * Lying bars, the two states beside each other, the units chosen below, SI above where both are.
 *
 * @param width of the picture, which decides how much of it the texts behind the bars take [px]
 */
export function stateBars(
  states: ChartedState[],
  bars: StateBars,
  width: number,
  units: UnitChoice = 'both',
): ChartConfiguration<'bar'> {
  const { title, subtitle, quantity, kind, values, texts } = bars;
  const labels = width < NARROW.width ? bars.labels.map((name) => wrapLines(name, NARROW.letters)) : bars.labels;
  const wide = (size: number, all: readonly string[]) =>
    Math.max(...all.map((text) => textWidth(text, { size, weight: 500 })));
  const behind =
    wide(
      FONT_SIZE.label,
      states.flatMap(({ state }) => texts(state)),
    ) + BESIDE;
  const share = Math.min(0.7, behind / (width - wide(FONT_SIZE.text, labels.flat()) - AROUND));
  const all = states.flatMap(({ state }) => values(state));
  const [low, high] = [Math.min(0, ...all), Math.max(0, ...all)];
  const range = { low, high: high + ((high - low) * share) / (1 - share) };
  const axes = twinAxes(quantity, kind, range, { sides: ['bottom', 'top'], units });
  const base = baseOptions(title, subtitle, bottomLegend());
  return {
    type: 'bar',
    data: {
      labels,
      datasets: states.map(({ label, state, colour }) => ({
        label,
        data: values(state).map((value) => convert(kind, value, systemOf(units))),
        backgroundColor: colour,
        barPercentage: 0.86,
        categoryPercentage: 0.8,
      })),
    },
    plugins: [barLabels(states.map(({ state }) => texts(state)))],
    options: {
      ...base,
      indexAxis: 'y',
      scales: { x: axes.main, ...axes.beside, y: barNames() },
    } as ChartConfiguration<'bar'>['options'],
  };
}
