import type { Scene, SceneShape } from '../draw/scene.js';
import { FONT_STACK } from '../draw/theme.js';

const SVG = 'http://www.w3.org/2000/svg';

/** A scene as elements of this document, made one by one: no text of it is ever read as markup. */
export function sceneElement(scene: Scene, colour: (name: string) => string = (name) => name): SVGSVGElement {
  const svg = make('svg', {
    viewBox: `0 0 ${tidy(scene.width)} ${tidy(scene.height)}`,
    width: tidy(scene.width),
    height: tidy(scene.height),
    role: 'img',
    'aria-label': `${scene.title}. ${scene.description}`,
    'font-family': FONT_STACK,
  }) as SVGSVGElement;
  svg.append(...scene.shapes.map((shape) => shapeElement(shape, colour)));
  return svg;
}

/** A piece of a curve, to tell it by beside its name. */
export function swatch(colour: string, dash: readonly number[]): SVGSVGElement {
  const svg = make('svg', { width: '26', height: '10', viewBox: '0 0 26 10', 'aria-hidden': 'true' }) as SVGSVGElement;
  const line = { d: 'M1 5H25', stroke: colour, 'stroke-width': '2.5', 'stroke-dasharray': dash.join(' ') || 'none' };
  svg.append(make('path', line));
  return svg;
}

function shapeElement(shape: SceneShape, colour: (name: string) => string): SVGElement {
  if (shape.kind === 'text') {
    const { x, y, text, size, weight, anchor, turn } = shape;
    const made = make('text', {
      x: tidy(x),
      y: tidy(y),
      'font-size': tidy(size),
      'font-weight': String(weight),
      'text-anchor': anchor,
      fill: colour(shape.colour),
      ...(turn === undefined ? {} : { transform: `rotate(${turn} ${tidy(x)} ${tidy(y)})` }),
    });
    made.textContent = text;
    return made;
  }
  const { steps, fill, stroke, width = 1, dash = [], opacity, round } = shape;
  return make('path', {
    d: steps.map(([command, ...numbers]) => command + numbers.map(tidy).join(' ')).join(''),
    fill: fill ? colour(fill) : 'none',
    ...(stroke ? { stroke: colour(stroke), 'stroke-width': tidy(width) } : {}),
    ...(stroke && dash.length > 0 ? { 'stroke-dasharray': dash.map(tidy).join(' ') } : {}),
    ...(opacity === undefined ? {} : { opacity: tidy(opacity) }),
    ...(round ? { 'stroke-linecap': 'round', 'stroke-linejoin': 'round' } : {}),
  });
}

/** A new element of SVG. */
export function make(tag: string, attributes: Record<string, string>): SVGElement {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}

function tidy(value: number): string {
  return String(Math.round(value * 100) / 100);
}
