/** Numbers of a solved pit on its side view: what is read at places, and the gas of stations and layers. */
import type { StationName } from '../../design/design.js';
import type { Fill } from '../drawing.js';
import type { Sheet } from '../sheet.js';
import { textWidth } from '../textWidth.js';
import type { Box } from '../box.js';
import { FreePaper } from './freePaper.js';
import type { PitNotes } from './pitDrawing.js';
import type { PitLayout, Span } from './pitLayout.js';
import { DIAL_RADIUS, drawDot } from './pitSideNotes.js';

/** Between a text and what it stands beside [px]. */
const APART = 3;
/** Paper round a text [px]. */
const RIM = 2;
/**
 * Half the height of a line of text, and from a grate's line to the middle of what stands over it, as parts of the
 * lettering.
 */
const HALF_LINE = 0.55;
const OVER = 0.62;

/** What is said in a room keeps so far from its walls, where handles may stand [px]. */
const ASIDE = 8;

type Spot = { x: number; height: number };
type Reading = Pick<NonNullable<PitNotes['places']>[number], 'mark' | 'text'> & { at: Spot; part: Span };
type Note = NonNullable<PitNotes['stations']>[number];
type Rooms = Partial<Record<StationName, Span>>;

/** Over all lines, each where it strikes none and no other text; what finds no such room is left out. */
export function drawReadings(
  sheet: Sheet,
  rooms: Rooms,
  layout: PitLayout,
  { notes, over }: { notes: PitNotes; over: readonly Box[] },
): void {
  const paper = new FreePaper(sheet);
  for (const box of over) paper.take(box);
  const dots = (notes.places ?? []).map((place) => {
    const part = layout[place.part]!;
    return { ...place, at: { x: part.left + place.along * (part.right - part.left), height: place.height }, part };
  });
  for (const { at, mark } of dots) if (mark === 'drawn') paper.take(dialBox(sheet, at));
  const writer = new Writer(sheet, paper);
  // the one that is steered by, which stands first, may stand over its part
  dots.forEach((dot, i) => writer.reading(dot, i === 0));
  for (const note of notes.stations ?? []) {
    const room = rooms[note.name];
    if (room && (note.layers?.length ?? 0) > 1) writer.layers(note, room);
    else if (room) writer.station(note, room);
  }
}

/** What a dial or a dot takes. */
function dialBox(sheet: Sheet, at: Spot): Box {
  const [x, y] = [sheet.x(at.x), sheet.y(at.height)];
  return { left: x - DIAL_RADIUS, right: x + DIAL_RADIUS, top: y - DIAL_RADIUS, bottom: y + DIAL_RADIUS };
}

class Writer {
  private readonly lettering: number;

  constructor(
    private readonly sheet: Sheet,
    private readonly paper: FreePaper,
  ) {
    this.lettering = sheet.place.lettering;
  }

  /**
   * Beside a dial, over or under it; over a grate's line or under it. A dial that nothing shows yet gets a dot, or is
   * left out.
   */
  reading({ mark, text, at, part }: Reading, mayLeave: boolean): void {
    const { lettering: size, sheet } = this;
    const [x, y, round] = [sheet.x(at.x), sheet.y(at.height), dialBox(sheet, at)];
    if (mark === 'asked' && !this.paper.isUntaken(round)) return;
    const dial = mark !== 'none';
    const half = this.widthOf(text, true) / 2;
    const aside = DIAL_RADIUS + APART + half;
    const above = dial ? DIAL_RADIUS + OVER * size : OVER * size;
    const wall = APART + RIM + half;
    const [left, right] = [sheet.x(part.left) + wall, sheet.x(part.right) - wall];
    const within = (middle: number) => (left < right ? Math.min(Math.max(middle, left), right) : (left + right) / 2);
    const beside = [x + aside, x - aside].map((middle) => [middle, y] as const);
    const spots = dial ? [x + aside, x, x - aside] : [x, x + aside, x - aside];
    const lines = [y - above, y + above].flatMap((line) => spots.map((middle) => [within(middle), line] as const));
    const roof = sheet.y(part.high) - OVER * size - APART;
    const outside = [x + aside, x - aside, x].map((middle) => [middle, roof] as const);
    const places = [...(dial ? beside : []), ...lines, ...(mayLeave ? outside : [])];
    const found = places.find(([middle, line]) => this.paper.isFree(this.boxOf(middle, line, text, true)));
    if (!found) return;
    if (mark === 'asked') {
      this.paper.take(round);
      drawDot(sheet, at);
    }
    this.write(...found, text, { bold: true });
  }

  /** The gas of each layer at its left, or where there is room. */
  layers({ layers = [] }: Note, room: Span): void {
    const { sheet, lettering } = this;
    for (const { low, high, share, text } of layers) {
      const [bottom, top] = [Math.max(room.low, low), Math.min(room.high, high)];
      const half = this.widthOf(text) / 2;
      const [left, right] = [sheet.x(room.left) + ASIDE + half, sheet.x(room.right) - ASIDE - half];
      if ((top - bottom) * sheet.place.scale < lettering || left > right) continue;
      const y = sheet.y((bottom + top) / 2);
      const x = [left, (left + right) / 2, right].find((each) => this.paper.isFree(this.boxOf(each, y, text)));
      if (x !== undefined) this.write(x, y, text, { on: { heat: share } });
    }
  }

  /** What is said in a station without layers, in its middle. */
  station({ share, lines }: Note, room: Span): void {
    const { sheet, lettering } = this;
    const [x, y] = [sheet.x((room.left + room.right) / 2), sheet.y((room.low + room.high) / 2)];
    const fits = Math.max(1, Math.floor(((room.high - room.low) * sheet.place.scale) / (lettering * 1.25)));
    const wide = (room.right - room.left) * sheet.place.scale - 2 * ASIDE;
    // where it is narrow, the other numbers say which degrees
    const short = (text: string) => (this.widthOf(text, true) < wide ? text : text.replace(/ °[FC]$/, '°'));
    const shown = lines
      .map(short)
      .filter((text) => this.widthOf(text, true) < wide)
      .slice(0, fits);
    shown.forEach((text, i) => {
      const line = y + (i - (shown.length - 1) / 2) * lettering * 1.25;
      if (this.paper.isFree(this.boxOf(x, line, text, i === 0))) this.write(x, line, text, { on: { heat: share }, bold: i === 0 }); // prettier-ignore
    });
  }

  private widthOf(text: string, bold = false): number {
    return textWidth(text, { size: this.lettering, weight: bold ? 600 : 400 });
  }

  /** With the rim of paper round it. */
  private boxOf(x: number, y: number, text: string, bold = false): Box {
    const half = this.widthOf(text, bold) / 2 + RIM;
    const high = HALF_LINE * this.lettering;
    return { left: x - half, right: x + half, top: y - high, bottom: y + high };
  }

  private write(x: number, y: number, text: string, how: { bold?: boolean; on?: Fill }): void {
    this.paper.take(this.boxOf(x, y, text, how.bold));
    this.sheet.text(x, y, text, { rim: true, ...how });
  }
}
