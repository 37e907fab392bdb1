import type { ChartConfiguration, ChartDataset, PointStyle } from 'chart.js';
import { roundTicks } from '../draw/ticks.js';
import { axis } from './axes.js';
import { baseOptions } from './base.js';
import { COLOURS, FAINT_INK, FONT_SIZE, INK } from '../draw/theme.js';

/** Pairs that share a colour and a line in the legend. */
export interface ScatterGroup {
  name: string;
  points: readonly { measured: number; computed: number }[];
}

interface ScatterSpec {
  title: string;
  subtitle: string;
  /** of both axes, such as `Flow` and `kg/s` */
  quantity: string;
  unit: string;
  groups: readonly ScatterGroup[];
  /** half width of the band about measured = computed: a share of it, or an amount */
  band: { share: number } | { amount: number };
  bandMeans: string;
  /** axes begin at zero unless told otherwise */
  from?: number;
}

/** One look a group, told by colour and by shape. */
const MARKS: readonly { colour: string; shape: PointStyle }[] = [
  { colour: COLOURS.blue, shape: 'circle' },
  { colour: COLOURS.vermilion, shape: 'rectRot' },
  { colour: COLOURS.green, shape: 'triangle' },
  { colour: COLOURS.purple, shape: 'rect' },
  { colour: COLOURS.orange, shape: 'star' },
];

/** Air above the highest value, so that no mark is cut. */
const ROOM = 1.03;

type XY = { x: number; y: number };
type LineSet = ChartDataset<'line', XY[]>;

/** Line from edge to edge of the plot, y = slope x + offset. */
function line(label: string, { slope, offset }: { slope: number; offset: number }, ends: [number, number]): LineSet {
  const [low, high] = ends;
  const inside = (x: number) => Math.min(high, Math.max(low, (x - offset) / slope));
  const agreement = slope === 1 && offset === 0;
  return {
    label,
    data: [inside(low), inside(high)].map((x) => ({ x, y: slope * x + offset })),
    borderColor: agreement ? INK : FAINT_INK,
    borderWidth: agreement ? 1.75 : 1.25,
    borderDash: agreement ? [] : [8, 5],
    pointStyle: 'line',
    pointRadius: 0,
  };
}

function marks({ name, points }: ScatterGroup, index: number): LineSet {
  const { colour, shape } = MARKS[index % MARKS.length];
  return {
    label: name,
    data: points.map(({ measured, computed }) => ({ x: measured, y: computed })),
    showLine: false,
    borderColor: colour,
    backgroundColor: `${colour}66`,
    pointStyle: shape,
    pointRadius: 6.5,
    pointBorderWidth: 1.75,
  };
}

/** The key of a chart whose groups can't carry their names themselves. */
const legendBelow = {
  display: true,
  position: 'bottom',
  labels: {
    usePointStyle: true,
    color: INK,
    font: { size: FONT_SIZE.label, weight: 500 },
    boxHeight: 9,
    padding: 16,
  },
} as const;

/** Computed against measured, with the line of agreement and a band about it. */
export function scatterChart(spec: ScatterSpec): ChartConfiguration<'line'> {
  const all = spec.groups.flatMap(({ points }) => points.flatMap((each) => [each.measured, each.computed]));
  const ticks = roundTicks(spec.from ?? 0, ROOM * Math.max(...all), 8);
  const ends: [number, number] = [ticks[0], ticks[ticks.length - 1]];
  const limits = { min: ends[0], max: ends[1] };
  const edge = (sign: number) =>
    'share' in spec.band
      ? { slope: 1 + sign * spec.band.share, offset: 0 }
      : { slope: 1, offset: sign * spec.band.amount };
  const datasets = [
    line('agreement', { slope: 1, offset: 0 }, ends),
    line(spec.bandMeans, edge(1), ends),
    line('', edge(-1), ends),
    ...spec.groups.map(marks),
  ];
  const filter = (item: { text: string }) => item.text !== '';
  return {
    type: 'line',
    data: { datasets },
    options: {
      ...baseOptions(spec.title, spec.subtitle, { ...legendBelow, labels: { ...legendBelow.labels, filter } }),
      parsing: false,
      scales: {
        x: axis('bottom', `Measured: ${spec.quantity} [${spec.unit}]`, ticks, limits),
        y: axis('left', `Computed: ${spec.quantity} [${spec.unit}]`, ticks, limits),
      },
    } as ChartConfiguration<'line'>['options'],
  };
}

interface HistorySpec {
  title: string;
  subtitle: string;
  quantity: string;
  unit: string;
  /** in minutes */
  series: readonly { name: string; measured?: boolean; dash?: number[]; points: readonly XY[] }[];
}

/** Measured points and computed lines against time. */
export function historyChart(spec: HistorySpec): ChartConfiguration<'line'> {
  const points = spec.series.flatMap((each) => each.points);
  const times = roundTicks(0, ROOM * Math.max(...points.map(({ x }) => x)), 8);
  const values = roundTicks(0, ROOM * Math.max(...points.map(({ y }) => y)), 6);
  const datasets = spec.series.map(({ name, measured, dash, points: data }, index): LineSet => {
    const { colour, shape } = MARKS[index % MARKS.length];
    return {
      label: name,
      data: [...data],
      showLine: !measured,
      borderColor: colour,
      backgroundColor: `${colour}66`,
      borderDash: dash ?? [],
      pointStyle: measured ? shape : 'line',
      pointRadius: measured ? 6.5 : 0,
      pointBorderWidth: 1.75,
    };
  });
  const ends = (ticks: number[]) => ({ min: ticks[0], max: ticks[ticks.length - 1] });
  return {
    type: 'line',
    data: { datasets },
    options: {
      ...baseOptions(spec.title, spec.subtitle, legendBelow),
      parsing: false,
      scales: {
        x: axis('bottom', 'Time [min]', times, ends(times)),
        y: axis('left', `${spec.quantity} [${spec.unit}]`, values, ends(values)),
      },
    } as ChartConfiguration<'line'>['options'],
  };
}
