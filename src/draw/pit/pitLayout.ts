/**
 * Where the parts of a pit stand, seen from the side: x along the gas's way from the firebox, heights above the ground
 * [m].
 */
import type { Design, HorizontalPart, StationName, Upright } from '../../design/design.js';
import { stackSection } from '../../design/stackSection.js';
import { deckOf, hasGaps } from '../../design/decks.js';
import { headReach } from '../../design/heads.js';
import { isUpright } from '../../design/partPlan.js';
import { depthOf, wallAt, type Wall } from '../../design/walls.js';

/** A rectangle in the side view, along the pit and above the ground [m]. */
export interface Span {
  left: number;
  right: number;
  low: number;
  high: number;
}

/** Where everything of a pit lies in the side view [m]. */
export interface PitLayout {
  firebox: Span;
  chamber?: Span;
  upright?: Span;
  /** tubes, from base to top */
  stacks: Span[];
  /** boxes that gather gas before them */
  gathers: (Span | undefined)[];
  /** heights and ends of everything, insulation included */
  all: Span;
}

/** A stack stands this many of its diameters off the end of its part: common practice, no source. */
const STACK_INSET = 0.6;
/** Middles of neighbouring stacks lie this many diameters apart. */
const STACK_PITCH = 1.6;

/** Where the parts of a pit stand in a view from the side [m]. */
export function pitLayout(design: Design): PitLayout {
  const { firebox, chamber, upright, throat } = design;
  const span = (left: number, length: number, centre: number, height: number): Span => ({
    left,
    right: left + length,
    low: centre - height / 2,
    high: centre + height / 2,
  });
  const box = span(0, firebox.length, firebox.centre, firebox.height);
  const long = chamber && span(box.right, chamber.length, chamber.centre, chamber.height);
  const over = !chamber && throat.through === 'top';
  const tall =
    upright &&
    span(
      over ? (firebox.length - upright.depth) / 2 : (long ?? box).right,
      upright.depth,
      upright.centre,
      upright.height,
    );
  const parts = { firebox: box, chamber: long, upright: tall };
  const stacks = stackSpans(design, parts);
  const gathers = stacks.map(({ left, right, low }, i): Span | undefined => {
    const { gather } = design.stacks[i];
    if (!gather) return undefined;
    const middle = (left + right) / 2;
    return { left: middle - gather.width / 2, right: middle + gather.width / 2, low: low - gather.height, high: low };
  });
  const outlines = [
    ...gathers.flatMap((box) => box ?? []),
    grown(withHeads(box, firebox), firebox, outOf),
    ...(long ? [grown(withHeads(long, chamber), chamber, outOf)] : []),
    ...(tall ? [grown(tall, upright, outOf)] : []),
    ...stacks,
  ];
  return {
    firebox: box,
    ...(long ? { chamber: long } : {}),
    ...(tall ? { upright: tall } : {}),
    stacks,
    gathers,
    all: {
      left: Math.min(...outlines.map((each) => each.left)),
      right: Math.max(...outlines.map((each) => each.right)),
      low: 0,
      high: Math.max(...outlines.map((each) => each.high)),
    },
  };
}

/** How far a part's head stands out beyond its seam, with the straight flange [m]. */
export function headDepth(part: HorizontalPart, end: 'fireEnd' | 'stackEnd'): number {
  const { heads = 'flat', flange = 0, width } = part;
  return heads === 'flat' ? 0 : flange + headReach(heads, { diameter: width, plate: wallAt(part, end).plate }, 0);
}

/** A part with its heads on. */
function withHeads(span: Span, part: HorizontalPart): Span {
  return { ...span, left: span.left - headDepth(part, 'fireEnd'), right: span.right + headDepth(part, 'stackEnd') };
}

type Part = HorizontalPart | Upright;

