import type { Design, PartName, StationName } from '../../design/design.js';
import { stackSection } from '../../design/stackSection.js';
import { format, type UnitSystem } from '../../units/index.js';
import type { Drawing, Mark } from '../drawing.js';
import { drawEndView, endHalfWidth } from './pitEndView.js';
import type { Box } from '../box.js';
import { headDepth, pitLayout, type PitLayout } from './pitLayout.js';
import { drawSideView } from './pitSideView.js';
import { Sheet, type ViewPlace } from '../sheet.js';

/** What a result adds to the drawing. */
/** Of a reading: a dial or a dot that stands there, one that stands there with its reading alone, or none. */
export type PlaceMark = 'drawn' | 'asked' | 'none';

/** What is written and coloured into a drawing of the pit. */
export interface PitNotes {
  /** a station's colour, as share 0..1 of the temperature scale, and what is written in it, most telling line first */
  stations?: readonly StationNote[];
  /** what stands at grates, racks and dials; of stations with layers that alone is said of thermometers */
  places?: readonly { part: PartName; along: number; height: number; text: string; mark: PlaceMark }[];
  /** texts at the arrows of the gas */
  flows?: { intake?: string; stack?: string };
}

/** What is told of a station; share and heights as in `PitNotes`, heights in m. */
export interface StationNote {
  name: StationName;
  share: number;
  lines: readonly string[];
  /** where its gas is told by height, lowest first: heights above the ground, colour and number of each */
  layers?: readonly { low: number; high: number; share: number; text: string }[];
}

/** Which views, and how large [px]. */
export interface PitDrawingOptions {
  /** of the whole drawing [px] */
  width: number;
  /** side and end view beside each other, or the end view under the side view, or the side view alone; to one scale */
  arrange: 'row' | 'column' | 'side';
  /** size of lettering [px], default 12 */
  lettering?: number;
  /** at most so high [px]; a tall pit then comes out smaller */
  maxHeight?: number;
  notes?: PitNotes;
  /** what stands over the side view, that no reading may lie under */
  over?: (side: ViewPlace) => readonly Box[];
  /** units of its sizes (default shop) */
  system?: UnitSystem;
}

/**
 * Scale drawing of a pit with its main dimensions, from the design's own numbers.
 *
 * @param design as read, SI
 * @returns the drawing, its scale [px per m], what of plates and covers found no room in it, a sentence a part, and
 * where its side view stands
 * @example drawingSvg(pitDrawing(design, { width: 900, arrange: 'row' }), paint, 'Side and end view')
 */
export function pitDrawing(
  design: Design,
  options: PitDrawingOptions,
): Drawing & { scale: number; unsaid: string[]; side: ViewPlace } {
  const {
    width,
    arrange,
    notes = {},
    over = () => [],
    lettering = 12,
    maxHeight = Infinity,
    system = 'shop',
  } = options;
  const size = (metres: number) => format('length', metres, system);
  const layout = pitLayout(design);
  const half = endHalfWidth(design);
  const { all } = layout;
  const step = lettering * 1.7;
  const ends = [design.firebox, design.chamber ?? design.upright ?? design.firebox];
  const widest = Math.max(...ends.map((part) => sizeOf(part, size(part.width)).length));
  const margin = {
    left: 10 + step * 1.3 + (notes.flows?.intake === undefined ? 0 : notes.flows.intake.length * lettering * 0.52 + 24),
    // a size that is wider than its part stands right of the end view
    right: Math.max(10 + step * 1.3, arrange === 'row' ? 12 + widest * lettering * 0.52 : 0),
    top: 10 + step,
    bottom: 14 + step * 2.2,
    between: 16 + step * 2.4,
  };
  const long = all.right - all.left;
  const across = arrange === 'row' ? long + 2 * half : Math.max(long, arrange === 'column' ? 2 * half : 0);
  const room = width - margin.left - margin.right - (arrange === 'row' ? margin.between : 0);
  const views = arrange === 'column' ? 2 : 1;
  const tall = (maxHeight - views * (margin.top + margin.bottom)) / (views * all.high);
  const scale = Math.max(1, Math.min(room / across, tall));
  const viewHeight = margin.top + all.high * scale + margin.bottom;
  // what a capped height leaves over in width is shared out at both sides
  const slack = Math.max(0, room - across * scale) / 2;
  const ground = margin.top + all.high * scale;

  const side = new Sheet({ left: margin.left + slack - all.left * scale, ground, scale, lettering });
  drawGround(side, all.left, all.right);
  const unsaid = drawSideView(side, design, layout, { notes, over: over(side.place) });
  sideDimensions(side, design, layout, { step, notes, size });
  const marks: Mark[] = [...side.marks];
  if (arrange !== 'side') {
    const right = side.x(all.right) + margin.between + half * scale;
    const end =
      arrange === 'row'
        ? new Sheet({ left: right, ground, scale, lettering })
        : new Sheet({ left: width / 2, ground: ground + viewHeight, scale, lettering });
    drawGround(end, -half, half);
    drawEndView(end, design, layout);
    endDimensions(end, design, half, { step, size });
    marks.push(...end.marks);
  }
  return { width, height: viewHeight * views, marks, scale, unsaid, side: side.place };
}

