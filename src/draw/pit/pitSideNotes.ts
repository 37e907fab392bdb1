/** What a solved pit adds to its side view: layers of gas, readings at their places, plates, the gauge and the gas's way. */
import { coverWords } from './coverWords.js';
import type { Design, StationName } from '../../design/design.js';
import { formatPlate } from '../../units/index.js';
import type { PitNotes, StationNote } from './pitDrawing.js';
import { roomIn, type PitLayout, type Span } from './pitLayout.js';
import type { Sheet } from '../sheet.js';
import { gaugePlace, gratesOf, placesOf } from '../../design/places.js';
import { capital } from '../../words/plainText.js';
import type { TextMark } from './pitSideView.js';

export function drawStations(sheet: Sheet, rooms: Partial<Record<StationName, Span>>, notes: PitNotes): void {
  for (const { name, share, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room) continue;
    if (layers.length > 1) drawLayers(sheet, room, layers);
    else sheet.rect(room, { fill: { heat: share } });
  }
}

/** What is said in stations without layers, over all lines that cross them. */
function drawStationLines(sheet: Sheet, rooms: Partial<Record<StationName, Span>>, notes: PitNotes): void {
  const { lettering } = sheet.place;
  for (const { name, share, lines, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room || layers.length > 1) continue;
    const fill = { heat: share };
    const [x, y] = [sheet.x((room.left + room.right) / 2), sheet.y((room.low + room.high) / 2)];
    const fits = Math.max(1, Math.floor(((room.high - room.low) * sheet.place.scale) / (lettering * 1.25)));
    const wide = (room.right - room.left) * sheet.place.scale - 2;
    // where it is narrow, the other numbers say which degrees
    const short = (text: string) => (sheet.widthOf(text) < wide ? text : text.replace(/ °[FC]$/, ''));
    const shown = lines
      .map(short)
      .filter((text) => sheet.widthOf(text) < wide)
      .slice(0, fits);
    shown.forEach((text, i) => {
      const down = (i - (shown.length - 1) / 2) * lettering * 1.25;
      sheet.text(x, y + down, text, { on: fill, bold: i === 0, rim: true });
    });
  }
}

/** Gas by height: each layer in its colour. */
function drawLayers(sheet: Sheet, room: Span, layers: NonNullable<StationNote['layers']>): void {
  for (const { low, high, share } of layers) {
    sheet.rect({ ...room, low: Math.max(room.low, low), high: Math.min(room.high, high) }, { fill: { heat: share } });
  }
}

/** Grates and racks where they lie, and thermometers as small dots. */
export function drawPlaces(sheet: Sheet, design: Design, layout: PitLayout): void {
  const line = ({ left, right }: Span, from: number, to: number, height: number) =>
    sheet.line(
      [
        [left + from * (right - left), height],
        [left + to * (right - left), height],
      ],
      { pen: 'thin' },
    );
  if (design.chamber && layout.chamber) {
    const room = roomIn(layout.chamber, design.chamber);
    for (const { from, to, height } of gratesOf(design.chamber)) line(room, from, to, height);
  }
  for (const { kind, part, along, height } of placesOf(design)) {
    const span = layout[part]!;
    if (kind === 'rack') line(roomIn(span, design.upright!), 0, 1, height);
    if (kind !== 'thermometer') continue;
    const at = { x: span.left + along * (span.right - span.left), height };
    sheet.circle(at, 2.5 / sheet.place.scale, { pen: 'thin', fill: 'paper' });
  }
}

