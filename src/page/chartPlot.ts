/** Reads a drawn chart's curves back, so that a hairline finds them where they were drawn. */
import type { Chart } from 'chart.js';
import { curveHeights } from '../charts/drawnCurve.js';
import { siIn, unitOf, type UnitSystem } from '../units/index.js';
import type { ChartId, Plot, PlotCurve } from './protocol.js';

/** Places along a curve are so far apart [px]. */
export const STEP = 2;

/** Null for a chart of bars: its numbers stand beside them. */
export function plotOf(chart: Chart, chosen: ChartId, system: UnitSystem): Plot | null {
  if (chosen === 'loss') return null;
  const { left, right, top, bottom } = chart.chartArea;
  const { x, y } = chart.scales;
  const legend = chart.options.plugins?.legend?.display ? chart.legend : undefined;
  const kind = chosen === 'draft' ? 'pressure' : 'temperature';
  const unit = unitOf(kind, system);
  const told = (height: number): [number, number] => [height, siIn(kind, y.getValueForPixel(height)!, unit)];
  const named = chosen === 'draft';
  const places = named ? chart.getDatasetMeta(0).data.length : Math.floor((right - left) / STEP) + 1;
  const curves = chart.data.datasets.map((dataset, i): PlotCurve => {
    const hidden = !chart.isDatasetVisible(i);
    const heights = named
      ? chart.getDatasetMeta(i).data.map((point) => point.y)
      : [...curveHeights(chart, i, { left, step: STEP, count: places })];
    const {
      label = '',
      borderColor,
      borderDash,
    } = dataset as {
      label?: string;
      borderColor: string;
      borderDash?: number[];
    };
    const at = heights.map((height) => (hidden || !Number.isFinite(height) ? null : told(height)));
    return { label, colour: borderColor, dash: [...(borderDash ?? [])], hidden, at };
  });
  const time = chosen !== 'vents';
  const across = named
    ? {
        names: x.ticks.map(({ label }) => [label ?? ''].flat().join(' ')),
        x: chart.getDatasetMeta(0).data.map((point) => point.x),
      }
    : {
        from: x.getValueForPixel(left)!,
        to: x.getValueForPixel(right)!,
        what: time ? ('time' as const) : ('share' as const),
        unit: (x.options as { unit?: string }).unit ?? '%',
      };
  return { left, right, top, bottom, names: legend?.top ?? null, across, kind, curves };
}
