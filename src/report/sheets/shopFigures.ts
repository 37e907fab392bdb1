import type { ChartConfiguration } from 'chart.js';
import { chartScene } from '../../charts/chartScene.js';
import { heatLossChart } from '../../charts/heatLossChart.js';
import { gaugeLabel, stationLabel } from '../../words/labels.js';
import { interpolate } from '../../solve/interpolate.js';
import { plainText } from '../../words/plainText.js';
import { pressureChart } from '../../charts/pressureChart.js';
import { temperatureView } from '../../draw/pit/temperatureView.js';
import { ventChart } from '../../charts/ventChart.js';
import { warmUpChart } from '../../charts/warmUpChart.js';
import { roundTicks } from '../../draw/ticks.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { EstimateResult, SteadyState } from '../../study/estimate/result.js';
import { format } from '../../units/index.js';
import { heatLossData, openingsData } from '../resultData.js';
import type { TableData } from '../text/table.js';
import type { Block } from './blocks.js';
import { warmUpWords } from './buyerSheet.js';
import { MOST_OPTIONS, shownOptions } from './shownOptions.js';

const TALL = { width: 1000, height: 470 };
const FLAT = { width: 1000, height: 400 };
/** Of a drawing on a shop sheet [px]. */
const VIEW_HEIGHT = 440;
const ROWS = 12;
/**
 * An opening's two bars in their chart, each as high as the text behind it, and what stands above and below all of them
 * [px].
 */
const BARS = { each: 32, around: 178 };

/** Gas temperatures and flows on the side view. */
export function temperatureBlocks(
  result: EstimateResult,
  { title, state, width }: { title: string; state: SteadyState; width: number },
): Block[] {
  const scene = temperatureView(result, state, { width, maxHeight: VIEW_HEIGHT, title });
  return [
    {
      kind: 'figure',
      scene,
      caption: `${title}: gas by height and station, in bold what a thermometer reads there, and what flows in and out`,
    },
  ];
}

/** Charts with the numbers behind them, of the baseline; the warm-up of every option. */
export function chartBlocks(comparison: Comparison): Block[] {
  const { result } = baselineOf(comparison);
  const { design, steady, assumed } = result;
  const target = format('temperature', design.fire.target);
  const blocks: Block[] = [];
  const vents = ventChart(result, '');
  const shownOpenings = vents?.data.labels?.length ?? 0;
  const add = (config: unknown, size: typeof TALL, caption: string, description: string, data: TableData[]) => {
    if (!config) return;
    const scene = chartScene(config as ChartConfiguration, { ...size, bare: true, title: caption, description });
    blocks.push({ kind: 'figure', scene, caption }, ...data.map((table): Block => ({ kind: 'table', table })));
  };
  add(
    warmUpChart(result, '', 'thermometer'),
    TALL,
    'Warm-up: what a thermometer in each station reads',
    warmUpWords('It', result),
    [],
  );
  const curves = curveData(comparison);
  if (curves) blocks.push({ kind: 'table', table: curves });
  // without a state there is nothing to show of one
  if (!steady && !assumed) return blocks;
  add(
    heatLossChart(result, ''),
    FLAT,
    'Where the heat goes',
    `Most of it${steady ? ' while holding' : ' under the full fire'}: ${largestLoss(steady ?? assumed)}.`,
    [{ ...heatLossData(result, 'shop'), caption: 'Where the heat goes' }],
  );
  add(
    pressureChart(result, ''),
    TALL,
    'Pressure against outdoors along the way of the gas',
    'Below zero a gap draws air in, above zero it leaks smoke. The table beside it has the numbers.',
    [pressureData(result, target)],
  );
  add(
    vents,
    { width: 1000, height: BARS.around + BARS.each * shownOpenings },
    'What flows through each opening; of many, those that pass most',
    'The table beside it has the numbers.',
    [
      ...(steady ? [{ ...openingsData(steady, 'shop'), caption: `Openings while holding ${target}` }] : []),
      ...(assumed ? [{ ...openingsData(assumed, 'shop'), caption: 'Openings under the full fire' }] : []),
    ],
  );
  return blocks;
}

/** What the gauge of every option reads at round times. */
function curveData(comparison: Comparison): TableData | null {
  const shown = shownOptions(comparison).filter(({ result }) => (result.warmUp?.series.time_s.length ?? 0) > 1);
  if (shown.length === 0) return null;
  const end = Math.max(...shown.map(({ result }) => result.warmUp!.series.time_s.at(-1)!));
  const minutes = roundTicks(0, end / 60, ROWS).filter((minute) => minute <= end / 60 + 1e-9);
  const several = shown.length > 1;
  return {
    caption: `What the ${gaugeLabel(shown[0].result.design.gauge)} reads, by time from lighting the full fire`,
    head: ['time', ...shown.slice(0, MOST_OPTIONS).map(({ label }) => (several ? plainText(label, 26) : 'reading'))],
    rows: minutes.map((minute) => [
      `${minute} min`,
      ...shown.map(({ result }) => {
        const { time_s, thermometer_K } = result.warmUp!.series;
        return minute * 60 > time_s.at(-1)!
          ? '–'
          : format('temperature', interpolate(time_s, thermometer_K, minute * 60));
      }),
    ]),
  };
}

function pressureData({ steady, assumed }: EstimateResult, target: string): TableData {
  const path = (steady ?? assumed)!.pressurePath;
  const cell = (state: SteadyState, i: number) =>
    format('pressure', state.pressurePath[i]?.gauge_Pa ?? null, 'shop', { digits: 2 });
  return {
    caption: 'Pressure against outdoors at the same height',
    head: ['', ...(steady ? [`holding ${target}`] : []), ...(assumed ? ['full fire'] : [])],
    rows: path.map(({ where }, i) => [
      stationLabel(where),
      ...(steady ? [cell(steady, i)] : []),
      ...(assumed ? [cell(assumed, i)] : []),
    ]),
  };
}

function largestLoss(state: SteadyState | null): string {
  if (!state) return 'nothing settles';
  const { total, ...places } = state.heatLoss_W;
  const [place, watts] = Object.entries(places).sort((a, b) => b[1] - a[1])[0];
  const words: Record<string, string> = {
    stackWall: 'stack wall',
    stackGas: 'gas out of the stack',
    leaks: 'gaps, vents',
  };
  return `${words[place] ?? `${place} walls`} with ${format('power', watts)} of ${format('power', total)}`;
}