/** What is read at places, over their lines and dots, then the layers' own numbers; what would strike another is left out. */
export function drawReadings(
  sheet: Sheet,
  rooms: Partial<Record<StationName, Span>>,
  layout: PitLayout,
  notes: PitNotes,
): void {
  const { lettering } = sheet.place;
  drawStationLines(sheet, rooms, notes);
  const taken: { x: number; y: number; half: number }[] = [];
  /** @returns whether there was room */
  const write = (x: number, y: number, text: string, how: Partial<TextMark>): boolean => {
    const half = sheet.widthOf(text) / 2 + 1;
    if (taken.some((each) => Math.abs(each.x - x) < each.half + half && Math.abs(each.y - y) < lettering)) return false;
    taken.push({ x, y, half });
    sheet.text(x, y, text, { rim: true, ...how });
    return true;
  };
  const places = (notes.places ?? []).map((place) => {
    const { left, right } = layout[place.part]!;
    return { ...place, dot: sheet.x(left + place.along * (right - left)), end: sheet.x(right) - 3 };
  });
  for (const { dial, dot, height } of places) if (dial) taken.push({ x: dot, y: sheet.y(height), half: DIAL_RADIUS });
  for (const { dial, dot, end, height, text } of places) {
    const half = sheet.widthOf(text) / 2 + 2;
    const off = DIAL_RADIUS + 3 + half;
    // beside a dial, on the side where there is room, or over it; over a grate's line
    const over = sheet.y(height) - 0.62 * lettering;
    const beside = [dot + off, dot - off].filter((x) => x + half < end).map((x) => [x, sheet.y(height)] as const);
    const tries = dial
      ? [...beside, [dot, sheet.y(height) - DIAL_RADIUS - 0.62 * lettering] as const]
      : [[Math.min(dot + off, end - half), over] as const];
    tries.some(([x, y]) => write(x, y, text, { bold: true }));
  }
  for (const { name, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room || layers.length < 2) continue;
    for (const { low, high, share, text } of layers) {
      const [bottom, top] = [Math.max(room.low, low), Math.min(room.high, high)];
      const wide = (room.right - room.left) * sheet.place.scale;
      if ((top - bottom) * sheet.place.scale < lettering || sheet.widthOf(text) + 16 > wide) continue;
      const x = sheet.x(room.left) + 8 + sheet.widthOf(text) / 2;
      write(x, sheet.y((bottom + top) / 2), text, { on: { heat: share } });
    }
  }
}

/** @returns what found no room, a sentence a part */
export function drawPlateLabels(sheet: Sheet, design: Design, layout: PitLayout): string[] {
  const unsaid: string[] = [];
  const gauge = gaugePlace(design);
  for (const name of ['firebox', 'chamber', 'upright'] as const) {
    const span = layout[name];
    const part = design[name];
    if (!span || !part) continue;
    const room = (span.right - span.left) * sheet.place.scale;
    const words = [name, `${formatPlate(part.plate)} plate`, ...coverWords(part)];
    // under the dial, where the part has one
    const dial = gauge.part === name ? DIAL_RADIUS / sheet.place.scale : 0;
    const high = dial > 0 ? gauge.height - dial : span.high;
    const fits = Math.max(1, Math.floor(((high - span.low) * sheet.place.scale) / (sheet.place.lettering * 1.3)));
    const lines = words.filter((text) => sheet.widthOf(text) < room - 6).slice(0, fits);
    if (lines.length < words.length) unsaid.push(`${capital(name)}: ${words.slice(1).join(', ')}.`);
    const [x, y] = [sheet.x((span.left + span.right) / 2), sheet.y((span.low + high) / 2)];
    lines.forEach((text, i) => {
      const down = (i - (lines.length - 1) / 2) * sheet.place.lettering * 1.3;
      sheet.text(x, y + down, text, { rim: true, bold: i === 0, faint: i > 0 });
    });
  }
  return unsaid;
}

/** Radius of the cook's dial [px]. */
const DIAL_RADIUS = 5.5;

/** Where the cook's thermometer sits. */
export function drawGauge(sheet: Sheet, design: Design, layout: PitLayout): void {
  const { part, along, height } = gaugePlace(design);
  const { left, right } = layout[part]!;
  const at = { x: left + along * (right - left), height };
  const radius = DIAL_RADIUS / sheet.place.scale;
  sheet.circle(at, radius, { pen: 'thin', fill: 'paper' });
  sheet.line(
    [
      [at.x, at.height],
      [at.x + 0.6 * radius, at.height + 0.6 * radius],
    ],
    { pen: 'thin' },
  );
}

/** Arrows of the gas: in at the vents, through the throat and up the stack, each with what the notes say of it. */
export function drawFlows(
  sheet: Sheet,
  design: Design,
  layout: PitLayout,
  flows: NonNullable<PitNotes['flows']>,
): void {
  const { lettering } = sheet.place;
  if (flows.intake !== undefined) {
    const intake = design.firebox.intakes[0];
    const [x, y] = [sheet.x(layout.firebox.left), sheet.y(intake.centre)];
    sheet.arrow([x - 26, y], [x - 2, y]);
    sheet.text(x - 30, y, flows.intake, { align: 'end', rim: true });
  }
  if (flows.stack !== undefined && layout.stacks[0]) {
    const tube = layout.stacks[0];
    const x = sheet.x((tube.left + tube.right) / 2);
    const y = sheet.y(tube.high);
    sheet.arrow([x, y + 22], [x, y - 4]);
    sheet.text(x, y - 6 - lettering, flows.stack, { rim: true });
  }
}
