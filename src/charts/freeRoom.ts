/**
 * Where a text of a chart that is being drawn finds room: clear of curves, of dots and of the texts that stand there
 * already.
 */
import type { Chart } from 'chart.js';
import { meet, type Box } from '../draw/box.js';
import { curveHeights } from './drawnCurve.js';

const standing = new WeakMap<Chart, Box[]>();

/** Others keep clear of it from now on. */
export function takeRoom(chart: Chart, box: Box): void {
  standing.set(chart, [...(standing.get(chart) ?? []), box]);
}

/** Curves are looked for in columns so wide [px]. */
const COLUMN = 1;
/** Clear paper between a text and a curve [px]. */
const CLEAR = 2;

/** How many texts stand in a box. */
export function textsIn(chart: Chart, box: Box): number {
  return (standing.get(chart) ?? []).filter((other) => meet(box, other)).length;
}

/** How many texts, curves and dots a text in this box would cover. */
export function coveredBy(chart: Chart, box: Box): number {
  return (
    textsIn(chart, box) +
    chart.data.datasets.filter((_, i) => chart.isDatasetVisible(i) && covers(chart, i, box)).length
  );
}

function covers(chart: Chart, index: number, box: Box): boolean {
  const { data, dataset } = chart.getDatasetMeta(index);
  const { showLine = true, pointRadius = 0 } = chart.data.datasets[index] as {
    showLine?: boolean;
    pointRadius?: number;
  };
  if (pointRadius > 0 && data.some(({ x, y }) => meet(box, dotBox(x, y, pointRadius)))) return true;
  if (!showLine || !dataset || data.length === 0) return false;
  const thick = CLEAR + ((dataset.options.borderWidth as number | undefined) ?? 0) / 2;
  const [top, bottom] = [box.top - thick, box.bottom + thick];
  const { highest, lowest } = reachOf(chart, index);
  const columnAt = (x: number) => Math.floor((x - chart.chartArea.left) / COLUMN);
  const last = Math.min(highest.length - 1, columnAt(box.right + thick));
  for (let i = Math.max(0, columnAt(box.left - thick)); i <= last; i++) {
    if (highest[i] < bottom && lowest[i] > top) return true;
  }
  return false;
}

/**
 * Heights between which a curve runs in each column of the plot, downwards as pixels are; none where there is no curve.
 */
interface Reach {
  highest: Float64Array;
  lowest: Float64Array;
}

const reaches = new WeakMap<Chart, Reach[]>();

/** Looked up once a curve: a text tries thousands of places. */
function reachOf(chart: Chart, index: number): Reach {
  const known = reaches.get(chart) ?? [];
  reaches.set(chart, known);
  return (known[index] ??= reach(chart, index));
}

function reach(chart: Chart, index: number): Reach {
  const { left, right } = chart.chartArea;
  const count = Math.ceil((right - left) / COLUMN) + 1;
  const heights = curveHeights(chart, index, { left, step: COLUMN, count });
  const [highest, lowest] = [heights.slice(), heights.slice()];
  for (let i = 0; i + 1 < count; i++) {
    // a curve ends within a column, or fills it
    highest[i] = Math.min(heights[i], heights[i + 1]) || highest[i];
    lowest[i] = Math.max(heights[i], heights[i + 1]) || lowest[i];
  }
  return { highest, lowest };
}

function dotBox(x: number, y: number, radius: number): Box {
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
}
