/**
 * Measures a picture as it is drawn: which texts lie over each other, over a curve, a bar or a dot, or reach beyond the
 * paper.
 */
import type { PathStep, Scene, ScenePath, SceneText } from '../../src/draw/scene.js';
import { textWidth } from '../../src/draw/textWidth.js';
import { COLOURS, FAINT_INK, INK, PAPER } from '../../src/draw/theme.js';

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

type Point = readonly [x: number, y: number];

/**
 * Of a font: how high its capitals and ascenders reach above the base line, and tails below it, as shares of its size.
 */
const ABOVE = 0.72;
const BELOW = 0.2;
/** Texts and curves that only touch [px]. */
const TOUCH = 0.75;
/** Lines from a curve's end to its name are thinner than any curve [px]. */
const LEAST_CURVE = 1.75;
/** Largest dot that stands for a reading [px]. */
const DOT = 14;
/** Pieces that a bend is measured by. */
const PIECES = 12;

/** @param also colours of curves beside the palette: a line of ink is a curve where a chart says so */
export function overlapsIn({ shapes, width, height }: Scene, also: readonly string[] = []): string[] {
  const texts = shapes.flatMap((shape) => (shape.kind === 'text' ? [{ text: shape.text, box: boxOf(shape) }] : []));
  const data = new Set<string>([...Object.values(COLOURS), ...also]);
  const paths = shapes.flatMap((shape) => (shape.kind === 'path' ? [shape] : []));
  const curves = paths.filter(({ stroke, width: thick = 1 }) => stroke && data.has(stroke) && thick >= LEAST_CURVE);
  // from a text to the level line that it speaks of
  const leads = paths.filter(
    ({ stroke, width: thick, dash, steps }) =>
      stroke === INK && thick === 1 && !dash && steps.length === 2 && steps[0][1] === steps[1][1],
  );
  const areas = paths.flatMap((path) => (isSolid(path) ? [extent(pointsOf(path.steps).flat())] : []));
  const dots = areas.filter(({ left, right }) => right - left <= DOT);
  const bars = areas.filter(({ left, right }) => right - left > DOT);
  return texts.flatMap(({ text, box }, i) => {
    const inner = {
      left: box.left + TOUCH,
      top: box.top + TOUCH,
      right: box.right - TOUCH,
      bottom: box.bottom - TOUCH,
    };
    const at = `'${text}' at ${Math.round(box.left)}, ${Math.round(box.top)}`;
    return [
      ...(box.left < -1 || box.top < -1 || box.right > width + 1 || box.bottom > height + 1
        ? [`${at} reaches beyond the paper`]
        : []),
      ...texts.slice(i + 1).flatMap((other) => (meet(inner, other.box) ? [`${at} lies over '${other.text}'`] : [])),
      ...curves.flatMap(({ steps, stroke, width: thick = 1 }) =>
        pointsOf(steps).some((piece) => crosses(piece, grown(inner, thick / 2)))
          ? [`${at} covers a curve ${stroke}`]
          : [],
      ),
      ...(bars.some((bar) => meet(inner, bar)) ? [`${at} lies over a bar`] : []),
      ...(leads.some(({ steps }) => pointsOf(steps).some((piece) => crosses(piece, inner)))
        ? [`${at} is crossed by a lead`]
        : []),
      ...(dots.some((dot) => meet(inner, dot)) ? [`${at} covers a dot`] : []),
    ];
  });

  function isSolid({ fill, opacity = 1 }: ScenePath): boolean {
    return fill !== undefined && opacity === 1 && fill !== PAPER && (data.has(fill) || fill === FAINT_INK);
  }
}

function boxOf({ x, y, text, size, weight, anchor, turn = 0 }: SceneText): Box {
  const wide = textWidth(text, { size, weight });
  const left = anchor === 'start' ? 0 : anchor === 'middle' ? -wide / 2 : -wide;
  const radians = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
  const corners = [left, left + wide].flatMap((across) =>
    [-ABOVE * size, BELOW * size].map((down): Point => [x + across * cos - down * sin, y + across * sin + down * cos]),
  );
  return extent(corners);
}

function extent(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function grown({ left, top, right, bottom }: Box, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** The straight pieces of a path, a list a stroke of the pen. */
function pointsOf(steps: readonly PathStep[]): Point[][] {
  const strokes: Point[][] = [];
  for (const step of steps) {
    if (step[0] === 'M') strokes.push([[step[1], step[2]]]);
    else if (step[0] === 'L') strokes.at(-1)!.push([step[1], step[2]]);
    else if (step[0] === 'C') {
      const stroke = strokes.at(-1)!;
      const [x0, y0] = stroke.at(-1)!;
      const [, x1, y1, x2, y2, x3, y3] = step;
      for (let i = 1; i <= PIECES; i++) {
        const [t, u] = [i / PIECES, 1 - i / PIECES];
        const mix = (a: number, b: number, c: number, d: number) =>
          u ** 3 * a + 3 * u * u * t * b + 3 * u * t * t * c + t ** 3 * d;
        stroke.push([mix(x0, x1, x2, x3), mix(y0, y1, y2, y3)]);
      }
    } else strokes.at(-1)!.push(strokes.at(-1)![0]);
  }
  return strokes;
}

/** Does a line of straight pieces enter a box? Liang and Barsky's clipping, piece by piece. */
function crosses(points: readonly Point[], { left, top, right, bottom }: Box): boolean {
  return points.some(([x, y], i) => {
    if (i === 0) return false;
    const [x0, y0] = points[i - 1];
    const [dx, dy] = [x - x0, y - y0];
    let [from, to] = [0, 1];
    for (const [p, q] of [
      [-dx, x0 - left],
      [dx, right - x0],
      [-dy, y0 - top],
      [dy, bottom - y0],
    ]) {
      if (p === 0 && q <= 0) return false;
      if (p < 0) from = Math.max(from, q / p);
      if (p > 0) to = Math.min(to, q / p);
    }
    return from < to;
  });
}
