/** Charts made for a wide picture, fitted to the width that a screen has. */
import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitChoice } from '../units/choice.js';
import { unitOf } from '../units/index.js';
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

/** Names of curves that have no room at their ends stand under them [px]. */
const LEGEND = 80;

function hasLegend(chosen: ChartId): boolean {
  return chosen === 'thermometer' || chosen === 'steel' || chosen === 'gas';
}

/** Height that a chart needs at a width [px]. */
export function chartHeight(chosen: ChartId, { steady, assumed }: EstimateResult, width: number): number {
  const usual = Math.round(Math.min(460, Math.max(320, width * 0.62)));
  if (chosen === 'draft') return width < NARROW ? 480 : usual;
  if (width < PHONE && hasLegend(chosen)) return usual + LEGEND;
  if (chosen !== 'loss') return usual;
  const { total, ...losses } = (steady ?? assumed)?.heatLoss_W ?? { total: 0 };
  const places = total === 0 ? 0 : Object.values(losses).filter((watts) => watts !== 0).length;
  return Math.max(usual, BARS.around + BARS.place * places);
}

/** Ticks along the bottom that fit a phone: minutes, and large numbers. */
const PHONE_TICKS = { short: 6, long: 3 };

interface Axis {
  title?: { display?: boolean };
  ticks?: object;
  afterBuildTicks?: (scale: { ticks: { value: number }[] }) => void;
  afterTickToLabelConversion?: (scale: { ticks: { label?: string | string[] }[] }) => void;
}

/** Makes room on a narrow screen: names set upright, fewer ticks, axis titles and wide margins left out. */
export function fitWidth({ options }: ChartConfiguration, chosen: ChartId, width: number): void {
  const scales = options?.scales as (Record<'x' | 'y', Axis> & { si?: Axis }) | undefined;
  if (!options || !scales) return;
  if (chosen === 'draft' && width < NARROW) turnNames(scales.x);
  if (width >= PHONE) return;
  options.layout = { padding: { left: 0, right: 4, top: 8, bottom: 4 } };
  if (chosen === 'loss') {
    for (const axis of [scales.x, scales.si]) if (axis) thinTicks(axis, PHONE_TICKS.long);
    return;
  }
  for (const axis of [scales.y, scales.si]) if (axis) axis.title = { ...axis.title, display: false };
  if (chosen !== 'draft') thinTicks(scales.x, PHONE_TICKS.short);
}

/** Every second tick, as long as there are more than fit. */
function thinTicks(axis: Axis, most: number): void {
  const build = axis.afterBuildTicks;
  axis.ticks = { ...axis.ticks, maxRotation: 0 };
  axis.afterBuildTicks = (scale) => {
    build?.(scale);
    while (scale.ticks.length > most) scale.ticks = scale.ticks.filter((_, i) => i % 2 === 0);
  };
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
export function axisWords(chosen: ChartId, width: number, units: UnitChoice): string {
  if (width >= PHONE || chosen === 'loss') return '';
  const kind = chosen === 'draft' ? 'pressure' : 'temperature';
  const [shop, si] = (['shop', 'si'] as const).map((system) => unitOf(kind, system));
  const shown = units === 'both' ? `Left ${shop}, right ${si}` : `In ${units === 'si' ? si : shop}`;
  return chosen === 'draft' ? `${shown}; below zero gaps draw air in, above it they leak smoke.` : `${shown}.`;
}
