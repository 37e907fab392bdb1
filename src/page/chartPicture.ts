/** Any chart of the page as plain shapes. */
import type { ChartConfiguration } from 'chart.js';
import { chartScene } from '../charts/chartScene.js';
import { heatLossChart } from '../charts/heatLossChart.js';
import { optionsChart } from '../charts/optionsChart.js';
import { pressureChart } from '../charts/pressureChart.js';
import { ventsChart } from '../charts/ventCurveChart.js';
import { warmUpChart } from '../charts/warmUpChart.js';
import { systemOf } from '../units/choice.js';
import { axisWords, besidePlot, chartHeight, fitWidth } from './chartFit.js';
import { CHART_LABELS } from './chartLabels.js';
import { plotOf } from './chartPlot.js';
import type { Pictured, PictureRequest, Plot } from './protocol.js';

type Asked = Extract<PictureRequest, { kind: 'chart' }>;

/** A chart as it fits the width asked for, and where its curves lie. */
export function chartPicture(request: Asked): Omit<Pictured<'chart'>, 'took'> {
  const { chart: chosen, width, hidden, units } = request;
  const config = configOf(request);
  if (!config) return { kind: 'chart', chart: chosen, scene: null, plot: null, caption: '' };
  for (const dataset of config.data.datasets) dataset.hidden = hidden.includes(String(dataset.label));
  let plot: Plot | null = null;
  const subtitle = String(config.options?.plugins?.subtitle?.text ?? '');
  const caption = [subtitle, axisWords(chosen, width, units)].filter((text) => text !== '').join('. ');
  fitWidth(config, chosen, width);
  const scene = chartScene(config, {
    width,
    height: chartHeight(chosen, request.result, width),
    bare: true,
    title: CHART_LABELS[chosen],
    description: caption,
    drawn: (drawn) => (plot = plotOf(drawn, chosen, systemOf(units))),
  });
  return { kind: 'chart', chart: chosen, scene, plot, caption };
}

function configOf({ chart: chosen, result, options, width, units }: Asked): ChartConfiguration | null {
  switch (chosen) {
    case 'options':
      return optionsChart(options, width, units) as ChartConfiguration | null;
    case 'vents':
      return ventsChart(result, '', units) as ChartConfiguration | null;
    case 'loss':
      return heatLossChart(result, '', width, units) as ChartConfiguration | null;
    case 'draft':
      return pressureChart(result, '', width, units) as ChartConfiguration | null;
    default:
      return warmUpChart(result, '', chosen, { plot: width - besidePlot(width), units }) as ChartConfiguration | null;
  }
}
