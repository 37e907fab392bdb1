import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { Cause, CurveName } from '../study/spread/uncertainty.js';
import { convert, format } from '../units/index.js';
import { axis, timeAxis, twinAxes } from './axes.js';
import { bandAreas } from './bands.js';
import { barLabels } from './barLabels.js';
import { baseOptions, lineOptions } from './base.js';
import { endLabels } from './endLabels.js';
import { headlineOf, headlineText, rangeOf, wordsOf } from '../words/quantityWords.js';
import { gaugeLabel } from '../words/labels.js';
import { markLines } from './markLines.js';
import { COLOURS, FONT_SIZE, INK, type LineStyle } from '../draw/theme.js';
import { unknownLabel } from '../words/unknownLabels.js';

const DRAWN: { curve: CurveName; text: string; style: LineStyle }[] = [
  { curve: 'gas_K', text: 'gas', style: { colour: COLOURS.vermilion, dash: [8, 4] } },
  { curve: 'thermometer_K', text: 'thermometer', style: { colour: COLOURS.blue, dash: [] } },
  { curve: 'steel_K', text: 'steel', style: { colour: COLOURS.green, dash: [3, 3] } },
];
/** A warm-up longer than this is told in hours [s]. */
const LONG = 4 * 3600;
/** Room at the right for the lines' names, as a share of the plot. */
const NAMES = 0.14;

/**
 * Warm-up of the gauge's station as bands that eight cases of ten lie in, with the middle case. Null without a study.
 */
function spreadBandChart({ design, spread }: EstimateResult, name: string): ChartConfiguration<'line'> | null {
  const curves = spread?.curves;
  if (!spread || !curves || curves.time_s.length < 2) return null;
  const end = curves.time_s[curves.time_s.length - 1];
  const unit = end > LONG ? 'h' : 'min';
  const times = curves.time_s.map((seconds) => convert('time', seconds, 'shop', { unit }));
  const last = times[times.length - 1];
  const shop = (kelvins: number[]) => kelvins.map((kelvin) => convert('temperature', kelvin, 'shop'));
  const kelvins = DRAWN.flatMap(({ curve }) => [...curves[curve].p10, ...curves[curve].p90]);
  const temperature = twinAxes('Temperature', 'temperature', {
    low: Math.min(...kelvins),
    high: Math.max(...kelvins, design.fire.target),
  });
  const base = baseOptions(
    `${name}: how sure the warm-up is`,
    `station of the ${gaugeLabel(design.gauge)}; lines: middle case; bands: 8 of 10 of ${spread.cases} cases`,
  );
  return {
    type: 'line',
    data: {
      datasets: DRAWN.map(({ curve, text, style }): ChartDataset<'line', { x: number; y: number }[]> => ({
        label: text,
        data: shop(curves[curve].p50).map((y, i) => ({ x: times[i], y })),
        borderColor: style.colour,
        borderDash: style.dash,
        borderWidth: 2.5,
        pointRadius: 0,
      })),
    },
    plugins: [
      bandAreas(
        DRAWN.map(({ curve, style }, dataset) => ({
          dataset,
          x: times,
          low: shop(curves[curve].p10),
          high: shop(curves[curve].p90),
          colour: style.colour,
        })),
      ),
      endLabels(DRAWN.map(({ text, style }, dataset) => ({ dataset, text, colour: style.colour }))),
      markLines([
        {
          axis: 'y',
          value: convert('temperature', design.fire.target, 'shop'),
          text: `target ${format('temperature', design.fire.target)}`,
          dash: [10, 4],
        },
      ]),
    ],
    options: lineOptions(base, { x: timeAxis(unit, last, NAMES), y: temperature.main, ...temperature.beside }),
  };
}

/** Causes drawn at most, and the least share worth a bar. */
const MOST = 8;
const LEAST = 0.005;

/** Which unknowns move a headline number, the weightiest on top. Null where too few cases tell. */
function causesChart({ design, spread }: EstimateResult, name: string, key: string): ChartConfiguration<'bar'> | null {
  const number = spread?.numbers.find((each) => each.key === key);
  if (!spread || !number || number.causes.length === 0) return null;
  const quantity = headlineOf(key, design);
  const between = (low: number | null, high: number | null) =>
    rangeOf(headlineText(quantity, low, 'shop'), headlineText(quantity, high, 'shop'));
  return rankedBars(
    number.causes,
    {
      title: `${name}: what makes it uncertain: ${wordsOf(quantity, 'alone')}`,
      subtitle: `8 of 10 of ${spread.cases} cases: ${between(number.p10, number.p90)}; behind each bar: from the lowest to the highest fifth of that unknown`,
    },
    ({ atLow, atHigh }) => between(atLow, atHigh),
  );
}

/** Bars of shares, the weightiest on top, each with its share and a text behind it. */
function rankedBars(
  causes: Cause[],
  texts: { title: string; subtitle: string },
  behind: (cause: Cause) => string,
): ChartConfiguration<'bar'> {
  const drawn = causes.filter(({ share }) => share >= LEAST).slice(0, MOST);
  const base = baseOptions(texts.title, texts.subtitle);
  return {
    type: 'bar',
    data: {
      labels: drawn.map(({ path }) => unknownLabel(path)),
      datasets: [
        {
          label: 'share of the spread',
          data: drawn.map(({ share }) => 100 * share),
          backgroundColor: COLOURS.blue,
          barPercentage: 0.8,
          categoryPercentage: 0.85,
        },
      ],
    },
    plugins: [barLabels([drawn.map((cause) => `${Math.round(100 * cause.share)} % · ${behind(cause)}`)])],
    options: {
      ...base,
      indexAxis: 'y',
      scales: {
        x: axis('bottom', 'Share of the spread [%]', [0, 20, 40, 60, 80, 100], { min: 0, max: 140 }),
        y: { grid: { display: false }, ticks: { color: INK, font: { size: FONT_SIZE.text } } },
      },
    } as ChartConfiguration<'bar'>['options'],
  };
}

/** The charts of a spread study; none without one. */
export function spreadCharts(result: EstimateResult, name: string): [file: string, config: unknown][] {
  if (!result.spread) return [];
  return [
    ['spread-warm-up', spreadBandChart(result, name)],
    ['spread-gauge-time', causesChart(result, name, 'gauge_s')],
    ['spread-soaked-time', causesChart(result, name, 'soaked_s')],
    ['spread-wood', causesChart(result, name, 'hold.wood_kg_per_s')],
    ['spread-end-to-end', causesChart(result, name, 'hold.endToEnd_K')],
  ];
}
