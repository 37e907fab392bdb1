import { interpolate } from '../solve/interpolate.js';
import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { shortfallOf } from '../study/estimate/shortfall.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format, type UnitSystem } from '../units/index.js';
import { timeAxis, twinAxes } from './axes.js';
import { bandAreas, type BandArea } from './bands.js';
import { baseOptions, lineOptions } from './base.js';
import { gaugeLabel } from '../words/labels.js';
import { markLines } from './markLines.js';
import { namedPoints, NAME_FONT, type NamedPoint } from './namedPoints.js';
import { optionStyle, pieces } from './optionCurves.js';
import { fitText, textWidth } from '../draw/textWidth.js';

/** A design among others. */
interface ChartedOption {
  label: string;
  result: EstimateResult;
}

const LONG = 4 * 3600;
/** Of the plot, about, as a part of the picture's width, and what axes take of it at least [px]. */
const PLOT = 0.86;
const AXES = 125;
/** Most of the plot that a label takes before its outcome. */
const LABEL = 0.4;
/** Most of the plot that the names may reach beyond the curves. */
const MOST_ROOM = 0.35;

/**
 * What the cook's thermometer reads while it warms up, a line an option, with the band in which eight of ten cases lie
 * where that was studied; a dot where the steel is soaked. Null when no option has curves.
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
  const plot = Math.min(PLOT * width, width - AXES);
  const named = drawn.map(({ label, result }, i): NamedPoint => {
    const { soaked_s, series } = result.warmUp!;
    const time = soaked_s ?? series.time_s.at(-1)!;
    return {
      x: minutes(time),
      y: degrees(interpolate(series.time_s, series.thermometer_K, time)),
      text: `${fitText(label, Math.min(170, LABEL * plot), NAME_FONT)}: ${outcome(result, system)}`,
      style: optionStyle(i),
      dot: soaked_s !== null,
    };
  });
  // the name that would reach farthest beyond the curves sets how much paper they leave free
  const beyond = Math.max(...named.map(({ x, text }) => x / end + (textWidth(text, NAME_FONT) + 20) / plot));
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
  const dots = named.some(({ dot }) => dot) ? '; dots: soaked' : '';
  const band = bands.length > 0 ? '; band: 8 of 10 cases' : '';
  const base = baseOptions(
    `What the ${gaugeLabel(gauge)} reads while it warms up`,
    `what the ${gaugeLabel(gauge)} reads${dots}${band}`,
  );
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
