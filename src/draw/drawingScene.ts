import {
  fillColour,
  LINE_DASH,
  LINE_WIDTH,
  penColour,
  textColour,
  type Drawing,
  type Mark,
  type Paint,
} from './drawing.js';
import { circle, polyline, rectangle, type Scene, type SceneShape } from './scene.js';
import { textWidth } from './textWidth.js';
import { FAINT_INK, HEAT, INK, PAPER, SHADE } from './theme.js';

/** What a drawing's roles look like on paper. */
export const PAPER_PAINT: Paint = {
  ink: INK,
  faint: FAINT_INK,
  paper: PAPER,
  shade: SHADE,
  heat: (share) => heatColour(share),
  onHeat: (share) => (share > 0.55 ? PAPER : INK),
};

/** Colour of a share 0..1 of the temperature scale, mixed straight between the colours of a scale. */
export function heatColour(share: number, scale: readonly string[] = HEAT): string {
  const at = Math.min(1, Math.max(0, share)) * (scale.length - 1);
  const i = Math.min(scale.length - 2, Math.floor(at));
  const part = (colour: string, k: number) => parseInt(colour.slice(1 + 2 * k, 3 + 2 * k), 16);
  const mixed = [0, 1, 2].map((k) =>
    Math.round(part(scale[i], k) + (at - i) * (part(scale[i + 1], k) - part(scale[i], k))),
  );
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

/** A drawing's marks as a scene, so that it stands beside charts in a file, on paper and in a PDF. */
export function drawingScene(
  { width, height, marks }: Drawing,
  { title, description, paint = PAPER_PAINT }: { title: string; description: string; paint?: Paint },
): Scene {
  return { width, height, title, description, shapes: marks.flatMap((mark) => shapesOf(mark, paint)) };
}

function shapesOf(mark: Mark, paint: Paint): SceneShape[] {
  if (mark.shape === 'text') return textShapes(mark, paint);
  const style = {
    ...(mark.fill === undefined ? {} : { fill: fillColour(mark.fill, paint) }),
    ...(mark.pen === undefined
      ? {}
      : { stroke: penColour(mark.pen, paint), width: LINE_WIDTH[mark.pen], dash: LINE_DASH[mark.pen] }),
  };
  if (mark.shape === 'circle') return [circle(mark.x, mark.y, mark.radius, style)];
  return [{ ...polyline(mark.points, style, mark.closed), round: true }];
}

function textShapes(mark: Extract<Mark, { shape: 'text' }>, paint: Paint): SceneShape[] {
  const { x, y, text, size, align: anchor, upright, bold, rim, on } = mark;
  const weight = bold ? 600 : 400;
  // a drawing centres its texts on a point; the base line lies a third of the size below
  const down = size * 0.35;
  const [px, py] = upright ? [x + down, y] : [x, y + down];
  const turn = upright ? { turn: -90 } : {};
  const words: SceneShape = {
    kind: 'text',
    x: px,
    y: py,
    text,
    size,
    weight,
    anchor,
    colour: textColour(mark, paint),
    ...turn,
  };
  if (!rim) return [words];
  const long = textWidth(text, { size, weight }) + 4;
  const before = anchor === 'start' ? 2 : anchor === 'end' ? long - 2 : long / 2;
  const high = size * 1.1;
  const fill = fillColour(on ?? 'paper', paint);
  const patch = upright
    ? rectangle(x - high / 2, y - before, high, long, { fill })
    : rectangle(x - before, y - high / 2, long, high, { fill });
  return [patch, words];
}
