/** Where the parts of a pit stand, seen from the side: x along the gas's way from the firebox, heights above the ground [m]. */
import type { Design, HorizontalPart, Insulation, StationName } from '../../design/design.js';
import { stackSection } from '../../design/stackSection.js';
import { deckOf } from '../../design/decks.js';
import { headReach } from '../../design/heads.js';

export interface Span {
  left: number;
  right: number;
  low: number;
  high: number;
}

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
    grown(withHeads(box, firebox), firebox.insulation),
    ...(long ? [grown(withHeads(long, chamber), chamber.insulation)] : []),
    ...(tall ? [grown(tall, upright.insulation)] : []),
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

/** How far a part's heads stand out beyond their seams, with the straight flange [m]. */
export function headDepth({ heads = 'flat', flange = 0, width, plate }: HorizontalPart): number {
  return heads === 'flat' ? 0 : flange + headReach(heads, { diameter: width, plate }, 0);
}

/** A part with its heads on. */
function withHeads(span: Span, part: HorizontalPart): Span {
  const by = headDepth(part);
  return { ...span, left: span.left - by, right: span.right + by };
}

/** A part with its insulation on. */
export function grown(part: Span, insulation: Insulation | undefined): Span {
  const by = insulation?.thickness ?? 0;
  return { left: part.left - by, right: part.right + by, low: part.low - by, high: part.high + by };
}

/** Stacks stand at the far end of their part; on a reverse-flow chamber beside the fire, in the middle of an upright. */
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
      const inset = (STACK_INSET + 0.5 + before * STACK_PITCH) * along;
      middle = chamber?.reverse ? part.left + inset : part.right - inset;
    }
    return { left: middle - along / 2, right: middle + along / 2, low: base, high: base + height };
  });
}

/** Inside of a part, about. */
export function inside(part: Span, plate: number): Span {
  return { left: part.left + plate, right: part.right - plate, low: part.low + plate, high: part.high - plate };
}

/** The room each station stands for, seen from the side. */
export function stationSpans(design: Design, layout: PitLayout): Partial<Record<StationName, Span>> {
  const spans: Partial<Record<StationName, Span>> = { firebox: inside(layout.firebox, design.firebox.plate) };
  if (design.chamber && layout.chamber) {
    const room = inside(layout.chamber, design.chamber.plate);
    const plate = deckOf(design.chamber);
    const deck = plate ? Math.min(room.high, room.low + plate.height) : room.low;
    (['fireEnd', 'middle', 'stackEnd'] as const).forEach((name, i) => {
      const left = room.left + ((room.right - room.left) * i) / 3;
      const right = room.left + ((room.right - room.left) * (i + 1)) / 3;
      spans[name] = { left, right, low: deck, high: room.high };
      if (design.chamber?.plates) spans.plenumMiddle = { ...room, high: deck };
      else if (plate) {
        const under = (['plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'] as const)[i];
        spans[under] = { left, right, low: room.low, high: deck };
      }
    });
  }
  if (design.upright && layout.upright) {
    const room = inside(layout.upright, design.upright.plate);
    const half = (room.low + room.high) / 2;
    spans.uprightLower = { ...room, high: half };
    spans.uprightUpper = { ...room, low: half };
  }
  return spans;
}
