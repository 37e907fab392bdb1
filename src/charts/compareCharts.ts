import type { ChartConfiguration } from 'chart.js';
import type { ComparedOption, Comparison } from '../study/compare/compare.js';
import { baselineOf } from '../study/compare/baseline.js';
import type { Curve } from '../study/events/timeline.js';
import { ofResult, type ResultName } from '../study/quantities.js';
import { tellingFor } from '../study/compare/verdict.js';
import { format } from '../units/index.js';
import { certaintyChart } from './certaintyChart.js';
import type { NamedChart } from './estimateCharts.js';
import { optionCurves, optionStyle, type OptionCurve } from './optionCurves.js';
import { plainText } from '../words/plainText.js';
import { stackedLossChart } from './stackedLossChart.js';

/** Longest name that fits a title beside what it shows, and longest label that fits at a line's end. */
const LONGEST_NAME = 40;
const LONGEST_LABEL = 26;
/** More lines than this in one picture can't be told apart. */
const MOST_LINES = 8;
/** A door's curve is drawn this far past its shutting [s]. */
const AFTER_DOOR = 900;

/** All charts of a comparison, in reading order; those that no option has data for are left out. */
export function compareCharts(comparison: Comparison): NamedChart[] {
  const { options } = comparison;
  const names = [...new Set(options.map(({ result }) => plainText(result.design.name, LONGEST_NAME)))];
  const name = names.length === 1 ? names[0] : `${names.length} designs`;
  const charts: [string, unknown][] = [
    ['compare-warm-up', warmUp(comparison, name, 'thermometer_K')],
    ['compare-warm-up-steel', warmUp(comparison, name, 'steel_K')],
    ['compare-splits', splits(comparison, name, 'thermometer_K')],
    ['compare-splits-steel', splits(comparison, name, 'steel_K')],
    ['compare-door', door(comparison, name)],
    ['compare-heat-loss', stackedLossChart(options, `${name}: where the heat goes while holding`)],
    ...options.map((_, i): [string, unknown] => [`compare-how-sure-${i + 1}`, certaintyChart(comparison, i, name)]),
  ];
  return charts.flatMap(([file, config]) => (config ? [{ file, config: config as ChartConfiguration }] : []));
}

function linesOf(options: ComparedOption[], curveOf: (option: ComparedOption) => [number[], number[]] | null) {
  return options.slice(0, MOST_LINES).flatMap((option, i): OptionCurve[] => {
    const curve = curveOf(option);
    if (!curve) return [];
    return [
      {
        label: plainText(option.label, LONGEST_LABEL),
        time_s: curve[0],
        kelvin: curve[1],
        style: optionStyle(i),
      },
    ];
  });
}

function cut(options: ComparedOption[]): string {
  return options.length > MOST_LINES ? `; the first ${MOST_LINES} of ${options.length} options` : '';
}

function targetOf(comparison: Comparison) {
  const { target } = baselineOf(comparison).result.design.fire;
  return { kelvin: target, text: `target ${format('temperature', target)}` };
}

function warmUp(comparison: Comparison, name: string, key: 'thermometer_K' | 'steel_K') {
  const { options } = comparison;
  const steel = key === 'steel_K';
  const soaked = options
    .slice(0, MOST_LINES)
    .map(({ label, result }) => {
      const time = result.warmUp?.soaked_s ?? null;
      return `${plainText(label, LONGEST_LABEL)} ${time === null ? 'never' : format('time', time)}`;
    })
    .join(', ');
  return optionCurves({
    title: `${name}: ${steel ? 'steel' : 'thermometer'} while it warms up`,
    subtitle: `soaked after: ${soaked}${cut(options)}`,
    quantity: steel ? 'Steel temperature' : 'Thermometer',
    curves: linesOf(options, ({ result }) => {
      const series = result.warmUp?.series;
      return series ? [series.time_s, series[key]] : null;
    }),
    ...(steel ? {} : { level: targetOf(comparison) }),
  });
}

function splits(comparison: Comparison, name: string, key: 'thermometer_K' | 'steel_K') {
  const { options } = comparison;
  const what = key === 'thermometer_K' ? 'thermometer' : 'steel';
  const swing = kelvins(comparison, `swing.${key}`);
  return optionCurves({
    title: `${name}: ${what} under splits`,
    subtitle: `from lowest to highest: ${swing}${cut(options)}`,
    quantity: key === 'thermometer_K' ? 'Thermometer' : 'Steel temperature',
    curves: linesOf(options, ({ studies }) => (studies?.swing ? twice(studies.swing.curve, key) : null)),
    ...(key === 'thermometer_K' ? { level: targetOf(comparison) } : {}),
  });
}

/** What an event does to the thermometers of the options, to the digits of the table. */
function kelvins(comparison: Comparison, key: ResultName): string {
  const telling = tellingFor(comparison, ofResult(key), 'shop', 'not followed');
  return comparison.options
    .slice(0, MOST_LINES)
    .map(({ label, differences }) => {
      const value = differences.find((each) => each.key === key)?.value ?? null;
      return `${plainText(label, LONGEST_LABEL)} ${telling.quantity(value)}`;
    })
    .join(', ');
}

/** A cycle shown two times over, so that it can be seen to repeat. */
function twice({ time_s, ...curve }: Curve, key: 'thermometer_K' | 'steel_K'): [number[], number[]] {
  const period = time_s[time_s.length - 1];
  const again = time_s.slice(1).map((t) => t + period);
  return [
    [...time_s, ...again],
    [...curve[key], ...curve[key].slice(1)],
  ];
}

function door(comparison: Comparison, name: string) {
  const { options, settings } = comparison;
  const end = settings.door_s + AFTER_DOOR;
  const dips = kelvins(comparison, 'door.dip_K');
  return optionCurves({
    title: `${name}: thermometer with the door open ${format('time', settings.door_s)}`,
    subtitle: `dips by: ${dips}; then shut, and the fire tended back to the target${cut(options)}`,
    quantity: 'Thermometer',
    curves: linesOf(options, ({ studies }) => {
      if (!studies?.door) return null;
      const { time_s, thermometer_K } = studies.door.curve;
      const count = time_s.filter((t) => t <= end).length;
      return [time_s.slice(0, count), thermometer_K.slice(0, count)];
    }),
    level: targetOf(comparison),
  });
}
