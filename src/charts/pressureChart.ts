import { held } from '../study/quantities.js';
import { wordsOf } from '../words/quantityWords.js';
import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format } from '../units/index.js';
import { twinAxes } from './axes.js';
import { baseOptions, bottomLegend } from './base.js';
import { chartedStates } from './stateBars.js';
import { stationLabel } from '../words/labels.js';
import { wrapLines } from '../words/plainText.js';
import { markLines, type MarkLine } from './markLines.js';
import { FAINT_INK, FONT_SIZE, INK, SIZE } from '../draw/theme.js';

/**
 * Pressure against outdoors at the same height, along the way of the gas from intake to stack top: below zero a gap
 * draws air in, above zero it leaks smoke. Inches of water on the left, Pa on the right. Null when neither state
 * exists.
 *
 * @param width of the picture [px]
 */
export function pressureChart(
  result: EstimateResult,
  name: string,
  width: number = SIZE.width,
  units: UnitChoice = 'both',
): ChartConfiguration<'line'> | null {
  const system = systemOf(units);
  const states = chartedStates(result, system);
  if (states.length === 0) return null;

  const path = states[0].state.pressurePath;
  const pascals = states.flatMap(({ state }) => state.pressurePath.map(({ gauge_Pa }) => gauge_Pa));
  const range = { low: Math.min(0, ...pascals), high: Math.max(0, ...pascals) };
  const pressure = twinAxes('Pressure against outdoors', 'pressure', range, { units });
  const base = baseOptions(
    `${name}: draft along the way of the gas`,
    states
      .map(
        ({ label, state }) =>
          `${label}: ${wordsOf(held('stackBase_Pa'), 'row')} ${format('pressure', state.draft.stackBase_Pa, system, { digits: 2 })}`,
      )
      .join('; '),
    bottomLegend({ boxWidth: 46, boxHeight: 0 }),
  );
  return {
    type: 'line',
    data: {
      datasets: states.map(({ label, state, colour, dash }): ChartDataset<'line', { x: number; y: number }[]> => ({
        label,
        data: state.pressurePath.map(({ gauge_Pa }, i) => ({ x: i, y: convert('pressure', gauge_Pa, system) })),
        borderColor: colour,
        backgroundColor: colour,
        borderDash: [...dash],
        borderWidth: 2.5,
        pointRadius: 4,
      })),
    },
    plugins: [markLines(zeroLine(pressure.max, width >= NARROW))],
    options: {
      ...base,
      parsing: false,
      scales: {
        x: {
          type: 'linear',
          min: -0.3,
          max: path.length - 0.7,
          title: { display: true, text: 'Place along the way of the gas', color: INK, font: { size: FONT_SIZE.text } },
          grid: { display: false },
          ticks: { color: FAINT_INK, font: { size: FONT_SIZE.label }, maxRotation: 0, autoSkip: false },
          afterBuildTicks: (scale: { ticks: { value: number; label?: string | string[] }[] }) => {
            scale.ticks = path.map((_, value) => ({ value }));
          },
          afterTickToLabelConversion: (scale: { ticks: { value: number; label?: string | string[] }[] }) => {
            for (const tick of scale.ticks)
              tick.label = wrapLines(stationLabel(path[tick.value].where), path.length > 11 ? 8 : 10);
          },
        },
        y: pressure.main,
        ...pressure.beside,
      },
    } as ChartConfiguration<'line'>['options'],
  };
}

/** Below this width the words at the zero line don't fit: who shows the chart says them beside it [px]. */
const NARROW = 480;

function zeroLine(highest: number, told: boolean): MarkLine[] {
  const line = { axis: 'y' as const, value: 0, dash: [] };
  return [
    { ...line, text: told ? 'below zero gaps draw air in' : '', side: 'below' as const },
    ...(highest > 0 && told ? [{ ...line, text: 'above zero gaps leak smoke', side: 'above' as const }] : []),
  ];
}
