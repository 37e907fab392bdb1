import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { heatLossChart } from './heatLossChart.js';
import { plainText } from '../words/plainText.js';
import { pressureChart } from './pressureChart.js';
import { spreadCharts } from './spreadCharts.js';
import { ventsChart } from './ventCurveChart.js';
import { warmUpChart } from './warmUpChart.js';

/** A chart that is written to a file of its own. */
export interface NamedChart {
  /** file name without its ending */
  file: string;
  config: ChartConfiguration;
}

/** Longest design name that fits a chart's title beside what it shows. */
const LONGEST_NAME = 40;

/** All charts of a result, in reading order; those that the result has no data for are left out. */
export function estimateCharts(result: EstimateResult): NamedChart[] {
  const name = plainText(result.design.name, LONGEST_NAME);
  const charts: [string, unknown][] = [
    ['warm-up-thermometer', warmUpChart(result, name, 'thermometer')],
    ['warm-up-gas', warmUpChart(result, name, 'gas')],
    ['warm-up-steel', warmUpChart(result, name, 'steel')],
    ['heat-loss', heatLossChart(result, name)],
    ['draft', pressureChart(result, name)],
    ['vent-curve', ventsChart(result, name)],
    ...spreadCharts(result, name),
  ];
  return charts.flatMap(([file, config]) => (config ? [{ file, config: config as ChartConfiguration }] : []));
}
