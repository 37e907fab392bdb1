/**
 * What a shop has on the shelf: vents, stacks and throats to choose from. Sizes are common practice, no source. Each
 * carries the text that a design file takes, printed from its number so that it reads as that number.
 */
import { STOCK_SQUARES, STOCK_TUBES } from '../../design/catalog/index.js';
import type { Stack, Steel } from '../../design/design.js';
import { stackSection } from '../../design/stackSection.js';
import type { Tube } from '../../design/tubeText.js';
import { gaugeThickness, inchText, settle, siIn } from '../../units/index.js';

/** A size as written and in SI. */
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

/** Vents that a shop cuts. */
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

/** Tube or pipe that a stack is cut from. */
export interface StockStack {
  /** as a shop orders it */
  name: string;
  /** fields of a stack that make it, as a design file takes them; none: the stack that is drawn */
  written: Tube['written'];
  /** the same in SI */
  section: Partial<Tube['size']>;
  /** steel of a metre of it, as a volume [m2]; its wider side [m] */
  steelSection: number;
  outside: number;
  /** how long the piece is [m] */
  long?: number;
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

/** A tube as a stack to choose. */
export function stackOf({ name, written, size, long }: Tube): StockStack {
  const { across, along, girth } = stackSection(size as Stack, -0.5 * size.wall);
  const outside = Math.max(across, along) + size.wall;
  return { name, written, section: size, steelSection: girth * size.wall, outside, ...(long ? { long } : {}) };
}

/** The stack that is drawn, where it stays. */
export function drawnStack(stack: Stack): StockStack {
  const { round, across, along } = stackSection(stack);
  const sides = [across, ...(round || along === across ? [] : [along])].map(inchText).join(' x ');
  const { wall } = stack;
  const name = `${sides} ${round ? '' : 'square '}stack as drawn`;
  const size = { ...(round ? { diameter: across } : { shape: 'square' as const, width: across, depth: along }), wall };
  return { ...stackOf({ name, written: {}, size }), section: {} };
}

/** Tube and pipe of a steel, the narrowest first, round before square: the same gauge is another wall in stainless. */
export function stockStacks(steel: Steel, shapes: readonly ('round' | 'square')[] = ['round']): StockStack[] {
  const gaugeWall = (gauge: number) => settle(gaugeThickness(gauge, steel)!);
  const round = STOCK_TUBES.map(({ size, gauge, diameter, wall }): Tube => {
    if (gauge === undefined) {
      const name = `${size} in pipe, standard wall`;
      return { name, written: { diameter: name }, size: { diameter, wall } };
    }
    const text = inchText(diameter);
    return {
      name: `${text} tube, ${gauge} ga`,
      written: { diameter: text, wall: `${gauge} ga` },
      size: { diameter, wall: gaugeWall(gauge) },
    };
  });
  const square = STOCK_SQUARES.map(({ width, gauge }): Tube => {
    const text = inchText(width);
    return {
      name: `${text} square tube, ${gauge} ga`,
      written: { shape: 'square', width: text, wall: `${gauge} ga` },
      size: { shape: 'square', width, depth: width, wall: gaugeWall(gauge) },
    };
  });
  return [...(shapes.includes('round') ? round : []), ...(shapes.includes('square') ? square : [])].map(stackOf);
}

const INCH = siIn('length', 1, 'in');
/**
 * Lengths that a stack is cut to, in inches: whole half feet, a foot apart above 6 ft; a bound that is asked for to the
 * half inch.
 */
const [STEP, SHORTEST, USUAL_MOST, COARSE, BEYOND] = [6, 12, 72, 12, 24];

/** Lengths to try between a shortest and a longest one [m]. */
export function stockHeights({ least, most }: { least: number; most: number }, longest = Infinity): Sized[] {
  const low = Math.max(1, Math.ceil((2 * least) / INCH - 1e-6) / 2);
  const end = Math.floor((2 * Math.min(most, longest)) / INCH + 1e-6) / 2;
  const high = Number.isFinite(end) ? end : Math.max(USUAL_MOST, low + BEYOND);
  if (low > high) return [];
  const steps: number[] = [];
  for (let at = SHORTEST; at <= high; at += at < USUAL_MOST ? STEP : COARSE) if (at >= low) steps.push(at);
  const ends = [...(low > SHORTEST ? [low] : []), ...(Number.isFinite(end) ? [end] : [])];
  return inches([...new Set([...ends, ...steps])].sort((a, b) => a - b));
}

const SQUARE_INCH = siIn('area', 1, 'in²');

/** The smallest throat of whole tens of square inches that is at least this large [m2]. */
export function stockThroat(least: number): Sized {
  const tens = Math.max(1, Math.ceil(least / (10 * SQUARE_INCH) - 1e-9));
  return { text: `${10 * tens} in^2`, value: siIn('area', 10 * tens, 'in²') };
}
