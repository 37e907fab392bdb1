import type { ChartConfiguration, ChartOptions } from 'chart.js';
import { FAINT_INK, FONT_FAMILY, FONT_SIZE, INK } from '../draw/theme.js';

/**
 * What all charts share: title and a second line under it, no motion, fixed size; no legend where lines carry their
 * names.
 *
 * @param title what the chart shows, with the design's name
 * @param subtitle what it says, or under which conditions
 */
export function baseOptions(title: string, subtitle: string, legend: object = { display: false }): ChartOptions {
  return {
    animation: false,
    responsive: false,
    maintainAspectRatio: false,
    font: { family: FONT_FAMILY, size: FONT_SIZE.label, weight: 500 },
    color: INK,
    layout: { padding: { left: 16, right: 26, top: 14, bottom: 12 } },
    elements: { point: { radius: 0 }, line: { borderWidth: 2.5 } },
    plugins: {
      legend,
      tooltip: { enabled: false },
      title: {
        display: true,
        text: title,
        align: 'start',
        color: INK,
        font: { size: FONT_SIZE.title, weight: 600 },
        padding: { top: 0, bottom: 4 },
      },
      subtitle: {
        display: true,
        text: subtitle,
        align: 'start',
        color: FAINT_INK,
        font: { size: FONT_SIZE.text, weight: 500 },
        padding: { top: 0, bottom: 14 },
      },
    },
  };
}

/** A legend under the plot, for bars and for lines that meet at their ends. */
export function bottomLegend(box: { boxWidth: number; boxHeight: number } = { boxWidth: 18, boxHeight: 12 }) {
  const labels = { color: FAINT_INK, font: { size: FONT_SIZE.text }, ...box };
  return { display: true, position: 'bottom' as const, align: 'start' as const, labels };
}

/** The axis of names beside lying bars. */
export function barNames() {
  return { grid: { display: false }, ticks: { color: INK, font: { size: FONT_SIZE.text } } };
}

/** Options of a chart of lines whose points are given as x and y, on the axes named. */
export function lineOptions(
  base: ChartOptions,
  scales: Record<string, unknown>,
): ChartConfiguration<'line'>['options'] {
  return { ...base, parsing: false, scales } as ChartConfiguration<'line'>['options'];
}
