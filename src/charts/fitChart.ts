import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { FitResult, FittedChannel, FittedCook } from '../study/fit/fitResult.js';
import { convert, format } from '../units.js';
import { timeAxis, twinAxes } from './axes.js';
import { bandAreas } from './bands.js';
import { baseOptions } from './base.js';
import { endLabels } from './endLabels.js';
import type { NamedChart } from './estimateCharts.js';
import { markLines, type MarkLine } from './markLines.js';
import { plainText } from './plainText.js';
import { COLOURS, FAINT_INK } from './theme.js';

/** Dots and points of a line at most: more can't be told apart. */
const MOST_DOTS = 400;
/** Room at the right for the lines' names, as a share of the plot. */
const NAMES = 0.16;
/** A cook longer than this is told in hours [s]. */
const LONG = 4 * 3600;
const LONGEST_NAME = 36;

/** Measured against computed, a chart a probe: as the design had it, and fitted, with the part that was held back marked. */
export function fitCharts({ design, cooks }: FitResult): NamedChart[] {
  const name = plainText(design.name, LONGEST_NAME);
  let count = 0;
  return cooks.flatMap((cook) =>
    cook.channels.map((channel) => ({
      file: `fit-${++count}-${slug(channel)}`,
      config: probeChart(name, cook, channel) as ChartConfiguration,
    })),
  );
}

function slug({ station, measured }: FittedChannel): string {
  const words = station.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return measured === 'thermometer' ? words : `${words}-${measured}`;
}

function probeChart(name: string, cook: FittedCook, channel: FittedChannel): ChartConfiguration<'line'> {
  const { header, fitted, heldBack, curves } = channel;
  const unit = cook.length_s > LONG ? 'h' : 'min';
  const inUnit = (seconds: number) => convert('time', seconds, 'shop', { unit });
  const shop = (kelvin: number) => convert('temperature', kelvin, 'shop');
  const every = Math.max(1, Math.ceil(curves.time_s.length / MOST_DOTS));
  const at = curves.time_s.map((_, i) => i).filter((i) => i % every === 0);
  const times = at.map((i) => inUnit(curves.time_s[i]));
  const line = (values: number[]) => at.map((i, k) => ({ x: times[k], y: shop(values[i]) }));
  const low = at.map((i) => curves.after_K[i] - curves.band_K[i]);
  const high = at.map((i) => curves.after_K[i] + curves.band_K[i]);
  const seen = [...at.flatMap((i) => [curves.measured_K[i], curves.before_K[i]]), ...low, ...high];
  const temperature = twinAxes('Temperature', 'temperature', { low: Math.min(...seen), high: Math.max(...seen) });
  const error = (kelvin: number | null) => format('temperatureDifference', kelvin, 'shop', { digits: 2 });
  const judged = heldBack.after === null ? fitted : heldBack;
  const base = baseOptions(
    `${name}: ${plainText(header, LONGEST_NAME)} in ${plainText(cook.name, LONGEST_NAME)}`,
    `off by ${error(judged.before)} with the design's own estimates, ${error(judged.after)} fitted, ` +
      `${heldBack.after === null ? 'where it was fitted' : 'on the part that was not fitted'}; band: 9 of 10 readings`,
  );
  const datasets: ChartDataset<'line', { x: number; y: number }[]>[] = [
    {
      label: 'measured',
      data: line(curves.measured_K),
      showLine: false,
      pointRadius: 1.6,
      pointBackgroundColor: FAINT_INK,
      pointBorderWidth: 0,
      order: 3,
    },
    {
      label: 'before',
      data: line(curves.before_K),
      borderColor: COLOURS.vermilion,
      borderDash: [8, 4],
      borderWidth: 2,
      pointRadius: 0,
      order: 2,
    },
    {
      label: 'fitted',
      data: line(curves.after_K),
      borderColor: COLOURS.blue,
      borderWidth: 2.5,
      pointRadius: 0,
      order: 1,
    },
  ];
  return {
    type: 'line',
    data: { datasets },
    plugins: [
      bandAreas([{ x: times, low: low.map(shop), high: high.map(shop), colour: COLOURS.blue }]),
      markLines(marksOf(cook, channel, inUnit)),
      endLabels([
        { dataset: 0, text: 'measured', colour: FAINT_INK },
        { dataset: 1, text: 'before the fit', colour: COLOURS.vermilion },
        { dataset: 2, text: 'fitted', colour: COLOURS.blue },
      ]),
    ],
    options: {
      ...base,
      parsing: false,
      scales: {
        x: timeAxis(unit, inUnit(cook.length_s), NAMES),
        y: temperature.shop,
        si: temperature.si,
      },
    } as ChartConfiguration<'line'>['options'],
  };
}

function marksOf(cook: FittedCook, { heldReadings }: FittedChannel, inUnit: (seconds: number) => number): MarkLine[] {
  const mark = (time: number, text: string): MarkLine => ({
    axis: 'x',
    value: inUnit(time),
    text,
    dash: [3, 3],
    row: 0,
  });
  return [
    ...(cook.from_s > 0 ? [mark(cook.from_s, 'fitted from here')] : []),
    ...(heldReadings > 0 ? [mark(cook.fittedTo_s, 'not fitted')] : []),
  ];
}
