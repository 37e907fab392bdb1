/** Charts made for a wide picture, fitted to the width that a screen has. */
import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult } from '../study/result.js';
import type { ChartId } from './protocol.js';

/** Below this width the places along the way of the gas don't fit side by side [px]. */
const NARROW = 900;
/** Below this width the axes give their titles up to the plot; the caption says what they show [px]. */
const PHONE = 480;
/** Height of a place of the heat-loss chart with its two bars, and of all that surrounds them [px]. */
const BARS = { place: 44, around: 150 };

/** Space beside a plot that axes and margins take, about [px]. */
export function besidePlot(width: number): number {
  return width < PHONE ? 95 : 150;
}

/** Height that a chart needs at a width [px]. */
export function chartHeight(chosen: ChartId, { steady, assumed }: EstimateResult, width: number): number {
  const usual = Math.round(Math.min(460, Math.max(320, width * 0.62)));
  if (chosen === 'draft') return width < NARROW ? 480 : usual;
  if (chosen !== 'loss') return usual;
  const { total, ...losses } = (steady ?? assumed)?.heatLoss_W ?? { total: 0 };
  const places = total === 0 ? 0 : Object.values(losses).filter((watts) => watts !== 0).length;
  return Math.max(usual, BARS.around + BARS.place * places);
}

interface Axis {
  title?: { display?: boolean };
  ticks?: object;
  afterTickToLabelConversion?: (scale: { ticks: { label?: string | string[] }[] }) => void;
}

/** Makes room on a narrow screen: names set upright, axis titles and wide margins left out. */
export function fitWidth({ options }: ChartConfiguration, chosen: ChartId, width: number): void {
  const scales = options?.scales as Record<string, Axis> | undefined;
  if (!options || !scales) return;
  if (chosen === 'draft' && width < NARROW) turnNames(scales.x);
  if (chosen === 'loss' || width >= PHONE) return;
  options.layout = { padding: { left: 0, right: 4, top: 8, bottom: 4 } };
  for (const axis of [scales.y, scales.si]) axis.title = { ...axis.title, display: false };
  if (chosen !== 'draft') scales.x.ticks = { ...scales.x.ticks, maxRotation: 0 };
}

function turnNames(axis: Axis): void {
  const named = axis.afterTickToLabelConversion;
  axis.ticks = { ...axis.ticks, minRotation: 90, maxRotation: 90 };
  axis.afterTickToLabelConversion = (scale) => {
    named?.(scale);
    for (const tick of scale.ticks) if (Array.isArray(tick.label)) tick.label = tick.label.join(' ');
  };
}

/** What the axes of a chart show, where they have no room to say it themselves. */
export function axisWords(chosen: ChartId, width: number): string {
  if (width >= PHONE || chosen === 'loss') return '';
  return chosen === 'draft' ? 'Left in H2O, right Pa.' : 'Left °F, right °C.';
}
