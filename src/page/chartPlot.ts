/** Reads a drawn chart's curves back, so that a hairline finds them where they were drawn. */
import type { Chart } from 'chart.js';
import { siIn, unitOf } from '../units/index.js';
import type { ChartId, Plot, PlotCurve } from './protocol.js';

/** Places along a curve are so far apart [px]. */
export const STEP = 2;

/** A line as the chart library has laid it out. */
interface Line {
  interpolate(at: { x: number }, along: 'x'): { y: number } | { y: number }[] | undefined;
}

/** Null for a chart of bars: its numbers stand beside them. */
export function plotOf(chart: Chart, chosen: ChartId): Plot | null {
  if (chosen === 'loss') return null;
  const { left, right, top, bottom } = chart.chartArea;
  const { x, y } = chart.scales;
  const kind = chosen === 'draft' ? 'pressure' : 'temperature';
  const unit = unitOf(kind, 'shop');
  const told = (height: number): [number, number] => [height, siIn(kind, y.getValueForPixel(height)!, unit)];
  const named = chosen === 'draft';
  const places = named ? chart.getDatasetMeta(0).data.length : Math.floor((right - left) / STEP) + 1;
  const curves = chart.data.datasets.map((dataset, i): PlotCurve => {
    const { data, dataset: line } = chart.getDatasetMeta(i);
    const hidden = !chart.isDatasetVisible(i);
    const at = (place: number): [number, number] | null => {
      if (hidden) return null;
      if (named) return data[place] ? told(data[place].y) : null;
      const across = left + place * STEP;
      if (data.length === 0 || across < data[0].x || across > data[data.length - 1].x) return null;
      const found = (line as unknown as Line).interpolate({ x: across }, 'x');
      const point = Array.isArray(found) ? found[found.length - 1] : found;
      return point && Number.isFinite(point.y) ? told(point.y) : null;
    };
    const {
      label = '',
      borderColor,
      borderDash,
    } = dataset as {
      label?: string;
      borderColor: string;
      borderDash?: number[];
    };
    const own = Array.from({ length: places }, (_, place) => at(place));
    return { label, colour: borderColor, dash: [...(borderDash ?? [])], hidden, at: own };
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
  return { left, right, top, bottom, across, kind, curves };
}
