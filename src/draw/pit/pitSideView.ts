import type { Design, HorizontalPart, StationName } from '../../design/design.js';
import { damperHeight } from '../../design/stackSection.js';
import { plateGaps } from '../../design/decks.js';
import { doorsOf, type PlacedDoor } from '../../design/doors.js';
import { fireGrateOf } from '../../design/fireGrate.js';
import { headReach } from '../../design/heads.js';
import { insideOf } from '../../design/walls.js';
import { formatPlate } from '../../units/index.js';
import type { PitNotes, StationNote } from './pitDrawing.js';
import {
  cutWalls,
  grownBetween,
  hasHeads,
  outOf,
  roomIn,
  stationSpans,
  wrapOf,
  type PitLayout,
  type Span,
} from './pitLayout.js';
import type { Mark } from '../drawing.js';
import type { Sheet } from '../sheet.js';
import { gaugePlace, gratesOf, placesOf } from '../../design/places.js';
import { coverWords } from './coverWords.js';
import { capital } from '../../words/plainText.js';

type TextMark = Extract<Mark, { shape: 'text' }>;

/**
 * The pit from its side, fire at the left: parts, throat, plate, stacks, with what the notes say in each station.
 *
 * @returns what of plates and covers found no room in their parts
 */
export function drawSideView(sheet: Sheet, design: Design, layout: PitLayout, notes: PitNotes): string[] {
  drawHeads(sheet, design, layout);
  drawStacks(sheet, design, layout);
  drawParts(sheet, design, layout);
  const rooms = stationSpans(design, layout);
  if (notes.stations) drawStations(sheet, rooms, notes);
  drawInside(sheet, design, layout);
  // their lines would strike the numbers of gas
  if (!notes.stations) drawDoors(sheet, design, layout);
  drawPlaces(sheet, design, layout);
  const unsaid = notes.stations ? [] : drawPlateLabels(sheet, design, layout);
  drawGauge(sheet, design, layout);
  drawReadings(sheet, rooms, layout, notes);
  if (notes.flows) drawFlows(sheet, design, layout, notes.flows);
  return unsaid;
}

/** Under all else: where another part is joined it covers what it takes away. */
function drawHeads(sheet: Sheet, design: Design, layout: PitLayout): void {
  for (const name of ['chamber', 'firebox'] as const) {
    const [span, part] = [layout[name], design[name]];
    if (!span || !part || !hasHeads(part)) continue;
    const { left, right } = cutWalls(part);
    for (const [wall, seam, way] of [
      [left, span.left, -1],
      [right, span.right, 1],
    ] as const) {
      const at = (by: number) => headLine(part, wall.plate, seam, way, by);
      if (wall.shield) sheet.line(at(outOf(wall)), { closed: true, pen: 'thin', fill: 'paper' });
      if (wrapOf(wall) > 0) sheet.line(at(wrapOf(wall)), { closed: true, pen: 'thin', fill: 'shade' });
      sheet.line(at(0), { closed: true, pen: 'outline', fill: wall.lining ? 'shade' : 'paper' });
    }
  }
}

/** A head's outline from its seam, outside its insulation; `way` is where it points along the pit. */
function headLine(part: HorizontalPart, plate: number, seam: number, way: number, by: number): [number, number][] {
  const { heads, flange = 0, width, centre } = part;
  if (heads === undefined || heads === 'flat') return [];
  const steps = 24;
  const radius = width / 2;
  const dome = Array.from({ length: 2 * steps + 1 }, (_, i): [number, number] => {
    const off = radius * Math.sin((Math.PI / 2) * (i / steps - 1));
    const reach = flange + headReach(heads, { diameter: width, plate }, off);
    return [seam + way * (reach + by * Math.sqrt(1 - (off / radius) ** 2)), centre + off * (1 + by / radius)];
  });
  return [[seam, centre - radius - by], ...dome, [seam, centre + radius + by]];
}

