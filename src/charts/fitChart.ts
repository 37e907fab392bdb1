import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { FitResult, FittedChannel, FittedCook } from '../fit/fitResult.js';
import { convert, format } from '../units/index.js';
import { timeAxis, twinAxes } from './axes.js';
import { bandAreas } from './bands.js';
import { baseOptions, lineOptions } from './base.js';
import { endLabels } from './endLabels.js';
import type { NamedChart } from './estimateCharts.js';
import { markLines, type MarkLine } from './markLines.js';
import { plainText } from '../words/plainText.js';
import { COLOURS, FAINT_INK } from '../draw/theme.js';

/** Dots and points of a line at most: more can't be told apart. */
const MOST_DOTS = 400;
/** A break between readings that is this many times their usual one breaks a line. */
const GAP = 5;
/** Room at the right for the lines' names, as a share of the plot. */
const NAMES = 0.16;
/** A cook longer than this is told in hours [s]. */
const LONG = 4 * 3600;
const LONGEST_NAME = 36;

/**
 * Two charts a probe: measured against computed, as the design had it and as it is fitted; and what is left over, in
 * the band in which nine of ten readings should lie. The part that was held back is marked in both.
 */
export function fitCharts({ design, cooks }: FitResult): NamedChart[] {
  const name = plainText(design.name, LONGEST_NAME);
  let count = 0;
  return cooks.flatMap((cook) =>
    cook.channels.flatMap((channel) => {
      const file = `fit-${++count}-${slug(channel)}`;
      const title = `${name}: ${plainText(channel.header, LONGEST_NAME)} in ${plainText(cook.name, LONGEST_NAME)}`;
      return [
        { file, config: probeChart(title, cook, channel) as ChartConfiguration },
        { file: `${file}-left-over`, config: leftOverChart(title, cook, channel) as ChartConfiguration },
      ];
    }),
  );
}

function slug({ station, spot = station, measured }: FittedChannel): string {
  const words = spot.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`).replace(/[^\p{L}\p{N}-]+/gu, '-');
  return measured === 'thermometer' ? words : `${words}-${measured}`;
}

/** Points that are drawn: times in the chart's unit, indices of the readings, and where a gap breaks a line. */
function drawnOf({ curves, spacing_s }: FittedChannel, inUnit: (seconds: number) => number) {
  const every = Math.max(1, Math.ceil(curves.time_s.length / MOST_DOTS));
  const at = curves.time_s.map((_, i) => i).filter((i) => i % every === 0);
  const gap = (k: number) => k > 0 && curves.time_s[at[k]] - curves.time_s[at[k - 1]] > GAP * every * spacing_s;
  const line = (value: (i: number) => number) =>
    at.flatMap((i, k) => {
      const x = inUnit(curves.time_s[i]);
      return [...(gap(k) ? [{ x, y: NaN }] : []), { x, y: value(i) }];
    });
  return { at, times: at.map((i) => inUnit(curves.time_s[i])), line };
}

function timesOf({ length_s }: FittedCook) {
  const unit = length_s > LONG ? 'h' : 'min';
  return { unit, inUnit: (seconds: number) => convert('time', seconds, 'shop', { unit }) };
}

function probeChart(title: string, cook: FittedCook, channel: FittedChannel): ChartConfiguration<'line'> {
  const { fitted, heldBack, curves } = channel;
  const { unit, inUnit } = timesOf(cook);
  const shop = (kelvin: number) => convert('temperature', kelvin, 'shop');
  const drawn = drawnOf(channel, inUnit);
  const { at, times } = drawn;
  const line = (values: number[]) => drawn.line((i) => shop(values[i]));
  const low = at.map((i) => curves.after_K[i] - curves.band_K[i]);
  const high = at.map((i) => curves.after_K[i] + curves.band_K[i]);
  const seen = [...at.flatMap((i) => [curves.measured_K[i], curves.before_K[i]]), ...low, ...high];
  const temperature = twinAxes('Temperature', 'temperature', { low: Math.min(...seen), high: Math.max(...seen) });
  const error = (kelvin: number | null) => format('temperatureDifference', kelvin, 'shop', { digits: 2 });
  const judged = heldBack.after === null ? fitted : heldBack;
  const base = baseOptions(
    title,
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
      bandAreas([{ dataset: 2, x: times, low: low.map(shop), high: high.map(shop), colour: COLOURS.blue }]),
      endLabels([
        { dataset: 0, text: 'measured', colour: FAINT_INK },
        { dataset: 1, text: 'before the fit', colour: COLOURS.vermilion },
        { dataset: 2, text: 'fitted', colour: COLOURS.blue },
      ]),
      markLines(marksOf(cook, channel, inUnit)),
    ],
    options: lineOptions(base, {
      x: timeAxis(unit, inUnit(cook.length_s), NAMES),
      y: temperature.main,
      ...temperature.beside,
    }),
  };
}

/** What the fit leaves of each reading, and the band that nine of ten should lie in. */
function leftOverChart(title: string, cook: FittedCook, channel: FittedChannel): ChartConfiguration<'line'> {
  const { curves, noise_K, fitted } = channel;
  const { unit, inUnit } = timesOf(cook);
  const shop = (kelvin: number) => convert('temperatureDifference', kelvin, 'shop');
  const left = curves.time_s.map((_, i) => curves.measured_K[i] - curves.after_K[i]);
  const drawn = drawnOf(channel, inUnit);
  const { at, times } = drawn;
  const reach = Math.max(...at.map((i) => Math.max(Math.abs(left[i]), curves.band_K[i])));
  const difference = twinAxes('Measured less computed', 'temperatureDifference', { low: -reach, high: reach });
  const say = (kelvin: number | null) => format('temperatureDifference', kelvin, 'shop', { digits: 2 });
  const base = baseOptions(
    `${title}: what is left over`,
    `${say(fitted.after)} where it was fitted; the readings' own noise is ${say(noise_K)}; what swings or drifts is not in the model`,
  );
  return {
    type: 'line',
    data: {
      datasets: [
        {
          label: 'left over',
          data: drawn.line((i) => shop(left[i])),
          borderColor: FAINT_INK,
          borderWidth: 0.8,
          pointRadius: 2,
          pointBackgroundColor: COLOURS.blue,
          pointBorderWidth: 0,
        },
      ],
    },
    plugins: [
      bandAreas([
        {
          dataset: 0,
          x: times,
          low: at.map((i) => shop(-curves.band_K[i])),
          high: at.map((i) => shop(curves.band_K[i])),
          colour: COLOURS.blue,
        },
      ]),
      markLines([...marksOf(cook, channel, inUnit), { axis: 'y', value: 0, text: 'just as computed', dash: [] }]),
    ],
    options: lineOptions(base, {
      x: timeAxis(unit, inUnit(cook.length_s), NAMES),
      y: difference.main,
      ...difference.beside,
    }),
  };
}

function marksOf(cook: FittedCook, { heldReadings }: FittedChannel, inUnit: (seconds: number) => number): MarkLine[] {
  const mark = (time: number, text: string): MarkLine => ({
    axis: 'x',
    value: inUnit(time),
    text,
    dash: [3, 3],
  });
  return [
    ...(cook.from_s > 0 ? [mark(cook.from_s, 'fitted from here')] : []),
    ...(heldReadings > 0 ? [mark(cook.fittedTo_s, 'not fitted')] : []),
  ];
}
