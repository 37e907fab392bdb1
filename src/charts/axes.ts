import type { ScaleOptionsByType } from 'chart.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, unitOf, type Kind } from '../units/index.js';
import { roundTicks } from '../draw/ticks.js';
import { FAINT_INK, FONT_SIZE, GRID, INK } from '../draw/theme.js';

type Side = 'left' | 'right' | 'top' | 'bottom';
/** @see timeAxis for `unit` */
type LinearAxis = DeepPartial<ScaleOptionsByType<'linear'>> & { unit?: string };
type DeepPartial<T> = T extends object ? { [K in keyof T]?: DeepPartial<T[K]> } : T;

/** Round numbers that lie within the two limits. */
function ticksWithin(low: number, high: number, count: number): number[] {
  const slack = (high - low) * 1e-9;
  return roundTicks(low, high, count).filter((value) => value >= low - slack && value <= high + slack);
}

/** A linear axis with a title, its limits and ticks fixed here and not by the renderer. */
export function axis(side: Side, title: string, ticks: number[], limits: { min: number; max: number }): LinearAxis {
  const main = side === 'left' || side === 'bottom';
  const decimals = Math.max(...ticks.map((tick) => (String(tick).split('.')[1] ?? '').length));
  return {
    type: 'linear',
    position: side,
    ...limits,
    title: { display: true, text: title, color: INK, font: { size: FONT_SIZE.text } },
    grid: { drawOnChartArea: main, color: GRID, tickColor: GRID },
    border: { color: GRID },
    ticks: {
      color: FAINT_INK,
      font: { size: FONT_SIZE.label },
      callback: (value: string | number) => Number(value).toLocaleString('en-US', { minimumFractionDigits: decimals }),
    },
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = ticks.map((value) => ({ value }));
    },
  } as LinearAxis;
}

/**
 * An axis of the units chosen, on which data are plotted: shop units on one side with SI on the other, or one of them
 * alone.
 *
 * @param range lowest and highest value in SI
 * @param sides where the first axis and the other stand
 * @returns `beside`: the other axis, where both are asked for, by its name among the scales
 */
export function twinAxes(
  quantity: string,
  kind: Kind,
  range: { low: number; high: number },
  { sides = ['left', 'right'], units = 'both' }: { sides?: readonly [Side, Side]; units?: UnitChoice } = {},
): { main: LinearAxis; beside: { si?: LinearAxis }; min: number; max: number } {
  const system = systemOf(units);
  const ticks = roundTicks(convert(kind, range.low, system), convert(kind, range.high, system), 7);
  const [min, max] = [ticks[0], ticks[ticks.length - 1]];
  const main = axis(sides[0], `${quantity} [${unitOf(kind, system)}]`, ticks, { min, max });
  if (units !== 'both') return { main, beside: {}, min, max };
  // shop to SI is linear for every kind, so the ends of the SI axis follow from two points
  const [a, b] = [convert(kind, range.low, 'shop'), convert(kind, range.high, 'shop')];
  const [c, d] = [convert(kind, range.low, 'si'), convert(kind, range.high, 'si')];
  const toSi = (shop: number) => c + ((shop - a) * (d - c)) / (b - a);
  const limits = { min: toSi(min), max: toSi(max) };
  return {
    main,
    beside: {
      si: axis(sides[1], `${quantity} [${unitOf(kind, 'si')}]`, ticksWithin(limits.min, limits.max, 7), limits),
    },
    min,
    max,
  };
}

/**
 * The axis of time, from 0 to the end of the curves and on over the paper that their names take.
 *
 * @param end of the curves, in `unit`
 * @param room share of the plot's width that is left free behind it
 */
export function timeAxis(unit: string, end: number, room: number): LinearAxis {
  const ticks = roundTicks(0, end, 8).filter((tick) => tick <= end * 1.001);
  return { ...axis('bottom', `Time [${unit}]`, ticks, { min: 0, max: end / (1 - room) }), unit };
}