/** Under the part they stand on: a tube that leaves a shell's back is seen only above it. */
function drawStacks(sheet: Sheet, design: Design, layout: PitLayout): void {
  for (const box of layout.gathers) if (box) sheet.rect(box, { pen: 'outline', fill: 'paper' });
  layout.stacks.forEach((tube, i) => {
    const part = layout[design.stacks[i].part];
    const foot = part ? Math.min(part.high, Math.max(tube.low, part.low)) : tube.low;
    const lag = design.stacks[i].insulation?.thickness ?? 0;
    if (lag > 0) {
      const sleeve = { left: tube.left - lag, right: tube.right + lag, low: foot, high: tube.high };
      sheet.rect(sleeve, { pen: 'thin', fill: 'shade' });
    }
    sheet.rect({ ...tube, low: foot }, { pen: 'outline', fill: 'paper' });
    const { damper, damperAt } = design.stacks[i];
    if (damper < 1 || damperAt !== 'top') {
      const middle = (tube.left + tube.right) / 2;
      const reach = (tube.right - tube.left) / 2;
      // clear of the ends, and of the shell that a tube leaves by its side
      const at = Math.max(foot + 1.2 * reach, Math.min(tube.high - 2.4 * reach, damperHeight(design.stacks[i])));
      const turn = Math.acos(Math.max(0, Math.min(1, damper)));
      const [dx, dz] = [reach * Math.sin(turn), reach * Math.cos(turn)];
      sheet.line(
        [
          [middle - dx, at - dz],
          [middle + dx, at + dz],
        ],
        { pen: 'thin' },
      );
    }
  });
}

function drawParts(sheet: Sheet, design: Design, layout: PitLayout): void {
  for (const name of ['upright', 'chamber', 'firebox'] as const) {
    const span = layout[name];
    const part = design[name];
    if (!span || !part) continue;
    const walls = Object.values(cutWalls(part));
    if (walls.some((wall) => wall.shield)) sheet.rect(grownBetween(span, part, outOf), { pen: 'thin', fill: 'paper' });
    if (walls.some((wall) => wrapOf(wall) > 0))
      sheet.rect(grownBetween(span, part, wrapOf), { pen: 'thin', fill: 'shade' });
  }
  for (const name of ['upright', 'chamber', 'firebox'] as const) {
    const span = layout[name];
    const part = design[name];
    if (!span || !part) continue;
    const lined = Object.values(cutWalls(part)).some(({ lining }) => lining);
    sheet.rect(span, { pen: 'outline', fill: lined ? 'shade' : 'paper' });
    if (lined) sheet.rect(roomIn(span, part), { pen: 'thin', fill: 'paper' });
  }
  for (const box of layout.gathers) if (box) sheet.rect(box, { pen: 'hidden' });
  // a tube that comes out of a shell's side, seen through it
  layout.stacks.forEach((tube, i) => {
    const part = layout[design.stacks[i].part];
    if (!part || tube.low >= part.high) return;
    const seen = Math.min(part.high, tube.high);
    sheet.line(
      [
        [tube.left, seen],
        [tube.left, tube.low],
        [tube.right, tube.low],
        [tube.right, seen],
      ],
      { pen: 'hidden' },
    );
  });
}

/** What stands in the parts: reverse plate, openings in the shared plates. */
function drawInside(sheet: Sheet, design: Design, layout: PitLayout): void {
  const { chamber, upright, throat } = design;
  const gap = (x: number, centre: number, area: number) => {
    const half = Math.sqrt(area) / 2;
    sheet.rect(
      { left: x - 0.012, right: x + 0.012, low: centre - half, high: centre + half },
      { fill: 'paper', pen: 'thin' },
    );
  };
  const fire = fireGrateOf(design.firebox);
  if (fire) {
    const { left, right } = roomIn(layout.firebox, design.firebox);
    const { bars } = design.firebox.grate!;
    sheet.rect({ left, right, low: fire.height - bars, high: fire.height }, { pen: 'thin', fill: 'shade' });
  }
  if (layout.chamber && chamber) {
    gap(layout.chamber.left, throat.centre, throat.area);
    if (chamber.reverse) {
      const height = roomIn(layout.chamber, chamber).low + chamber.reverse.height;
      const turn = Math.min(chamber.length / 2, chamber.reverse.turn / Math.max(0.05, insideOf(chamber).width));
      sheet.line(
        [
          [layout.chamber.left, height],
          [layout.chamber.right - turn, height],
        ],
        { pen: 'outline' },
      );
    }
    if (chamber.plates) {
      const { left, right, low } = roomIn(layout.chamber, chamber);
      const height = low + chamber.plates.height;
      let from = 0;
      for (const gap of [...plateGaps(chamber), { from: 1, to: 1 }]) {
        const ends = [from, gap.from].map((share): [number, number] => [left + share * (right - left), height]);
        if (gap.from - from > 1e-6) sheet.line(ends, { pen: 'outline' });
        from = gap.to;
      }
    }
  } else if (layout.upright && throat.through === 'top') {
    const half = Math.sqrt(throat.area) / 2;
    const middle = (layout.upright.left + layout.upright.right) / 2;
    const roof = layout.firebox.high;
    sheet.rect(
      { left: middle - half, right: middle + half, low: roof - 0.012, high: roof + 0.012 },
      { fill: 'paper', pen: 'thin' },
    );
  } else if (layout.upright) {
    gap(layout.upright.left, throat.centre, throat.area);
  }
  if (layout.upright && upright) {
    if (upright.opening) gap(layout.upright.left, upright.opening.centre, upright.opening.area);
  }
}

