import type { FontWeight } from './textWidth.js';

/**
 * A picture as plain data: what charts and drawings are made of, before it becomes SVG, a page of a PDF or pixels. All
 * three then show the same. Units are CSS pixels, 96 to the inch; y runs downwards.
 */
export interface Scene {
  width: number;
  height: number;
  /** what the picture is, and what it shows, for those who can't see it */
  title: string;
  description: string;
  shapes: SceneShape[];
}

/** What a scene is made of. */
export type SceneShape = ScenePath | SceneText;

/** Absolute path commands: move, line, cubic curve, close. */
export type PathStep =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** Lines and bends, filled or drawn along; lengths in px. */
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

/** One line of letters; lengths in px. */
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

/** A straight line. */
export function line(x1: number, y1: number, x2: number, y2: number, style: Stroke): ScenePath {
  return polyline([[x1, y1], [x2, y2]], style); // prettier-ignore
}

/** Lines from point to point. */
export function polyline(points: readonly (readonly [number, number])[], style: Stroke, closed = false): ScenePath {
  const steps = points.map(([x, y], i): PathStep => [i === 0 ? 'M' : 'L', x, y]);
  return { kind: 'path', steps: closed ? [...steps, ['Z']] : steps, ...style };
}

/** A rectangle from its left upper corner. */
export function rectangle(x: number, y: number, width: number, height: number, style: Stroke): ScenePath {
  return polyline([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], style, true); // prettier-ignore
}

/** Handle length of a cubic curve that follows a quarter of a circle of radius 1. */
const QUARTER = (4 / 3) * Math.tan(Math.PI / 8);

/** A circle round its middle. */
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
