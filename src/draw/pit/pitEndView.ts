import type { Design, HorizontalPart, Intake, Upright } from '../../design/design.js';
import { doorsOf } from '../../design/doors.js';
import { ashDoorCentre } from '../../design/fireGrate.js';
import { gatherOf } from '../../design/gather.js';
import { stackSection } from '../../design/stackSection.js';
import { widthAt } from '../../design/overlap.js';
import { depthOf, wallAt, type Wall } from '../../design/walls.js';
import { outOf, wrapOf, type PitLayout } from './pitLayout.js';
import type { Sheet } from '../sheet.js';

/** The pit from its fire end: what stands behind is drawn first and covered by what stands before it. */
export function drawEndView(sheet: Sheet, design: Design, layout: PitLayout): void {
  drawStacks(sheet, design, layout);
  if (design.upright) drawBox(sheet, design.upright);
  if (design.chamber) drawSection(sheet, design.chamber);
  drawSection(sheet, design.firebox);
  drawDoors(sheet, design);
  for (const intake of design.firebox.intakes) drawIntake(sheet, intake);
}

/** Widest half of the pit, insulation and side stacks included [m]. */
export function endHalfWidth(design: Design): number {
  const { firebox, chamber, upright } = design;
  const parts = [firebox, ...(chamber ? [chamber] : []), ...(upright ? [upright] : [])];
  const halves = parts.map((part) => part.width / 2 + outOf(wallAt(part, 'sides')));
  const tubes = design.stacks.map(
    (stack, i) => Math.abs(stackMiddle(design, i)) + Math.max(stackSection(stack).across, stack.gather?.depth ?? 0) / 2,
  );
  return Math.max(...halves, ...tubes);
}

function drawSection(sheet: Sheet, part: HorizontalPart): void {
  drawRings(sheet, part, true);
}

function drawBox(sheet: Sheet, part: Upright): void {
  drawRings(sheet, part, false);
}

/**
 * Heat shield, insulation, plate and lining of a section, from the outside in; `plate`: with the line of its inside.
 */
function drawRings(sheet: Sheet, part: HorizontalPart | Upright, plate: boolean): void {
  const walls = (['floor', 'roof', 'sides'] as const).map((name) => wallAt(part, name));
  const ring = (by: (wall: Wall) => number, look: Parameters<Sheet['rect']>[1]) =>
    outline(sheet, part, walls.map(by), look);
  if (walls.some(({ shield }) => shield)) ring(outOf, { pen: 'thin', fill: 'paper' });
  if (walls.some((wall) => wrapOf(wall) > 0)) ring(wrapOf, { pen: 'thin', fill: 'shade' });
  const lined = walls.some(({ lining }) => lining);
  ring(() => 0, { pen: 'outline', fill: lined ? 'shade' : 'paper' });
  if (lined) ring((wall) => -depthOf(wall), { pen: 'thin', fill: 'paper' });
  if (plate) ring((wall) => -wall.plate, { pen: 'dimension' });
}

/** Points along each third of a round part's girth. */
const ARC = 24;

/**
 * A section so much larger at floor, roof and sides [m]: a circle where that is the same all round, else by thirds of
 * its girth.
 */
function outline(
  sheet: Sheet,
  part: HorizontalPart | Upright,
  [floor, roof, sides]: number[],
  look: Parameters<Sheet['rect']>[1],
): void {
  const { width, height, centre } = part;
  if (!('shape' in part) || part.shape === 'square') {
    const [left, right] = [-width / 2 - sides, width / 2 + sides];
    sheet.rect({ left, right, low: centre - height / 2 - floor, high: centre + height / 2 + roof }, look);
    return;
  }
  if (floor === roof && roof === sides) {
    sheet.circle({ x: 0, height: centre }, width / 2 + sides, look);
    return;
  }
  // from the bottom round: half the floor, a side, the roof, the other side, half the floor
  const arcs = [[floor, 0, 60], [sides, 60, 120], [roof, 120, 240], [sides, 240, 300], [floor, 300, 360]] as const; // prettier-ignore
  const points = arcs.flatMap(([by, from, to]) =>
    Array.from({ length: ARC + 1 }, (_, i): [number, number] => {
      const angle = ((from + ((to - from) * i) / ARC) * Math.PI) / 180;
      const radius = width / 2 + by;
      return [radius * Math.sin(angle), centre - radius * Math.cos(angle)];
    }),
  );
  sheet.line(points, { ...look, closed: true });
}