function drawDoors(sheet: Sheet, design: Design, layout: PitLayout): void {
  for (const name of ['chamber', 'upright'] as const) {
    const span = layout[name];
    if (span) for (const each of doorsOf(design, name)) door(sheet, span, each);
  }
}

function door(sheet: Sheet, part: Span, { width, straight, along, centre }: PlacedDoor): void {
  const middle = part.left + along * (part.right - part.left);
  const half = Math.min(straight, part.high - part.low) / 2;
  sheet.rect(
    { left: middle - width / 2, right: middle + width / 2, low: centre - half, high: centre + half },
    { pen: 'hidden' },
  );
}

function drawStations(sheet: Sheet, rooms: Partial<Record<StationName, Span>>, notes: PitNotes): void {
  const { lettering } = sheet.place;
  for (const { name, share, lines, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room) continue;
    if (layers.length > 1) {
      drawLayers(sheet, room, layers);
      continue;
    }
    const fill = { heat: share };
    sheet.rect(room, { fill });
    const [x, y] = [sheet.x((room.left + room.right) / 2), sheet.y((room.low + room.high) / 2)];
    const fits = Math.max(1, Math.floor(((room.high - room.low) * sheet.place.scale) / (lettering * 1.25)));
    const wide = (room.right - room.left) * sheet.place.scale - 2;
    const shown = lines.filter((text) => sheet.widthOf(text) < wide).slice(0, fits);
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
function drawPlaces(sheet: Sheet, design: Design, layout: PitLayout): void {
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
function drawReadings(
  sheet: Sheet,
  rooms: Partial<Record<StationName, Span>>,
  layout: PitLayout,
  notes: PitNotes,
): void {
  const { lettering } = sheet.place;
  const taken: { x: number; y: number; half: number }[] = [];
  const write = (x: number, y: number, text: string, how: Partial<TextMark>) => {
    const half = sheet.widthOf(text) / 2 + 1;
    if (taken.some((each) => Math.abs(each.x - x) < each.half + half && Math.abs(each.y - y) < lettering)) return;
    taken.push({ x, y, half });
    sheet.text(x, y, text, { rim: true, ...how });
  };
  for (const { part, along, height, text } of notes.places ?? []) {
    const { left, right } = layout[part]!;
    const half = sheet.widthOf(text) / 2;
    const x = Math.min(sheet.x(left + along * (right - left)) + 8 + half, sheet.x(right) - half - 5);
    write(x, sheet.y(height) - 0.62 * lettering, text, { bold: true });
  }
  for (const { name, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room || layers.length < 2) continue;
    for (const { low, high, share, text } of layers) {
      const [bottom, top] = [Math.max(room.low, low), Math.min(room.high, high)];
      if ((top - bottom) * sheet.place.scale < lettering) continue;
      const x = sheet.x(room.left) + 4 + sheet.widthOf(text) / 2;
      write(x, sheet.y((bottom + top) / 2), text, { on: { heat: share } });
    }
  }
}

/** @returns what found no room, a sentence a part */
function drawPlateLabels(sheet: Sheet, design: Design, layout: PitLayout): string[] {
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
function drawGauge(sheet: Sheet, design: Design, layout: PitLayout): void {
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
function drawFlows(sheet: Sheet, design: Design, layout: PitLayout, flows: NonNullable<PitNotes['flows']>): void {
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
