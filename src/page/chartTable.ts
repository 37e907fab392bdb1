/** The numbers of a chart as a table, for those who can't see the picture. */
import { stationLabel } from '../words/labels.js';
import { plainText } from '../words/plainText.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { format, type UnitSystem } from '../units/index.js';
import type { ChartId, PicturedOption } from './protocol.js';
import { warmUpCells } from '../report/curveCells.js';
import { ventCurveData } from '../report/ventData.js';
import { heatLossData } from '../report/resultData.js';

/** Rows shown of a curve at most. */
const MOST_ROWS = 25;

/** Head and rows; empty where there is nothing to show. */
export function chartTable(
  id: ChartId,
  options: readonly PicturedOption[],
  result: EstimateResult,
  system: UnitSystem,
): string[][] {
  if (id === 'vents') {
    if (!result.ventCurve) return [];
    const { head, rows } = ventCurveData(result.ventCurve, result.design, system);
    return [head, ...rows];
  }
  if (id === 'options') return optionsTable(options);
  if (id === 'draft') return draftTable(result, system);
  if (id === 'loss') {
    const { head, rows } = heatLossData(result, system);
    return [head, ...rows];
  }
  const series = result.warmUp?.series;
  if (!series) return [];
  const key = `${id}_K` as const;
  const every = Math.max(1, Math.ceil(series.time_s.length / MOST_ROWS));
  const picks = series.time_s.map((_, i) => i).filter((i) => i % every === 0 || i === series.time_s.length - 1);
  return [
    ['time', ...series.stations.map(({ name }) => stationLabel(name))],
    ...picks.map((i) => [
      format('time', series.time_s[i], system, { unit: 'min' }),
      ...series.stations.map((station) => format('temperature', station[key][i], system)),
    ]),
  ];
}

/** The same with every number that there is: of curves over time what the command writes. */
export function chartCells(
  id: ChartId,
  options: readonly PicturedOption[],
  result: EstimateResult,
  system: UnitSystem,
): string[][] {
  const timed = id === 'thermometer' || id === 'steel' || id === 'gas';
  return timed ? warmUpCells(result, system) : chartTable(id, options, result, system);
}

function optionsTable(options: readonly PicturedOption[]): string[][] {
  const time = (seconds: number | null | undefined) => (seconds == null ? 'never' : format('time', seconds));
  return [
    ['', 'first reads the target', 'soaked'],
    ...options.map(({ label, result: { warmUp } }) => [
      plainText(label, 40),
      time(warmUp?.gauge_s),
      time(warmUp?.soaked_s),
    ]),
  ];
}

function draftTable({ steady, assumed }: EstimateResult, system: UnitSystem): string[][] {
  const states = [
    ...(steady ? [{ head: 'holding', state: steady }] : []),
    ...(assumed ? [{ head: 'full fire', state: assumed }] : []),
  ];
  if (states.length === 0) return [];
  return [
    ['', ...states.map(({ head }) => head)],
    ...states[0].state.pressurePath.map(({ where }, i) => [
      stationLabel(where),
      ...states.map(({ state }) => format('pressure', state.pressurePath[i].gauge_Pa, system, { digits: 2 })),
    ]),
  ];
}
