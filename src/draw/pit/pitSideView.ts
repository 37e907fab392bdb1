import { deckOf, hasGaps, plateGaps } from '../../design/decks.js';
import type { Design, HorizontalPart } from '../../design/design.js';
import { damperHeight } from '../../design/stackSection.js';
import { doorsOf, type PlacedDoor } from '../../design/doors.js';
import { fireGrateOf } from '../../design/fireGrate.js';
import { headReach } from '../../design/heads.js';
import { insideOf } from '../../design/walls.js';
import type { Box } from '../box.js';
import type { PitNotes } from './pitDrawing.js';
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
import type { Sheet } from '../sheet.js';
import { drawReadings } from './pitReadings.js';
import { drawStations, drawPlaces, drawPlateLabels, drawGauge, drawFlows } from './pitSideNotes.js';

/**
 * The pit from its side, fire at the left: parts, throat, plate, stacks, with what the notes say in each station.
 *
 * @returns what of plates and covers found no room in their parts
 */
export function drawSideView(
  sheet: Sheet,
  design: Design,
  layout: PitLayout,
  { notes, over }: { notes: PitNotes; over: readonly Box[] },
): string[] {
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
  drawReadings(sheet, rooms, layout, { notes, over });
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
    const deck = deckOf(chamber);
    if (deck && hasGaps(chamber)) {
      const { left, right, low } = roomIn(layout.chamber, chamber);
      const height = low + deck.height;
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
