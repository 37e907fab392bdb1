/**
 * A line drawing as plain marks, in pixels, y downwards: made once and painted as SVG text, on a canvas or in a PDF.
 * Colours are roles; whoever paints says what each role looks like, so that screen, print and dark screen agree.
 */

/** How a line is drawn. */
export type Pen = 'outline' | 'thin' | 'hidden' | 'dimension';

/** What fills a shape: a role, or a share 0..1 of the temperature scale. */
export type Fill = 'paper' | 'shade' | 'ink' | { heat: number };

export type Mark =
  | { shape: 'line'; points: readonly (readonly [number, number])[]; closed?: boolean; pen?: Pen; fill?: Fill }
  | { shape: 'circle'; x: number; y: number; radius: number; pen?: Pen; fill?: Fill }
  | {
      shape: 'text';
      x: number;
      y: number;
      text: string;
      size: number;
      align: 'start' | 'middle' | 'end';
      /** reads upwards */
      upright?: boolean;
      bold?: boolean;
      faint?: boolean;
      /** a rim of paper round the letters, where they cross lines */
      rim?: boolean;
      /** the fill that the text stands on, which decides whether it's dark or light */
      on?: Fill;
    };

export interface Drawing {
  width: number;
  height: number;
  marks: Mark[];
}

/** What the roles look like. Any CSS colour; for a page with two looks, custom properties. */
export interface Paint {
  ink: string;
  faint: string;
  paper: string;
  shade: string;
  font: string;
  /** colour of a share 0..1 of the temperature scale, and of text that stands on it */
  heat(share: number): string;
  onHeat(share: number): string;
}

export const LINE_WIDTH: Record<Pen, number> = { outline: 2, thin: 1, hidden: 1, dimension: 0.8 };
export const LINE_DASH: Record<Pen, readonly number[]> = { outline: [], thin: [], hidden: [5, 3], dimension: [] };

/** Colour that a fill comes to. */
export function fillColour(fill: Fill | undefined, paint: Paint): string {
  if (fill === undefined) return 'none';
  return typeof fill === 'string' ? paint[fill] : paint.heat(fill.heat);
}

/** Colour of a line's pen. */
export function penColour(pen: Pen | undefined, paint: Paint): string {
  if (pen === undefined) return 'none';
  return pen === 'dimension' ? paint.faint : paint.ink;
}

/** Colour of a text: by what it stands on. */
export function textColour(mark: Extract<Mark, { shape: 'text' }>, paint: Paint): string {
  if (typeof mark.on === 'object') return paint.onHeat(mark.on.heat);
  return mark.faint ? paint.faint : paint.ink;
}

/**
 * A drawing as the text of one SVG element, with presentation attributes alone: no script, no style sheet, nothing from
 * outside.
 *
 * @param label what a screen reader says in its place
 */
export function drawingSvg({ width, height, marks }: Drawing, paint: Paint, label: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round(width)} ${round(height)}" width="${round(width)}"`,
    ` height="${round(height)}" role="img" aria-label="${escapeXml(label)}" font-family="${escapeXml(paint.font)}"`,
    ` stroke-linejoin="round" stroke-linecap="round">`,
    ...marks.map((mark) => markSvg(mark, paint)),
    '</svg>',
  ].join('');
}

function markSvg(mark: Mark, paint: Paint): string {
  if (mark.shape === 'text') return textSvg(mark, paint);
  const dash = mark.pen && LINE_DASH[mark.pen].length > 0 ? ` stroke-dasharray="${LINE_DASH[mark.pen].join(' ')}"` : '';
  const line = mark.pen ? ` stroke="${penColour(mark.pen, paint)}" stroke-width="${LINE_WIDTH[mark.pen]}"${dash}` : '';
  const look = `fill="${fillColour(mark.fill, paint)}"${line}`;
  if (mark.shape === 'circle') {
    return `<circle cx="${round(mark.x)}" cy="${round(mark.y)}" r="${round(mark.radius)}" ${look}/>`;
  }
  const points = mark.points.map(([x, y]) => `${round(x)},${round(y)}`).join(' ');
  return `<${mark.closed ? 'polygon' : 'polyline'} points="${points}" ${look}/>`;
}

function textSvg(mark: Extract<Mark, { shape: 'text' }>, paint: Paint): string {
  const { x, y, size, align, upright, bold, rim } = mark;
  const turn = upright ? ` transform="rotate(-90 ${round(x)} ${round(y)})"` : '';
  const weight = bold ? ' font-weight="600"' : '';
  const halo = rim
    ? ` stroke="${typeof mark.on === 'object' ? paint.heat(mark.on.heat) : paint.paper}" stroke-width="4" paint-order="stroke"`
    : '';
  return (
    `<text x="${round(x)}" y="${round(y)}" font-size="${size}" text-anchor="${align}" dominant-baseline="central"` +
    ` fill="${textColour(mark, paint)}"${weight}${halo}${turn}>${escapeXml(mark.text)}</text>`
  );
}

function round(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** Text made inert inside XML and HTML, in elements and in quoted attributes. */
export function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}