/** The walls that a side view cuts: fire end, far end, floor, roof; of an upright its sides are its ends. */
export function cutWalls(part: Part): Record<keyof Span, Wall> {
  const [left, right] = isUpright(part) ? (['sides', 'sides'] as const) : (['fireEnd', 'stackEnd'] as const);
  return {
    left: wallAt(part, left),
    right: wallAt(part, right),
    low: wallAt(part, 'floor'),
    high: wallAt(part, 'roof'),
  };
}

/** How thick a wall's insulation is [m]. */
export const wrapOf = ({ insulation }: Wall): number => insulation?.thickness ?? 0;
/** How far a wall reaches out, heat shield and all [m]. */
export const outOf = (wall: Wall): number => wrapOf(wall) + (wall.shield ? wall.shield.gap : 0);

/** A part with what covers it, as each of its walls has it. */
function grown(span: Span, part: Part, by: (wall: Wall) => number): Span {
  const walls = cutWalls(part);
  return {
    left: span.left - by(walls.left),
    right: span.right + by(walls.right),
    low: span.low - by(walls.low),
    high: span.high + by(walls.high),
  };
}

/** The same as far as the seams of heads, which are drawn by themselves. */
export function grownBetween(span: Span, part: Part, by: (wall: Wall) => number): Span {
  const all = grown(span, part, by);
  return hasHeads(part) ? { ...all, left: span.left, right: span.right } : all;
}

/** Has a part ends that are dished? */
export function hasHeads(part: Part): boolean {
  return 'heads' in part && (part.heads ?? 'flat') !== 'flat';
}

/** The room inside plate and lining, of a part with heads between their seams. */
export function roomIn(span: Span, part: Part): Span {
  return grownBetween(span, part, (wall) => -depthOf(wall));
}

/**
 * Stacks stand at the far end of their part; on a reverse-flow chamber beside the fire, in the middle of an upright.
 */
function stackSpans(design: Design, parts: { chamber?: Span; upright?: Span }): Span[] {
  const { stacks, chamber } = design;
  return stacks.map((stack, i) => {
    const part = parts[stack.part];
    const before = stacks.slice(0, i).filter((each) => each.part === stack.part).length;
    const own = stacks.filter((each) => each.part === stack.part).length;
    const { base, height } = stack;
    const { along } = stackSection(stack);
    let middle = 0;
    if (part && stack.part === 'upright') {
      middle = (part.left + part.right) / 2 + (before - (own - 1) / 2) * STACK_PITCH * along;
    } else if (part) {
      // a box that gathers gas stays on its part
      const inset = Math.max((STACK_INSET + 0.5 + before * STACK_PITCH) * along, (stack.gather?.width ?? 0) / 2);
      middle = chamber?.reverse ? part.left + inset : part.right - inset;
    }
    return { left: middle - along / 2, right: middle + along / 2, low: base, high: base + height };
  });
}

/** The room each station stands for, seen from the side. */
export function stationSpans(design: Design, layout: PitLayout): Partial<Record<StationName, Span>> {
  const spans: Partial<Record<StationName, Span>> = { firebox: roomIn(layout.firebox, design.firebox) };
  if (design.chamber && layout.chamber) {
    const room = roomIn(layout.chamber, design.chamber);
    const plate = deckOf(design.chamber);
    const deck = plate ? Math.min(room.high, room.low + plate.height) : room.low;
    (['fireEnd', 'middle', 'stackEnd'] as const).forEach((name, i) => {
      const left = room.left + ((room.right - room.left) * i) / 3;
      const right = room.left + ((room.right - room.left) * (i + 1)) / 3;
      spans[name] = { left, right, low: deck, high: room.high };
      if (hasGaps(design.chamber)) spans.plenumMiddle = { ...room, high: deck };
      else if (plate) {
        const under = (['plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'] as const)[i];
        spans[under] = { left, right, low: room.low, high: deck };
      }
    });
  }
  if (design.upright && layout.upright) {
    const room = roomIn(layout.upright, design.upright);
    const half = (room.low + room.high) / 2;
    spans.uprightLower = { ...room, high: half };
    spans.uprightUpper = { ...room, low: half };
  }
  return spans;
}