/** Middle of a stack across the pit: on the roof's middle, or beside the shell that it leaves by its back. */
function stackMiddle(design: Design, index: number): number {
  const stack = design.stacks[index];
  const part = design[stack.part];
  if (!part) return 0;
  const roof = part.centre + part.height / 2;
  const box = gatherOf(design, stack);
  if (box ? box.onRoof : stack.base >= part.centre + 0.4 * part.height) return 0;
  const shape = 'shape' in part ? part.shape : 'square';
  const section = { shape, width: part.width, height: part.height, centre: part.centre };
  const across = box ? stack.gather!.depth : stackSection(stack).across;
  const [low, high] = box ? [box.low, box.high] : [stack.base, stack.base + across];
  const half = Math.max(widthAt(section, low), widthAt(section, Math.min(roof, high))) / 2;
  return half + across / 2;
}

function drawStacks(sheet: Sheet, design: Design, layout: PitLayout): void {
  layout.stacks.forEach((tube, i) => {
    const stack = design.stacks[i];
    const middle = stackMiddle(design, i);
    const { across } = stackSection(stack);
    const half = across / 2;
    if (middle > 0 && !layout.gathers[i]) {
      // the elbow that joins the tube to the shell
      sheet.rect(
        { left: 0, right: middle - half, low: tube.low, high: tube.low + 0.8 * across },
        { pen: 'thin', fill: 'paper' },
      );
    }
    const box = layout.gathers[i];
    if (box) {
      const deep = stack.gather!.depth / 2;
      sheet.rect(
        { left: middle - deep, right: middle + deep, low: box.low, high: box.high },
        { pen: 'outline', fill: 'paper' },
      );
    }
    sheet.rect(
      { left: middle - half, right: middle + half, low: tube.low, high: tube.high },
      { pen: 'outline', fill: 'paper' },
    );
  });
}

function drawDoors(sheet: Sheet, design: Design): void {
  const { ashDoor } = design.firebox;
  if (ashDoor) {
    const { width, height, open } = ashDoor;
    const [left, low] = [-width / 2, ashDoorCentre(design.firebox) - height / 2];
    sheet.rect({ left, right: left + width * open, low, high: low + height }, { fill: 'ink' });
    sheet.rect({ left, right: left + width, low, high: low + height }, { pen: 'hidden' });
  }
  for (const { width, height, centre } of doorsOf(design, 'firebox')) {
    sheet.rect(
      { left: -width / 2, right: width / 2, low: centre - height / 2, high: centre + height / 2 },
      { pen: 'hidden' },
    );
  }
}

/** Vents side by side, the open share of each filled: a spinner's sector, a slide's width. */
function drawIntake(sheet: Sheet, { kind, count, area, open, centre }: Intake): void {
  const round = kind !== 'slide';
  const width = round ? Math.sqrt((4 * area) / Math.PI) : Math.sqrt(2.5 * area);
  const height = round ? width : area / width;
  for (let i = 0; i < count; i++) {
    const x = (i - (count - 1) / 2) * 1.25 * width;
    if (!round) {
      const [left, low, high] = [x - width / 2, centre - height / 2, centre + height / 2];
      sheet.rect({ left, right: left + width * open, low, high }, { fill: 'ink' });
      sheet.rect({ left, right: left + width, low, high }, { pen: 'thin' });
      continue;
    }
    const at = { x, height: centre };
    if (open >= 1) sheet.circle(at, width / 2, { fill: 'ink' });
    else if (open > 0) sheet.line(sector(x, centre, width / 2, open), { fill: 'ink', closed: true });
    sheet.circle(at, width / 2, { pen: 'thin' });
  }
}

function sector(x: number, z: number, radius: number, share: number): [number, number][] {
  const steps = Math.max(2, Math.ceil(40 * share));
  const rim = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * share * i) / steps;
    return [x + radius * Math.sin(angle), z + radius * Math.cos(angle)];
  });
  return [[x, z], ...rim];
}
