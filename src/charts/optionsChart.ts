import { interpolate } from '../solve/interpolate.js';
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { shortfallOf } from '../study/estimate/shortfall.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format, type UnitSystem } from '../units/index.js';
import { timeAxis, twinAxes } from './axes.js';
import { bandAreas, type BandArea } from './bands.js';
import { baseOptions, lineOptions } from './base.js';
import { gaugeLabel } from '../words/labels.js';
import { markLines } from './markLines.js';
import { takeRoom } from './freeRoom.js';
import { optionStyle, pieces } from './optionCurves.js';
import { fitText, textWidth } from '../draw/textWidth.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER } from '../draw/theme.js';

/** A design among others. */
export interface ChartedOption {
  label: string;
  result: EstimateResult;
}

const LONG = 4 * 3600;
const LINE = FONT_SIZE.label + 4;
const FONT = { size: FONT_SIZE.label, weight: 500 } as const;
/** Of the plot, about, as a part of the picture's width, and what axes take of it at least [px]. */
const PLOT = 0.86;
const AXES = 125;
/** Most of the plot that the names may reach beyond the curves. */
const MOST_ROOM = 0.35;

/**
 * What the cook's thermometer reads while it warms up, a line an option, with the band in which eight of ten cases lie where that
 * was studied; a dot where the steel is soaked. Null when no option has curves.
 *
 * @param width of the picture [px]
 */
export function optionsChart(
  options: readonly ChartedOption[],
  width: number,
  units: UnitChoice = 'both',
): ChartConfiguration<'line'> | null {
  const system = systemOf(units);
  const drawn = options.filter(({ result }) => (result.warmUp?.series.time_s.length ?? 0) > 1);
  if (drawn.length === 0) return null;
  const last = Math.max(...drawn.map(({ result }) => result.warmUp!.series.time_s.at(-1)!));
  const unit = last > LONG ? 'h' : 'min';
  const minutes = (seconds: number) => convert('time', seconds, 'shop', { unit });
  const degrees = (kelvin: number) => convert('temperature', kelvin, system);
  const { fire, gauge } = drawn[0].result.design;
  const sameTarget = drawn.every(({ result }) => result.design.fire.target === fire.target);

  const end = minutes(last);
  const named = drawn.map(({ label, result }, i): NamedPoint => {
    const { soaked_s, series } = result.warmUp!;
    const time = soaked_s ?? series.time_s.at(-1)!;
    return {
      x: minutes(time),
      y: degrees(interpolate(series.time_s, series.thermometer_K, time)),
      text: `${fitText(label, 170, FONT)}: ${outcome(result, system)}`,
      colour: optionStyle(i).colour,
      dot: soaked_s !== null,
    };
  });
  // the name that would reach farthest beyond the curves sets how much paper they leave free
  const plot = Math.min(PLOT * width, width - AXES);
  const beyond = Math.max(...named.map(({ x, text }) => x / end + (textWidth(text, FONT) + 20) / plot));
  const room = Math.min(MOST_ROOM, Math.max(0.02, 1 - 1 / beyond));

  const bands = drawn.flatMap(({ result }, dataset): BandArea[] => {
    const curves = result.spread?.curves;
    if (!curves) return [];
    const { p10, p90 } = curves.thermometer_K;
    const { colour } = optionStyle(dataset);
    return [{ dataset, x: curves.time_s.map(minutes), low: p10.map(degrees), high: p90.map(degrees), colour }];
  });
  const kelvins = drawn.flatMap(({ result }) => [
    ...result.warmUp!.series.thermometer_K,
    result.design.fire.target,
    ...(result.spread?.curves?.thermometer_K.p90 ?? []),
  ]);
  const range = { low: Math.min(...kelvins), high: Math.max(...kelvins) };
  const temperature = twinAxes('Thermometer', 'temperature', range, { units });

  const datasets = drawn.map(({ label, result }, i): ChartDataset<'line', { x: number; y: number }[]> => {
    const { time_s, thermometer_K } = result.warmUp!.series;
    const style = optionStyle(i);
    return {
      label,
      data: pieces(time_s.map(minutes), thermometer_K.map(degrees)),
      cubicInterpolationMode: 'monotone',
      borderColor: style.colour,
      borderDash: style.dash,
      borderWidth: i === 0 ? 3 : 2.25,
      pointRadius: 0,
    };
  });
  const base = baseOptions(`What the ${gaugeLabel(gauge)} reads while it warms up`, '');
  const target = { axis: 'y' as const, value: degrees(fire.target), dash: [10, 4] };
  return {
    type: 'line',
    data: { datasets },
    plugins: [
      bandAreas(bands),
      namedPoints(named),
      ...(sameTarget ? [markLines([{ ...target, text: `target ${format('temperature', fire.target, system)}` }])] : []),
    ],
    options: lineOptions(base, { x: timeAxis(unit, end, room), y: temperature.main, ...temperature.beside }),
  };
}

