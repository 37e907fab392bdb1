/** Any chart of the page as plain shapes. */
import type { ChartConfiguration } from 'chart.js';
import { chartScene } from '../charts/chartScene.js';
import { heatLossChart } from '../charts/heatLossChart.js';
import { optionsChart } from '../charts/optionsChart.js';
import { pressureChart } from '../charts/pressureChart.js';
import { ventsChart } from '../charts/ventCurveChart.js';
import { warmUpChart } from '../charts/warmUpChart.js';
import { axisWords, besidePlot, chartHeight, fitWidth } from './chartFit.js';
import { CHART_LABELS } from './chartLabels.js';
import { plotOf } from './chartPlot.js';
import type { Pictured, PictureRequest, Plot } from './protocol.js';

type Asked = Extract<PictureRequest, { kind: 'chart' }>;

/** A chart as it fits the width asked for, and where its curves lie. */
export function chartPicture(request: Asked): Omit<Pictured<'chart'>, 'took'> {
  const { chart: chosen, width, hidden } = request;
  const config = configOf(request);
  if (!config) return { kind: 'chart', chart: chosen, scene: null, plot: null, caption: '' };
  for (const dataset of config.data.datasets) dataset.hidden = hidden.includes(String(dataset.label));
  let plot: Plot | null = null;
  const subtitle = String(config.options?.plugins?.subtitle?.text ?? '');
  const caption = [subtitle, axisWords(chosen, width)].filter((text) => text !== '').join('. ');
  fitWidth(config, chosen, width);
  const scene = chartScene(config, {
    width,
    height: chartHeight(chosen, request.result, width),
    bare: true,
    title: CHART_LABELS[chosen],
    description: caption,
    drawn: (drawn) => (plot = plotOf(drawn, chosen)),
  });
  return { kind: 'chart', chart: chosen, scene, plot, caption };
}

function configOf({ chart: chosen, result, options, width }: Asked): ChartConfiguration | null {
  switch (chosen) {
    case 'options':
      return optionsChart(options, width) as ChartConfiguration | null;
    case 'vents':
      return ventsChart(result, '') as ChartConfiguration | null;
    case 'loss':
      return heatLossChart(result, '', width) as ChartConfiguration | null;
    case 'draft':
      return pressureChart(result, '', width) as ChartConfiguration | null;
    default:
      return warmUpChart(result, '', chosen, width - besidePlot(width)) as ChartConfiguration | null;
  }
}
