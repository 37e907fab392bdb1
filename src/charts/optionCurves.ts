import type { ChartConfiguration, ChartDataset } from 'chart.js';
import { convert } from '../units/index.js';
import { timeAxis, twinAxes } from './axes.js';
import { baseOptions, lineOptions } from './base.js';
import { endLabels } from './endLabels.js';
import { markLines, type MarkLine } from './markLines.js';
import { COLOURS, type LineStyle } from '../draw/theme.js';

/** One line of a picture of options. */
export interface OptionCurve {
  label: string;
  time_s: number[];
  kelvin: number[];
  style: LineStyle;
}

/** One style an option: colour and dash both tell it. More options than these share colours, not dashes. */
const HUES = [COLOURS.blue, COLOURS.vermilion, COLOURS.green, COLOURS.purple, COLOURS.orange, COLOURS.sky] as const;
const DASHES: number[][] = [[], [12, 4], [2, 4], [12, 4, 3, 4], [7, 4], [4, 3]];

/** Colour and dash of the i-th option: no two of thirty-six look the same. */
export function optionStyle(i: number): LineStyle {
  const round = Math.floor(i / HUES.length);
  return { colour: HUES[i % HUES.length], dash: DASHES[(i + round) % DASHES.length] };
}

/** A run longer than this is told in hours [s]. */
const LONG = 4 * 3600;
/**
 * Width of a letter of the lines' names, and of the plot, about, in logical pixels: room for the names at the right.
 */
const LETTER = 7.4;
const PLOT = 850;

/**
 * A temperature of every option against time, °F on the left and °C on the right, each line with its option's name at
 * its end. Null when no line has two points.
 *
 * @param smooth whether lines bend between their points
 */
export function optionCurves(options: {
  title: string;
  subtitle: string;
  quantity: string;
  curves: OptionCurve[];
  level?: { kelvin: number; text: string };
  /** what happens at a time, written beside an upright line */
  times?: { time_s: number; text: string }[];
}): ChartConfiguration<'line'> | null {
  const { title, subtitle, quantity, level } = options;
  const curves = options.curves.filter(({ time_s }) => time_s.length > 1);
  if (curves.length === 0) return null;
  const last = Math.max(...curves.map(({ time_s }) => time_s[time_s.length - 1]));
  const unit = last > LONG ? 'h' : 'min';
  const inUnit = (seconds: number) => convert('time', seconds, 'shop', { unit });
  const end = inUnit(last);
  const room = Math.min(0.4, (Math.max(...curves.map(({ label }) => label.length)) * LETTER + 30) / PLOT);
  const kelvins = [...curves.flatMap(({ kelvin }) => kelvin), ...(level ? [level.kelvin] : [])];
  const temperature = twinAxes(quantity, 'temperature', { low: Math.min(...kelvins), high: Math.max(...kelvins) });
  const marks: MarkLine[] = [
    ...(level
      ? [
          {
            axis: 'y' as const,
            value: convert('temperature', level.kelvin, 'shop'),
            text: level.text,
            dash: [10, 4],
          },
        ]
      : []),
    ...(options.times ?? []).map(({ time_s, text }): MarkLine => ({
      axis: 'x',
      value: inUnit(time_s),
      text,
      dash: [3, 3],
    })),
  ];
  const base = baseOptions(title, subtitle);
  return {
    type: 'line',
    data: {
      datasets: curves.map(({ label, time_s, kelvin, style }, i): ChartDataset<'line', { x: number; y: number }[]> => ({
        label,
        // the first, a solid line, lies lowest, so that it hides none of the dashed ones
        order: -i,
        data: pieces(
          time_s.map(inUnit),
          kelvin.map((value) => convert('temperature', value, 'shop')),
        ),
        cubicInterpolationMode: 'monotone',
        borderColor: style.colour,
        borderDash: style.dash,
        borderWidth: 2.5,
        pointRadius: 0,
      })),
    },
    plugins: [
      endLabels(curves.map(({ label, style }, dataset) => ({ dataset, text: label, colour: style.colour }))),
      markLines(marks),
    ],
    options: lineOptions(base, { x: timeAxis(unit, end, room), y: temperature.main, ...temperature.beside }),
  };
}

/**
 * Points of a line that breaks where a time stands twice: there something changes at once, and a curve must not round
 * it.
 */
export function pieces(times: number[], values: number[]): { x: number; y: number }[] {
  return times.flatMap((x, i) => [...(i > 0 && x === times[i - 1] ? [{ x, y: NaN }] : []), { x, y: values[i] }]);
}
