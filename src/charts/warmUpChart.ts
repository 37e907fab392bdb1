import type { ChartConfiguration, ChartDataset } from 'chart.js';
import { middleOf } from '../design/places.js';
import { windAtPit } from '../design/windAtPit.js';
import type { EstimateResult, PlaceSeries, WarmUp } from '../study/estimate/result.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format, type UnitSystem } from '../units/index.js';
import { timeAxis, twinAxes } from './axes.js';
import { baseOptions, bottomLegend, lineOptions } from './base.js';
import { bandAreas } from './bands.js';
import { endLabels } from './endLabels.js';
import { placeLabel, stationLabel } from '../words/labels.js';
import { pieces } from './optionCurves.js';
import { markLines, type MarkLine } from './markLines.js';
import { PLACE_STYLES, STATION_STYLES, type LineStyle } from '../draw/theme.js';

/** Which of a station's temperatures a chart shows. */
export type Curve = 'thermometer' | 'gas' | 'steel';

const CURVES: Record<Curve, { key: 'thermometer_K' | 'gas_K' | 'steel_K'; title: string; axis: string }> = {
  thermometer: { key: 'thermometer_K', title: 'what thermometers read', axis: 'Thermometer' },
  gas: { key: 'gas_K', title: 'gas', axis: 'Gas temperature' },
  steel: { key: 'steel_K', title: 'steel', axis: 'Steel temperature' },
};

/** A warm-up longer than this is told in hours [s]. */
const LONG = 4 * 3600;
/**
 * Width of a letter of the lines' names, and of the usual plot, about, in logical pixels: room for the names at the
 * right.
 */
const LETTER = 7.4;
const PLOT = 850;
/** A plot narrower than this has its lines' names below it [px]. */
const NARROW = 380;
const KEY = bottomLegend({ boxWidth: 26, boxHeight: 0 });

/**
 * Warm-up of every station, and of the grate, against time: °F on the left, °C on the right, with the target and the
 * two warm-up times marked, and where the spread was studied the band in which eight of ten cases of the cook's own
 * curve lie. Null when the result has no curves.
 *
 * @param options.plot width of the plot, about [px], which decides how much of it the lines' names take
 */
export function warmUpChart(
  result: EstimateResult,
  name: string,
  curve: Curve,
  { plot = PLOT, units = 'both' }: { plot?: number; units?: UnitChoice } = {},
): ChartConfiguration<'line'> | null {
  const { design, warmUp } = result;
  if (!warmUp || warmUp.series.time_s.length < 2) return null;
  const { key, title, axis: quantity } = CURVES[curve];
  const system = systemOf(units);
  const { time_s: time } = warmUp.series;
  const unit = time[time.length - 1] > LONG ? 'h' : 'min';
  const inUnit = (seconds: number) => convert('time', seconds, 'shop', { unit });
  const times = time.map(inUnit);
  const end = times[times.length - 1];
  const lines = linesOf(result, curve);
  const names = lines.map(({ label, gauge }) => label + (gauge ? ' (gauge)' : ''));
  const beside = plot >= NARROW;
  const room = beside ? Math.min(0.5, (Math.max(...names.map((each) => each.length)) * LETTER + 30) / plot) : 0.02;
  const steered = lines.findIndex(({ gauge }) => gauge);
  const band = result.spread?.curves ?? null;
  const kelvins = [...lines.flatMap(({ values }) => values), ...(band ? [...band[key].p10, ...band[key].p90] : [])];
  const range = {
    low: Math.min(...kelvins),
    high: Math.max(...kelvins, curve === 'steel' ? 0 : design.fire.target),
  };
  const temperature = twinAxes(quantity, 'temperature', range, { units });

  const degrees = (values: number[]) => values.map((kelvin) => convert('temperature', kelvin, system));
  const datasets = lines.map(({ label, values, style, gauge }): ChartDataset<'line', { x: number; y: number }[]> => ({
    label,
    data: pieces(times, degrees(values)),
    // the integrator's steps are minutes apart; what it computes between them is smooth, so the line is
    cubicInterpolationMode: 'monotone',
    borderColor: style.colour,
    borderDash: [...style.dash],
    borderWidth: gauge ? 3.5 : 2.25,
    pointRadius: 0,
  }));

  const legend = beside ? undefined : KEY;
  const base = baseOptions(`${name}: ${title} while it warms up`, subtitle(result, system), legend);
  return {
    type: 'line',
    data: { datasets },
    plugins: [
      ...(band
        ? [
            bandAreas([
              {
                dataset: steered,
                x: band.time_s.map(inUnit),
                low: degrees(band[key].p10),
                high: degrees(band[key].p90),
                colour: lines[steered].style.colour,
              },
            ]),
          ]
        : []),
      ...(beside
        ? [endLabels(lines.map(({ style }, dataset) => ({ dataset, text: names[dataset], colour: style.colour })))]
        : []),
      markLines(marks(design.fire.target, warmUp, { curve, inUnit, system })),
    ],
    options: lineOptions(base, {
      x: timeAxis(unit, end, room),
      y: temperature.main,
      ...temperature.beside,
    }),
  };
}

