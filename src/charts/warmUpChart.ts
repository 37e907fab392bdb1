import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { EstimateResult, WarmUp } from '../study/result.js';
import { convert, format } from '../units.js';
import { axis, roundTicks, twinAxes } from './axes.js';
import { baseOptions } from './base.js';
import { endLabels } from './endLabels.js';
import { stationLabel } from './labels.js';
import { markLines, type MarkLine } from './markLines.js';
import { STATION_STYLES } from './theme.js';

/** Which of a station's temperatures a chart shows. */
export type Curve = 'thermometer' | 'gas' | 'steel';

const CURVES: Record<Curve, { key: 'thermometer_K' | 'gas_K' | 'steel_K'; title: string; axis: string }> = {
  thermometer: { key: 'thermometer_K', title: 'what thermometers read', axis: 'Thermometer' },
  gas: { key: 'gas_K', title: 'gas', axis: 'Gas temperature' },
  steel: { key: 'steel_K', title: 'steel', axis: 'Steel temperature' },
};

/** Share of the plot's width kept free at the right for the names of the lines. */
const LABEL_ROOM = 0.2;

/**
 * Warm-up of every station against time: °F on the left, °C on the right, with the target and the two warm-up times
 * marked. Null when the result has no curves.
 */
export function warmUpChart(result: EstimateResult, name: string, curve: Curve): ChartConfiguration<'line'> | null {
  const { design, warmUp } = result;
  if (!warmUp || warmUp.series.time_s.length < 2) return null;
  const { key, title, axis: quantity } = CURVES[curve];
  const { time_s: time, stations } = warmUp.series;
  const minutes = time.map((seconds) => convert('time', seconds, 'shop', { unit: 'min' }));
  const end = minutes[minutes.length - 1];
  const kelvins = stations.flatMap((station) => station[key]);
  const temperature = twinAxes(quantity, 'temperature', {
    low: Math.min(...kelvins),
    high: Math.max(...kelvins, curve === 'steel' ? 0 : design.fire.target),
  });

  const datasets = stations.map((station): ChartDataset<'line', { x: number; y: number }[]> => {
    const style = STATION_STYLES[station.name];
    return {
      label: stationLabel(station.name),
      data: station[key].map((kelvin, i) => ({ x: minutes[i], y: convert('temperature', kelvin, 'shop') })),
      borderColor: style.colour,
      borderDash: style.dash,
      borderWidth: station.name === design.gauge ? 3.5 : 2.25,
      pointRadius: 0,
    };
  });

  const base = baseOptions(`${name}: ${title} while it warms up`, subtitle(result));
  return {
    type: 'line',
    data: { datasets },
    plugins: [
      markLines(marks(design.fire.target, warmUp, curve, end)),
      endLabels(
        stations.map((station, dataset) => ({
          dataset,
          text: stationLabel(station.name) + (station.name === design.gauge ? ' (gauge)' : ''),
          colour: STATION_STYLES[station.name].colour,
        })),
      ),
    ],
    options: {
      ...base,
      parsing: false,
      scales: {
        x: axis('bottom', 'Time [min]', ticksUpTo(end), { min: 0, max: end / (1 - LABEL_ROOM) }),
        y: temperature.shop,
        si: temperature.si,
      },
    } as ChartConfiguration<'line'>['options'],
  };
}

function ticksUpTo(end: number): number[] {
  return roundTicks(0, end, 8).filter((tick) => tick <= end * 1.001);
}

function subtitle({ design, assumed }: EstimateResult): string {
  const fire = `full fire${assumed ? ` ${format('power', assumed.fire_W)}` : ''} up to the target, then what holds it`;
  return `${fire}; outdoors ${format('temperature', design.site.air)}, wind ${format('speed', design.site.wind)}`;
}

/** The target, and the times at which the gauge first reads it and at which the pit is soaked. */
function marks(target: number, { gauge_s, soaked_s }: WarmUp, curve: Curve, end: number): MarkLine[] {
  const at = (seconds: number | null, what: string, row: number): MarkLine[] =>
    seconds == null || seconds / 60 > end
      ? []
      : [{ axis: 'x', value: seconds / 60, text: `${what} ${format('time', seconds)}`, dash: [3, 3], row }];
  const level: MarkLine = {
    axis: 'y',
    value: convert('temperature', target, 'shop'),
    text: `target ${format('temperature', target)}`,
    dash: [10, 4],
    row: 1,
  };
  return [...(curve === 'steel' ? [] : [level]), ...at(gauge_s, 'gauge', 0), ...at(soaked_s, 'soaked', 1)];
}
