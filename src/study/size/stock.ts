/**
 * What a shop has on the shelf: vents, stacks and throats to choose from. Sizes are common practice, no source. Each carries
 * the text that a design file takes, and the number which that text reads as.
 */
import { STOCK_TUBES } from '../../design/catalog/index.js';
import type { Steel } from '../../design/design.js';
import { parseQuantity, type Kind } from '../../units/index.js';

export interface Sized {
  /** as a design file takes it */
  text: string;
  /** SI */
  value: number;
  /** wall of a pipe that the text names [m] */
  pipeWall?: number;
}

function sized(kind: Kind, text: string, gauges?: Steel): Sized {
  const read = parseQuantity(kind, text, { gauges });
  if (!read.ok) throw new RangeError(`stock list: '${text}' ${read.problem}`);
  return { text, value: read.si, ...(read.pipe?.wall === undefined ? {} : { pipeWall: read.pipe.wall }) };
}

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

const inches = (values: string[]) => values.map((each) => sized('length', `${each} in`));

const DISCS = inches(['2', '2-1/2', '3', '3-1/2', '4', '5', '6', '8']);
const DISC_COUNTS = [1, 2, 3, 4];
const SLIDE_WIDTHS = inches(['4', '6', '8', '10', '12', '16']);
const SLIDE_HEIGHTS = inches(['2', '3', '4']);
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
  return STOCK_TUBES.map(({ name }) => {
    const [size, gauge] = name.split(' tube, ');
    if (gauge === undefined) {
      const diameter = sized('length', name);
      return { name, diameter, outside: diameter.value, thickness: diameter.pipeWall ?? NaN };
    }
    const [diameter, wall] = [sized('length', size), sized('plate', gauge, steel)];
    return { name, diameter, wall, outside: diameter.value, thickness: wall.value };
  });
}

/** Stack lengths, in steps of 6 in. */
export const STOCK_HEIGHTS: readonly Sized[] = inches(Array.from({ length: 11 }, (_, i) => String(12 + 6 * i)));

const SQUARE_INCH = 0.0254 ** 2;

/** The smallest throat of whole tens of square inches that is at least this large [m2]. */
export function stockThroat(least: number): Sized {
  const tens = Math.max(1, Math.ceil(least / (10 * SQUARE_INCH) - 1e-9));
  return sized('area', `${10 * tens} in^2`);
}