interface Line {
  label: string;
  values: number[];
  style: LineStyle;
  /** of the cook's thermometer: a spread's curves are of it */
  gauge: boolean;
}

/** Every station, the middle of the first grate, and where that is another place, what the cook steers by. */
function linesOf({ design, warmUp }: EstimateResult, curve: Curve): Line[] {
  const { stations, places } = warmUp!.series;
  const { key } = CURVES[curve];
  const gauge = middleOf(places, design.gauge);
  // a shell has no steel of a grate's own: there it is the station's
  const steered = key === 'steel_K' ? (gauge?.station ?? design.gauge) : design.gauge;
  const own = stations.map(({ name, [key]: values }): Line => ({
    label: stationLabel(name),
    values,
    style: STATION_STYLES[name],
    gauge: name === steered,
  }));
  if (key === 'steel_K') return own;
  const grate = middleOf(places, places.find(({ kind }) => kind === 'grate')?.name ?? '');
  const others = [grate, gauge].filter((place, i, all) => place && all.indexOf(place) === i) as PlaceSeries[];
  return [
    ...own,
    ...others.map((place): Line => ({
      label: placeLabel(place),
      values: place[key],
      style: PLACE_STYLES[place === gauge ? 'gauge' : 'grate'],
      gauge: place === gauge,
    })),
  ];
}

function subtitle({ design, assumed, warmUp, spread }: EstimateResult, system: UnitSystem): string {
  const then = warmUp?.gauge_s == null ? 'throughout' : 'up to the target, then what holds it';
  const fire = `full fire${assumed ? ` ${format('power', assumed.fire_W, system)}` : ''} ${then}`;
  const band = spread?.curves ? '; band: 8 of 10 cases' : '';
  return `${fire}; outdoors ${format('temperature', design.site.air, system)}, wind ${format('speed', windAtPit(design), system, { digits: 2 })}${band}`;
}

/** The target, and the times at which the gauge first reads it and at which the pit is soaked. */
function marks(
  target: number,
  { gauge_s, soaked_s }: WarmUp,
  { curve, inUnit, system }: { curve: Curve; inUnit: (seconds: number) => number; system: UnitSystem },
): MarkLine[] {
  const at = (seconds: number | null, what: string): MarkLine[] => {
    if (seconds == null) return [];
    return [{ axis: 'x', value: inUnit(seconds), text: `${what} ${format('time', seconds)}`, dash: [3, 3] }];
  };
  const level: MarkLine = {
    axis: 'y',
    value: convert('temperature', target, system),
    text: `target ${format('temperature', target, system)}`,
    dash: [10, 4],
  };
  return [...(curve === 'steel' ? [] : [level]), ...at(gauge_s, 'gauge'), ...at(soaked_s, 'soaked')];
}
