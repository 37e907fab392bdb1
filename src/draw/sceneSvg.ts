import { plainText } from '../words/plainText.js';
import type { PathStep, Scene, SceneShape } from './scene.js';
import { FONT_FAMILY, FONT_STACK } from './theme.js';

/** Text made inert in HTML and XML: no markup, no control characters, none that reorder what stands beside them. */
export function escapeMarkup(text: string): string {
  return plainText(text, Infinity)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/**
 * A scene as SVG, which reads without scripts, styles or files.
 *
 * @param options.id unique in the document that takes it: title and description are tied to the picture by it
 * @param options.standalone a file of its own: with namespace, size, white paper and the font (WOFF2 in base64, one a
 * weight)
 */
export function sceneSvg(
  scene: Scene,
  options: { id: string; standalone?: { fonts: { weight: number; base64: string }[] } },
): string {
  const { width, height, title, description, shapes } = scene;
  const { id, standalone } = options;
  const size = standalone ? ` xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"` : '';
  return [
    `<svg${size} viewBox="0 0 ${round(width)} ${round(height)}" role="img" aria-labelledby="${id}-t ${id}-d" ` +
      `font-family="${escapeMarkup(FONT_STACK)}">`,
    `<title id="${id}-t">${escapeMarkup(title)}</title><desc id="${id}-d">${escapeMarkup(description)}</desc>`,
    ...(standalone ? [`<style>${standalone.fonts.map(fontFace).join('')}</style>`] : []),
    ...(standalone ? [`<rect width="${width}" height="${height}" fill="#ffffff"/>`] : []),
    ...shapes.map(shapeSvg),
    '</svg>',
  ].join('\n');
}

/** A font that a document carries within, as CSS. */
export function fontFace({ weight, base64 }: { weight: number; base64: string }): string {
  return `@font-face{font-family:${FONT_FAMILY};font-weight:${weight};src:url(data:font/woff2;base64,${base64}) format("woff2")}`;
}

function shapeSvg(shape: SceneShape): string {
  if (shape.kind === 'text') {
    const { x, y, text, size, weight, anchor, colour, turn } = shape;
    const turned = turn === undefined ? '' : ` transform="rotate(${turn} ${round(x)} ${round(y)})"`;
    const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
    return (
      `<text x="${round(x)}" y="${round(y)}" font-size="${round(size)}" font-weight="${weight}" ` +
      `fill="${escapeMarkup(colour)}"${anchored}${turned}>${escapeMarkup(text)}</text>`
    );
  }
  const { steps, fill, stroke, width = 1, dash, opacity, round: rounded } = shape;
  const stroked = stroke
    ? ` stroke="${escapeMarkup(stroke)}" stroke-width="${round(width)}"` +
      (dash && dash.length > 0 ? ` stroke-dasharray="${dash.map(round).join(' ')}"` : '') +
      (rounded ? ' stroke-linecap="round" stroke-linejoin="round"' : '')
    : '';
  const clear = opacity === undefined ? '' : ` opacity="${round(opacity)}"`;
  return `<path d="${steps.map(stepSvg).join('')}" fill="${fill ? escapeMarkup(fill) : 'none'}"${stroked}${clear}/>`;
}

function stepSvg(step: PathStep): string {
  const [command, ...numbers] = step;
  return command + numbers.map(round).join(' ');
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
