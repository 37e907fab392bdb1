import type { ChartConfiguration } from 'chart.js';
import { chartScene } from '../charts/chartScene.js';
import { heatLossChart } from '../charts/heatLossChart.js';
import { stationLabel } from '../charts/labels.js';
import { plainText } from '../charts/plainText.js';
import { pressureChart } from '../charts/pressureChart.js';
import { warmUpChart } from '../charts/warmUpChart.js';
import type { EstimateResult } from '../study/result.js';
import { format } from '../units.js';
import { element, setText } from './dom.js';
import { pageColour } from './look.js';
import { optionsChart } from './optionsChart.js';
import { sceneElement } from './sceneView.js';
import type { Option, Workbench } from './workbench.js';

export const CHARTS = [
  { id: 'thermometer', label: 'Thermometers' },
  { id: 'steel', label: 'Steel' },
  { id: 'gas', label: 'Gas' },
  { id: 'loss', label: 'Heat loss' },
  { id: 'draft', label: 'Draft' },
  { id: 'options', label: 'Options together' },
] as const;

export type ChartId = (typeof CHARTS)[number]['id'];

/** Space beside a plot that axes and margins take, about [px]. */
const BESIDE_PLOT = 150;

function configOf(id: ChartId, bench: Workbench, result: EstimateResult, width: number): ChartConfiguration | null {
  const plot = width - BESIDE_PLOT;
  switch (id) {
    case 'options':
      return optionsChart(bench.options, plot);
    case 'loss':
      return heatLossChart(result, '') as ChartConfiguration | null;
    case 'draft':
      return pressureChart(result, '') as ChartConfiguration | null;
    default:
      return warmUpChart(result, '', id, plot) as ChartConfiguration | null;
  }
}

/** The curves of the current option, or of all, as a picture and as a table. */
export class ChartsView {
  chosen: ChartId = 'thermometer';

  constructor(
    private readonly picture: HTMLElement,
    private readonly caption: HTMLElement,
    private readonly table: HTMLTableElement,
  ) {}

  update(bench: Workbench): void {
    const result = bench.current.full;
    if (!result) return;
    const width = Math.max(280, Math.floor(this.picture.clientWidth));
    const config = configOf(this.chosen, bench, result, width);
    if (!config) {
      this.picture.replaceChildren(element('p', {}, 'There is nothing to draw: the warnings say why.'));
      this.table.replaceChildren();
      setText(this.caption, '');
      return;
    }
    const label = CHARTS.find(({ id }) => id === this.chosen)?.label ?? '';
    const subtitle = String(config.options?.plugins?.subtitle?.text ?? '');
    setText(this.caption, subtitle);
    const scene = chartScene(config, {
      width,
      height: Math.round(Math.min(460, Math.max(300, width * 0.62))),
      bare: true,
      title: label,
      description: subtitle,
    });
    this.picture.replaceChildren(sceneElement(scene, pageColour));
    if (this.table.closest('details')?.open) this.tabulate(bench);
  }

  /** The same numbers as a table, for those who can't see the picture. */
  tabulate(bench: Workbench): void {
    const result = bench.current.full;
    const rows = result ? tableOf(this.chosen, bench.options, result) : [];
    const [head = [], ...body] = rows;
    this.table.replaceChildren(
      element('thead', {}, element('tr', {}, ...head.map((text) => element('th', { scope: 'col' }, text)))),
      element(
        'tbody',
        {},
        ...body.map(([first, ...rest]) =>
          element('tr', {}, element('th', { scope: 'row' }, first), ...rest.map((text) => element('td', {}, text))),
        ),
      ),
    );
  }
}

/** Rows shown of a curve at most. */
const MOST_ROWS = 25;

function tableOf(id: ChartId, options: readonly Option[], result: EstimateResult): string[][] {
  const degrees = (kelvin: number) => format('temperature', kelvin);
  if (id === 'loss' || id === 'draft') return stateTable(id, result);
  if (id === 'options') {
    return [
      ['', 'first reads the target', 'soaked'],
      ...options.map(({ label, full }) => [
        plainText(label, 40),
        full?.warmUp?.gauge_s == null ? 'never' : format('time', full.warmUp.gauge_s),
        full?.warmUp?.soaked_s == null ? 'never' : format('time', full.warmUp.soaked_s),
      ]),
    ];
  }
  const series = result.warmUp?.series;
  if (!series) return [];
  const key = `${id}_K` as const;
  const every = Math.max(1, Math.ceil(series.time_s.length / MOST_ROWS));
  const picks = series.time_s.map((_, i) => i).filter((i) => i % every === 0 || i === series.time_s.length - 1);
  return [
    ['time', ...series.stations.map(({ name }) => stationLabel(name))],
    ...picks.map((i) => [
      format('time', series.time_s[i], 'shop', { unit: 'min' }),
      ...series.stations.map((station) => degrees(station[key][i])),
    ]),
  ];
}

function stateTable(id: 'loss' | 'draft', { steady, assumed }: EstimateResult): string[][] {
  const states = [
    ...(steady ? [{ head: 'holding', state: steady }] : []),
    ...(assumed ? [{ head: 'full fire', state: assumed }] : []),
  ];
  const head = ['', ...states.map((each) => each.head)];
  if (states.length === 0) return [];
  if (id === 'draft') {
    return [
      head,
      ...states[0].state.pressurePath.map(({ where }, i) => [
        stationLabel(where),
        ...states.map(({ state }) => format('pressure', state.pressurePath[i].gauge_Pa, 'shop', { digits: 2 })),
      ]),
    ];
  }
  const places = Object.keys(states[0].state.heatLoss_W) as (keyof (typeof states)[0]['state']['heatLoss_W'])[];
  return [
    head,
    ...places.map((place) => [place, ...states.map(({ state }) => format('power', state.heatLoss_W[place]))]),
  ];
}
