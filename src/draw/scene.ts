import type { FontWeight } from './textWidth.js';

/**
 * A picture as plain data: what charts and drawings are made of, before it becomes SVG, a page of a PDF or pixels. All three
 * then show the same. Units are CSS pixels, 96 to the inch; y runs downwards.
 */
export interface Scene {
  width: number;
  height: number;
  /** what the picture is, and what it shows, for those who can't see it */
  title: string;
  description: string;
  shapes: SceneShape[];
}

export type SceneShape = ScenePath | SceneText;

/** Absolute path commands: move, line, cubic curve, close. */
export type PathStep =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

export interface ScenePath {
  kind: 'path';
  steps: PathStep[];
  fill?: string;
  stroke?: string;
  /** of the stroke */
  width?: number;
  dash?: readonly number[];
  opacity?: number;
  round?: boolean;
}

export interface SceneText {
  kind: 'text';
  /** where the base line starts, is centred or ends, by `anchor` */
  x: number;
  y: number;
  text: string;
  size: number;
  weight: FontWeight;
  anchor: 'start' | 'middle' | 'end';
  colour: string;
  /** degrees, clockwise, about x and y */
  turn?: number;
}

type Stroke = Pick<ScenePath, 'fill' | 'stroke' | 'width' | 'dash' | 'opacity'>;

export function line(x1: number, y1: number, x2: number, y2: number, style: Stroke): ScenePath {
  return polyline([[x1, y1], [x2, y2]], style); // prettier-ignore
}

export function polyline(points: readonly (readonly [number, number])[], style: Stroke, closed = false): ScenePath {
  const steps = points.map(([x, y], i): PathStep => [i === 0 ? 'M' : 'L', x, y]);
  return { kind: 'path', steps: closed ? [...steps, ['Z']] : steps, ...style };
}

export function rectangle(x: number, y: number, width: number, height: number, style: Stroke): ScenePath {
  return polyline([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], style, true); // prettier-ignore
}

/** Handle length of a cubic curve that follows a quarter of a circle of radius 1. */
const QUARTER = (4 / 3) * Math.tan(Math.PI / 8);

export function circle(x: number, y: number, r: number, style: Stroke): ScenePath {
  const k = QUARTER * r;
  const steps: PathStep[] = [
    ['M', x + r, y],
    ['C', x + r, y + k, x + k, y + r, x, y + r],
    ['C', x - k, y + r, x - r, y + k, x - r, y],
    ['C', x - r, y - k, x - k, y - r, x, y - r],
    ['C', x + k, y - r, x + r, y - k, x + r, y],
    ['Z'],
  ];
  return { kind: 'path', steps, ...style };
}

/** A slim solid head of an arrow whose tip is at x, y and that points along `angle` [rad]. */
export function arrowHead(x: number, y: number, angle: number, colour: string, length = 7): ScenePath {
  const wing = (turn: number): [number, number] => [
    x - length * Math.cos(angle + turn),
    y - length * Math.sin(angle + turn),
  ];
  return polyline([[x, y], wing(0.26), wing(-0.26)], { fill: colour }, true);
}

/** A scene's shapes moved and scaled into another's; texts and strokes keep their sizes times `scale`. */
export function placed(
  shapes: SceneShape[],
  { x, y, scale = 1 }: { x: number; y: number; scale?: number },
): SceneShape[] {
  const px = (value: number) => x + value * scale;
  const py = (value: number) => y + value * scale;
  return shapes.map((shape) =>
    shape.kind === 'text'
      ? { ...shape, x: px(shape.x), y: py(shape.y), size: shape.size * scale }
      : {
          ...shape,
          ...(shape.width === undefined ? {} : { width: shape.width * scale }),
          ...(shape.dash === undefined ? {} : { dash: shape.dash.map((each) => each * scale) }),
          steps: shape.steps.map((step): PathStep => {
            if (step[0] === 'Z') return step;
            if (step[0] === 'C') {
              return ['C', px(step[1]), py(step[2]), px(step[3]), py(step[4]), px(step[5]), py(step[6])];
            }
            return [step[0], px(step[1]), py(step[2])];
          }),
        },
  );
}
