/**
 * A line drawing as plain marks, in pixels, y downwards: made once and painted as SVG text, on a canvas or in a PDF.
 * Colours are roles; whoever paints says what each role looks like, so that screen, print and dark screen agree.
 */

/** How a line is drawn. */
export type Pen = 'outline' | 'thin' | 'hidden' | 'dimension';

/** What fills a shape: a role, or a share 0..1 of the temperature scale. */
export type Fill = 'paper' | 'shade' | 'ink' | { heat: number };

/** A line, a circle or a text, placed in px. */
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

/** A picture as marks, before it is laid out for screen or paper [px]. */
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
  /** colour of a share 0..1 of the temperature scale, and of text that stands on it */
  heat(share: number): string;
  onHeat(share: number): string;
}

/** How thick each pen draws [px]. */
export const LINE_WIDTH: Record<Pen, number> = { outline: 2, thin: 1, hidden: 1, dimension: 0.8 };
/** Lengths of dash and gap of each pen [px]; none: a solid line. */
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
