/** Where the curves of a drawn chart run, read from the points that the chart library has laid out. */
import type { Chart } from 'chart.js';

/** A point as the library has laid it out, with what bends the line before and behind it. */
interface LaidPoint {
  x: number;
  y: number;
  /** the line breaks here */
  skip?: boolean;
  cp1y?: number;
  cp2y?: number;
}

/** Heights of a curve at places so far apart from `left` on; NaN where there is none. @param step [px] */
export function curveHeights(
  chart: Chart,
  index: number,
  { left, step, count }: { left: number; step: number; count: number },
): Float64Array {
  const points = chart.getDatasetMeta(index).data as unknown as LaidPoint[];
  const heights = new Float64Array(count).fill(NaN);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a.skip || b.skip || !(b.x > a.x)) continue;
    const first = Math.max(0, Math.ceil((a.x - left) / step));
    for (let at = first; at < count && left + at * step <= b.x; at++) {
      heights[at] = between(a, b, (left + at * step - a.x) / (b.x - a.x));
    }
  }
  return heights;
}

/**
 * A bend's handles stand a third of the way to the neighbour, so that a share of the way across is the bend's own
 * parameter.
 */
function between(a: LaidPoint, b: LaidPoint, t: number): number {
  const u = 1 - t;
  if (a.cp2y === undefined || b.cp1y === undefined) return u * a.y + t * b.y;
  return u * u * u * a.y + 3 * u * u * t * a.cp2y + 3 * u * t * t * b.cp1y + t * t * t * b.y;
}
