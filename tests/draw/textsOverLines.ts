/** Measures a drawing of a pit: which of its texts lie over the outline of a part. */
import { LINE_WIDTH } from '../../src/draw/drawing.js';
import type { PathStep, Scene, ScenePath, SceneText } from '../../src/draw/scene.js';
import { textWidth } from '../../src/draw/textWidth.js';

type Point = readonly [x: number, y: number];

/** Of a font: how high its capitals reach above the base line, and tails below it, as shares of its size. */
const ABOVE = 0.72;
const BELOW = 0.2;
/** Places along a line that are looked at [px]. */
const STEP = 0.5;

/** Texts that the outline of a part runs through, where nothing that is drawn later covers it. */
export function textsOverLines({ shapes }: Scene): string[] {
  const texts = shapes.flatMap((shape, at) => (shape.kind === 'text' ? [{ shape, at }] : []));
  const paths = shapes.flatMap((shape, at) => (shape.kind === 'path' ? [{ shape, at }] : []));
  const outlines = paths.filter(({ shape }) => shape.stroke && shape.width === LINE_WIDTH.outline);
  return texts.flatMap(({ shape: text, at: written }) => {
    const box = boxOf(text);
    const strikes = outlines.some(({ shape: line, at }) => {
      const struck = placesOn(line).filter(([x, y]) => x > box.left && x < box.right && y > box.top && y < box.bottom);
      // the paper under the text itself covers nothing: a line that a text breaks is a line that it strikes
      const later = paths.filter(({ shape, at: when }) => when > at && when < written - 1 && shape.fill !== undefined);
      return struck.some((place) => !later.some(({ shape }) => contains(shape, place)));
    });
    return strikes ? [`'${text.text}' at ${Math.round(text.x)}, ${Math.round(text.y)}`] : [];
  });
}

function boxOf({ x, y, text, size, weight, anchor, turn }: SceneText) {
  const wide = textWidth(text, { size, weight });
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? wide / 2 : wide;
  return turn === undefined
    ? { left: x - before, right: x - before + wide, top: y - ABOVE * size, bottom: y + BELOW * size }
    : { left: x - ABOVE * size, right: x + BELOW * size, top: y - wide + before, bottom: y + before };
}

function cornersOf(steps: readonly PathStep[]): Point[] {
  return steps.flatMap((step): Point[] => (step[0] === 'Z' ? [] : [step.slice(-2) as unknown as Point]));
}

function placesOn({ steps }: ScenePath): Point[] {
  const corners = cornersOf(steps);
  const ends = steps.at(-1)?.[0] === 'Z' ? [...corners, corners[0]] : corners;
  return ends.slice(1).flatMap(([x, y], i) => {
    const [x0, y0] = ends[i];
    const count = Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0) / STEP));
    return Array.from({ length: count + 1 }, (_, k): Point => [
      x0 + (k / count) * (x - x0),
      y0 + (k / count) * (y - y0),
    ]);
  });
}

/** A place on the rim of what covers it is covered by no more than half. */
function contains({ steps }: ScenePath, [x, y]: Point): boolean {
  const corners = cornersOf(steps);
  let inside = false;
  corners.forEach(([x1, y1], i) => {
    const [x0, y0] = corners[(i + corners.length - 1) % corners.length];
    if (y1 > y !== y0 > y && x < ((x0 - x1) * (y - y1)) / (y0 - y1) + x1) inside = !inside;
  });
  return inside;
}
