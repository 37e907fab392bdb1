/** Where a text of a chart that is being drawn finds room: clear of curves, of dots and of the texts that stand there already. */
import type { Chart, LineElement } from 'chart.js';

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const standing = new WeakMap<Chart, Box[]>();

/** Others keep clear of it from now on. */
export function takeRoom(chart: Chart, box: Box): void {
  standing.set(chart, [...(standing.get(chart) ?? []), box]);
}

/** Places across a box at which curves are looked for are so far apart [px]. */
const STEP = 2;
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
  const line = dataset as unknown as LineElement;
  const thick = CLEAR + ((line.options.borderWidth as number | undefined) ?? 0) / 2;
  const [top, bottom] = [box.top - thick, box.bottom + thick];
  let before: number | null = null;
  for (let x = box.left - thick; x <= box.right + thick; x += STEP) {
    const found = x < data[0].x || x > data[data.length - 1].x ? undefined : line.interpolate({ x, y: 0 }, 'x');
    const heights = [found ?? []].flat().flatMap(({ y }) => (y !== null && Number.isFinite(y) ? [y] : []));
    // between two places the curve takes all heights between theirs
    const reach = [...heights, ...(before === null ? [] : [before])];
    if (heights.length > 0 && Math.min(...reach) < bottom && Math.max(...reach) > top) return true;
    before = heights[heights.length - 1] ?? null;
  }
  return false;
}

function dotBox(x: number, y: number, radius: number): Box {
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
