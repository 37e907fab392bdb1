/** What a side view shows beside the parts: layers of gas, grates, plates, the gauge and the gas's way. */
import { coverWords } from './coverWords.js';
import { FreePaper } from './freePaper.js';
import type { Design, StationName } from '../../design/design.js';
import { formatPlate } from '../../units/index.js';
import type { PitNotes, StationNote } from './pitDrawing.js';
import { roomIn, type PitLayout, type Span } from './pitLayout.js';
import type { Sheet } from '../sheet.js';
import { gaugePlace, gratesOf, placesOf } from '../../design/places.js';
import { capital } from '../../words/plainText.js';

/** Stations in their temperatures' colours. */
export function drawStations(sheet: Sheet, rooms: Partial<Record<StationName, Span>>, notes: PitNotes): void {
  for (const { name, share, layers = [] } of notes.stations ?? []) {
    const room = rooms[name];
    if (!room) continue;
    if (layers.length > 1) drawLayers(sheet, room, layers);
    else sheet.rect(room, { fill: { heat: share } });
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
    drawDot(sheet, { x: span.left + along * (span.right - span.left), height });
  }
}

/** A thermometer that is not steered by. */
export function drawDot(sheet: Sheet, at: { x: number; height: number }): void {
  sheet.circle(at, 2.5 / sheet.place.scale, { pen: 'thin', fill: 'paper' });
}

/**
 * Between the lines of a label, as part of the lettering; labels move up and down in their part by so much at a time
 * [px].
 */
const LABEL_LINE = 1.3;
const SHIFT = 3;

/** As many lines of a label as stand clear of a plate that lies across their part, and the height of their middle. */
function placeLines(
  sheet: Sheet,
  paper: FreePaper,
  lines: string[],
  { left, right, low, high }: Span,
): { lines: string[]; y: number } {
  const x = sheet.x((left + right) / 2);
  const [top, bottom] = [sheet.y(high), sheet.y(low)];
  for (let count = lines.length; count > 0; count--) {
    const shown = lines.slice(0, count);
    const half = (count * LABEL_LINE * sheet.place.lettering) / 2;
    const wide = Math.max(...shown.map((text) => sheet.widthOf(text))) / 2;
    const most = (bottom - top) / 2 - half;
    for (let shift = 0; shift <= Math.max(0, most); shift += SHIFT) {
      const y = [-shift, shift]
        .map((by) => (top + bottom) / 2 + by)
        .find((each) => paper.isFree({ left: x - wide, right: x + wide, top: each - half, bottom: each + half }));
      if (y !== undefined) return { lines: shown, y };
    }
  }
  return { lines: [], y: 0 };
}

/** @returns what found no room, a sentence a part */
export function drawPlateLabels(sheet: Sheet, design: Design, layout: PitLayout): string[] {
  const unsaid: string[] = [];
  const gauge = gaugePlace(design);
  const paper = new FreePaper(sheet);
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
    const fitting = words.filter((text) => sheet.widthOf(text) < room - 6).slice(0, fits);
    const { lines, y } = placeLines(sheet, paper, fitting, { ...span, high });
    if (lines.length < words.length) unsaid.push(`${capital(name)}: ${words.slice(1).join(', ')}.`);
    const x = sheet.x((span.left + span.right) / 2);
    lines.forEach((text, i) => {
      const down = (i - (lines.length - 1) / 2) * LABEL_LINE * sheet.place.lettering;
      sheet.text(x, y + down, text, { rim: true, bold: i === 0, faint: i > 0 });
    });
  }
  return unsaid;
}

/** Radius of the cook's dial [px]. */
export const DIAL_RADIUS = 5.5;

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