/** A length in words. */
type Size = (metres: number) => string;

function drawGround(sheet: Sheet, left: number, right: number): void {
  const over = 12;
  const [from, to] = [sheet.x(left) - over, sheet.x(right) + over];
  const { ground } = sheet.place;
  sheet.marks.push({
    shape: 'line',
    points: [
      [from, ground],
      [to, ground],
    ],
    pen: 'thin',
  });
}

function sideDimensions(
  sheet: Sheet,
  design: Design,
  layout: PitLayout,
  { step, notes, size }: { step: number; notes: PitNotes; size: Size },
): void {
  const { firebox, chamber, upright, all, stacks } = layout;
  const chain = [firebox, chamber, design.throat.through === 'top' ? undefined : upright].filter(
    (part) => part !== undefined,
  );
  for (const { left, right } of chain) sheet.dimensionAlong(left, right, step, size(right - left));
  if (chain.length > 1) {
    const last = chain[chain.length - 1];
    // over the heads that stand free
    const left = firebox.left - headDepth(design.firebox, 'fireEnd');
    const right = last.right + (last === chamber ? headDepth(design.chamber!, 'stackEnd') : 0);
    sheet.dimensionAlong(left, right, step * 2.1, size(right - left));
  }
  const leftEdge = sheet.x(all.left);
  sheet.dimensionUp(0, design.firebox.centre, leftEdge - step, sheet.x(firebox.left), size(design.firebox.centre));
  const tube = stacks[0];
  if (!notes.flows?.stack) {
    stacks.forEach((each, i) => {
      const { round, across, along } = stackSection(design.stacks[i]);
      const section = round ? `Ø ${size(across)}` : `${size(across)} × ${size(along)}`;
      const text = `${section}, ${size(design.stacks[i].height)} long`;
      // clear of the dimension that stands beside it
      const most = sheet.x(all.right) + step - 8 - sheet.widthOf(text) / 2;
      sheet.text(Math.min(most, sheet.x((each.left + each.right) / 2)), sheet.y(each.high) - step * 0.5, text);
    });
  }
  if (tube) sheet.dimensionUp(0, tube.high, sheet.x(all.right) + step, sheet.x(tube.right), size(tube.high));
}

function endDimensions(sheet: Sheet, design: Design, half: number, { step, size }: { step: number; size: Size }): void {
  const { firebox, chamber, upright } = design;
  const behind = chamber ?? upright;
  const free = Math.max(firebox.width, behind?.width ?? 0) / 2;
  sheet.dimensionAlong(-firebox.width / 2, firebox.width / 2, step, sizeOf(firebox, size(firebox.width)), free);
  if (behind && behind.width !== firebox.width) {
    sheet.dimensionAlong(-behind.width / 2, behind.width / 2, step * 2.1, size(behind.width), free);
  }
  const right = sheet.x(half) + step;
  if (behind) {
    sheet.dimensionUp(
      behind.centre - behind.height / 2,
      behind.centre + behind.height / 2,
      right,
      sheet.x(0),
      sizeOf(behind, size(behind.height)),
    );
  }
}

/** A round part is told by its diameter. */
function sizeOf(part: object, size: string): string {
  return `${'shape' in part && part.shape === 'round' ? 'Ø ' : ''}${size}`;
}
