import type { ChartConfiguration, ChartDataset } from 'chart.js';
import { axis, roundTicks, twinAxes } from '../charts/axes.js';
import { baseOptions } from '../charts/base.js';
import { endLabels } from '../charts/endLabels.js';
import { markLines } from '../charts/markLines.js';
import { plainText } from '../charts/plainText.js';
import { COLOURS, type LineStyle } from '../charts/theme.js';
import { convert, format } from '../units.js';
import type { Option } from './workbench.js';

/** One style an option; colour and dash both tell it. */
const STYLES: LineStyle[] = [
  { colour: COLOURS.blue, dash: [] },
  { colour: COLOURS.vermilion, dash: [12, 4] },
  { colour: COLOURS.green, dash: [7, 4] },
  { colour: COLOURS.purple, dash: [12, 4, 3, 4] },
  { colour: COLOURS.orange, dash: [4, 3] },
];

const LETTER = 7.4;

/** What the cook's thermometer reads in every option while it warms up. Null when no option has curves. */
export function optionsChart(options: readonly Option[], plot: number): ChartConfiguration | null {
  const shown = options.flatMap(({ label, full }, i) =>
    full?.warmUp && full.warmUp.series.time_s.length > 1
      ? [{ name: plainText(label, 24), warmUp: full.warmUp, design: full.design, style: STYLES[i % STYLES.length] }]
      : [],
  );
  if (shown.length === 0) return null;
  const minutes = (seconds: number) => convert('time', seconds, 'shop', { unit: 'min' });
  const end = minutes(Math.max(...shown.map(({ warmUp }) => warmUp.series.time_s[warmUp.series.time_s.length - 1])));
  const kelvins = shown.flatMap(({ warmUp }) => warmUp.series.thermometer_K);
  const targets = [...new Set(shown.map(({ design }) => design.fire.target))];
  const temperature = twinAxes('Thermometer', 'temperature', {
    low: Math.min(...kelvins),
    high: Math.max(...kelvins, ...targets),
  });
  const room = Math.min(0.45, (Math.max(...shown.map(({ name }) => name.length)) * LETTER + 30) / plot);
  return {
    type: 'line',
    data: {
      datasets: shown.map(({ name, warmUp, style }): ChartDataset<'line', { x: number; y: number }[]> => ({
        label: name,
        data: warmUp.series.time_s.map((seconds, i) => ({
          x: minutes(seconds),
          y: convert('temperature', warmUp.series.thermometer_K[i], 'shop'),
        })),
        borderColor: style.colour,
        borderDash: style.dash,
        borderWidth: 2.5,
        pointRadius: 0,
      })),
    },
    plugins: [
      markLines(
        targets.map((target) => ({
          axis: 'y',
          value: convert('temperature', target, 'shop'),
          text: `target ${format('temperature', target)}`,
          dash: [10, 4],
          row: 1,
        })),
      ),
      endLabels(shown.map(({ name, style }, dataset) => ({ dataset, text: name, colour: style.colour }))),
    ],
    options: {
      ...baseOptions('Options together', 'what the gauge reads in each option, each under its own full fire'),
      parsing: false,
      scales: {
        x: axis(
          'bottom',
          'Time [min]',
          roundTicks(0, end, 8).filter((tick) => tick <= end * 1.001),
          {
            min: 0,
            max: end / (1 - room),
          },
        ),
        y: temperature.shop,
        si: temperature.si,
      },
    } as ChartConfiguration<'line'>['options'],
  } as ChartConfiguration;
}