/** What becomes of a warm-up, in a word or two. */
function outcome(result: EstimateResult, system: UnitSystem): string {
  const { design, warmUp } = result;
  const target = format('temperature', design.fire.target, system);
  switch (shortfallOf(result)?.code) {
    case undefined:
      return `soaked ${format('time', warmUp?.soaked_s ?? null)}`;
    case 'not-soaked':
      return 'never soaked';
    case 'not-followed':
      return 'not followed further';
    default:
      return `never reads ${target}`;
  }
}

/** A place on a curve with its name, in the units of the axes. */
interface NamedPoint {
  x: number;
  y: number;
  text: string;
  colour: string;
  /** drawn as a dot, too */
  dot: boolean;
}

/** Radius of a dot with the paper round it [px]. */
const DOT = 6;

/**
 * Dots on the curves, their names below them: the name of the dot farthest right stands highest, so that no line from a dot to its
 * name crosses another name.
 */
function namedPoints(points: readonly NamedPoint[]): Plugin {
  return {
    id: 'namedPoints',
    afterDatasetsDraw(chart) {
      const { ctx, scales, chartArea } = chart;
      const placed = points
        .map((point) => ({ ...point, px: scales.x.getPixelForValue(point.x), py: scales.y.getPixelForValue(point.y) }))
        .sort((a, b) => b.px - a.px);
      ctx.save();
      ctx.font = `${FONT.weight} ${FONT.size}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      ctx.textAlign = 'left';
      const deepest = Math.max(...placed.map(({ py }) => py));
      placed.forEach(({ px, py, text, colour, dot }, i) => {
        const y = Math.min(deepest + LINE * (i + 1.1), chartArea.bottom - LINE * (placed.length - i - 0.4));
        const width = ctx.measureText(text).width;
        const x = Math.min(px, chartArea.right - width - 8);
        takeRoom(chart, { left: x + 4, right: x + 8 + width, top: y - LINE / 2, bottom: y + LINE / 2 });
        takeRoom(chart, { left: px - DOT, right: px + DOT, top: py - DOT, bottom: py + DOT });
        ctx.strokeStyle = colour;
        ctx.lineWidth = 1.25;
        ctx.beginPath();
        ctx.moveTo(px, py);
        ctx.lineTo(px, y);
        ctx.lineTo(x + 4, y);
        ctx.stroke();
        ctx.fillStyle = PAPER;
        ctx.fillRect(x + 4, y - LINE / 2 + 1, width + 4, LINE - 2);
        ctx.fillStyle = INK;
        ctx.fillText(text, x + 6, y);
        if (!dot) return;
        for (const [radius, fill] of [
          [DOT, PAPER],
          [4.5, colour],
        ] as const) {
          ctx.fillStyle = fill;
          ctx.beginPath();
          ctx.arc(px, py, radius, 0, 2 * Math.PI);
          ctx.fill();
        }
      });
      ctx.restore();
    },
  };
}
