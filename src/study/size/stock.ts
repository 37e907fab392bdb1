/**
 * What a shop has on the shelf: vents, stacks and throats to choose from. Sizes are common practice, no source. Each carries
 * the text that a design file takes, printed from its number so that it reads as that number.
 */
import { STOCK_TUBES } from '../../design/catalog/index.js';
import type { Steel } from '../../design/design.js';
import { gaugeThickness, inchText, settle, siIn } from '../../units/index.js';

export interface Sized {
  /** as a design file takes it */
  text: string;
  /** SI */
  value: number;
}

const inches = (values: readonly number[]) =>
  values.map((each): Sized => {
    const value = siIn('length', each, 'in');
    return { text: inchText(value), value };
  });

export interface StockVents {
  kind: 'disc' | 'slide';
  count: number;
  /** of one: a disc's diameter, a slide's width and height */
  diameter?: Sized;
  width?: Sized;
  height?: Sized;
  /** full open area of one [m2] */
  area: number;
}

export interface StockStack {
  /** as a shop orders it */
  name: string;
  diameter: Sized;
  /** absent where the diameter names a pipe with its wall */
  wall?: Sized;
  /** [m] */
  outside: number;
  thickness: number;
}

const DISCS = inches([2, 2.5, 3, 3.5, 4, 5, 6, 8]);
const DISC_COUNTS = [1, 2, 3, 4];
const SLIDE_WIDTHS = inches([4, 6, 8, 10, 12, 16]);
const SLIDE_HEIGHTS = inches([2, 3, 4]);
const SLIDE_COUNTS = [1, 2];
/** Metal left between vents that stand side by side [m]. */
const BETWEEN = 0.0254;

/** Vents that go side by side onto a firebox of this width [m] and under this height [m], the smallest area first. */
export function stockVents(face: { width: number; height: number }): StockVents[] {
  const discs = DISC_COUNTS.flatMap((count) =>
    DISCS.map((diameter): StockVents => ({ kind: 'disc', count, diameter, area: (Math.PI / 4) * diameter.value ** 2 })),
  );
  const slides = SLIDE_COUNTS.flatMap((count) =>
    SLIDE_WIDTHS.flatMap((width) =>
      SLIDE_HEIGHTS.map((height): StockVents => ({
        kind: 'slide',
        count,
        width,
        height,
        area: width.value * height.value,
      })),
    ),
  );
  return [...discs, ...slides]
    .filter(({ count, diameter, width, height }) => {
      const [across, high] = diameter ? [diameter.value, diameter.value] : [width!.value, height!.value];
      return count * (across + BETWEEN) <= face.width && high + 2 * BETWEEN <= face.height;
    })
    .sort((a, b) => a.count * a.area - b.count * b.area);
}

/** Round tube and pipe of a steel, the narrowest first: the same gauge is another wall in stainless. */
export function stockStacks(steel: Steel): StockStack[] {
  return STOCK_TUBES.map(({ size, gauge, diameter: outside, wall }): StockStack => {
    if (gauge === undefined) {
      const name = `${size} in pipe, standard wall`;
      return { name, diameter: { text: name, value: outside }, outside, thickness: wall };
    }
    const thickness = settle(gaugeThickness(gauge, steel)!);
    const written = inchText(outside);
    return {
      name: `${written} tube, ${gauge} ga`,
      diameter: { text: written, value: outside },
      wall: { text: `${gauge} ga`, value: thickness },
      outside,
      thickness,
    };
  });
}

/** Stack lengths, in steps of 6 in. */
export const STOCK_HEIGHTS: readonly Sized[] = inches(Array.from({ length: 11 }, (_, i) => 12 + 6 * i));

const SQUARE_INCH = siIn('area', 1, 'in²');

/** The smallest throat of whole tens of square inches that is at least this large [m2]. */
export function stockThroat(least: number): Sized {
  const tens = Math.max(1, Math.ceil(least / (10 * SQUARE_INCH) - 1e-9));
  return { text: `${10 * tens} in^2`, value: siIn('area', 10 * tens, 'in²') };
}
