import { held } from '../study/quantities.js';
import { wordsOf } from '../words/quantityWords.js';
import type { ChartConfiguration, ChartDataset } from 'chart.js';
import type { StackCurve } from '../study/size/curves.js';
import type { SizeChoice, SizeResult } from '../study/size/size.js';
import { convert, format } from '../units/index.js';
import { axis, twinAxes } from './axes.js';
import { baseOptions } from './base.js';
import { endLabels } from './endLabels.js';
import type { NamedChart } from './estimateCharts.js';
import { ventCurveChart } from './ventCurveChart.js';
import { markLines, type MarkLine } from './markLines.js';
import { plainText } from '../words/plainText.js';
import { COLOURS, type LineStyle } from '../draw/theme.js';

const LONGEST_NAME = 40;

/** One style a tube, narrow to wide. */
const STYLES: LineStyle[] = [
  { colour: COLOURS.vermilion, dash: [2, 4] },
  { colour: COLOURS.orange, dash: [4, 3] },
  { colour: COLOURS.green, dash: [7, 4] },
  { colour: COLOURS.blue, dash: [] },
  { colour: COLOURS.purple, dash: [12, 4] },
  { colour: COLOURS.sky, dash: [12, 4, 3, 4] },
  { colour: COLOURS.vermilion, dash: [12, 4] },
];

/** Room at the right for the lines' names, as a share of the plot. */
const NAMES = 0.16;

/** Draft and air against height for every tube, and the vent curve, of the size that was chosen or comes nearest. */
export function sizeCharts(result: SizeResult): NamedChart[] {
  const { curves, choices } = result;
  if (!curves || choices.length === 0) return [];
  const name = plainText(result.design.name, LONGEST_NAME);
  const [choice] = choices;
  const charts: [string, unknown][] = [
    [
      'stack-draft',
      stackChart(curves.stacks, choice, {
        title: `${name}: ${wordsOf(held('stackBase_Pa'), 'row')} under the full fire`,
        quantity: wordsOf(held('stackBase_Pa'), 'page'),
        kind: 'pressure',
        values: ({ draft_Pa }) => draft_Pa,
        marks: [{ value: 0, text: 'below zero the pit pushes smoke out under the stack' }],
      }),
    ],
    [
      'stack-air',
      stackChart(curves.stacks, choice, {
        title: `${name}: ${wordsOf(held('air_kg_per_s'), 'row')} under the full fire`,
        quantity: wordsOf(held('air_kg_per_s'), 'page'),
        kind: 'massFlow',
        values: ({ air_kg_per_s }) => air_kg_per_s,
        marks: leastAir(result, curves.stacks),
      }),
    ],
    [
      'vent-curve',
      ventCurveChart(curves.vents, {
        name,
        of: `${result.chosen === null ? 'nearest size' : 'chosen size'}: ${choice.stack.name}, ${format('length', choice.stack.height_m)} high; `,
        target: result.wanted.target_K,
        holds: choice.intakes.holdOpening,
      }),
    ],
  ];
  return charts.map(([file, config]) => ({ file, config: config as ChartConfiguration }));
}

/** The least air that the full fire should get, from what a solved point got and how many times too much that was. */
function leastAir({ wanted }: SizeResult, stacks: StackCurve[]): { value: number; text: string }[] {
  const least = wanted.limits.find(({ key }) => key === 'air')!.low!;
  for (const { air_kg_per_s: air, letInRatio: ratio } of stacks) {
    const i = air.findIndex((value, at) => value !== null && (ratio[at] ?? 0) > least);
    if (i >= 0) return [{ value: (air[i]! * least) / ratio[i]!, text: `${least} times what the full fire needs` }];
  }
  return [];
}

function stackChart(
  stacks: StackCurve[],
  choice: SizeChoice,
  what: {
    title: string;
    quantity: string;
    kind: 'pressure' | 'massFlow';
    values: (curve: StackCurve) => (number | null)[];
    marks: { value: number; text: string }[];
  },
): ChartConfiguration<'line'> {
  const { title, quantity, kind, values, marks } = what;
  const inches = (metres: number) => convert('length', metres, 'shop');
  const all = stacks.flatMap((curve) => values(curve).filter((value) => value !== null));
  const marked = marks.map(({ value }) => value);
  const scale = twinAxes(quantity, kind, { low: Math.min(...all, ...marked), high: Math.max(...all, ...marked) });
  const ticks = stacks[0].height_m.map(inches).map((value) => Math.round(value));
  const [first, last] = [ticks[0], ticks[ticks.length - 1]];
  const { stack } = choice;
  const base = baseOptions(
    title,
    `round tube, with the throat and intakes of ${stack.name}, ${format('length', stack.height_m)} high; intakes wide open`,
  );
  const lines: MarkLine[] = [
    ...marks.map(({ value, text }): MarkLine => ({
      axis: 'y',
      value: convert(kind, value, 'shop'),
      text,
      dash: [10, 4],
    })),
    { axis: 'x', value: inches(stack.height_m), text: stack.name, dash: [3, 3] },
  ];
  return {
    type: 'line',
    data: {
      datasets: stacks.map((curve, i): ChartDataset<'line', { x: number; y: number }[]> => ({
        label: curve.stack,
        data: values(curve).flatMap((value, at) =>
          value === null ? [] : [{ x: inches(curve.height_m[at]), y: convert(kind, value, 'shop') }],
        ),
        borderColor: STYLES[i % STYLES.length].colour,
        borderDash: STYLES[i % STYLES.length].dash,
        borderWidth: curve.stack === stack.name ? 3.5 : 2.25,
        pointRadius: 0,
      })),
    },
    plugins: [
      endLabels(
        stacks.map((curve, dataset) => ({
          dataset,
          text: curve.stack.replace(/,.*/, ''),
          colour: STYLES[dataset % STYLES.length].colour,
        })),
      ),
      markLines(lines),
    ],
    options: {
      ...base,
      parsing: false,
      scales: {
        x: axis('bottom', 'Height of the stack [in]', ticks, { min: first, max: first + (last - first) / (1 - NAMES) }),
        y: scale.main,
        ...scale.beside,
      },
    } as ChartConfiguration<'line'>['options'],
  };
}
