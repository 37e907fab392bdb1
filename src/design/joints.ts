/** Where two parts meet, and through which opening: the one place that knows which face of which part touches which. */
import type { Design, HorizontalPart, Opening, PartName, Steel, Upright } from './design.js';
import type { Path } from './path.js';
import { overlap, sectionArea, type Section } from './overlap.js';
import { insideOf, wallAt, type FaceName, type Wall } from './walls.js';

/** Where two parts share a plate with a hole in it. */
export interface Joint {
  parts: [PartName, PartName];
  /** faces that give the shared plate, in the order of `parts` */
  faces: [string, string];
  opening: Opening;
  /** path of the opening in a design file */
  path: Path;
  orientation: 'vertical' | 'up';
  /** area each face gives [m2]; they differ where a flat floor sits on a round roof */
  given: [number, number];
  /** section of each part there [m2] */
  ends: [number, number];
  /** shared plate before its opening is taken out [m2] */
  area: number;
  /** of the thicker plate of the two, as a whole; thickness in [m] */
  thickness: number;
  steel: Steel;
  /** of each part, towards it */
  linings: [Wall['lining'], Wall['lining']];
  /** height of its middle, lowest and highest point above the ground [m] */
  centre: number;
  low: number;
  high: number;
  /** length in the convection relations [m] */
  length: number;
}

function horizontalSection(part: HorizontalPart): Section {
  return { shape: part.shape, width: part.width, height: part.height, centre: part.centre };
}

/** The upright's side as seen along the chamber. */
function uprightSide(upright: Upright): Section {
  return { shape: 'square', width: upright.width, height: upright.height, centre: upright.centre };
}

/** What of a part's section gas fills, as seen along the gas's way. */
export function gasSection(part: HorizontalPart | Upright): Section {
  const { width, height, floor, roof } = insideOf(part);
  return { shape: 'depth' in part ? 'square' : part.shape, width, height, centre: 0.5 * (floor + roof) };
}

/** Every joint of a design: firebox to chamber or upright, chamber to upright. */
export function jointsOf(design: Design): Joint[] {
  const { firebox, chamber, upright, throat } = design;
  const joints: Joint[] = [];
  if (chamber) {
    joints.push(
      endJoint(['firebox', 'chamber'], ['farEnd', 'fireEnd'], firebox, horizontalSection(chamber), chamber, throat),
    );
  } else if (upright && throat.through === 'top') {
    joints.push(roofJoint(design, upright));
  } else if (upright) {
    joints.push(endJoint(['firebox', 'upright'], ['farEnd', 'sides'], firebox, uprightSide(upright), upright, throat));
  }
  if (chamber && upright?.opening) {
    joints.push({
      ...endJoint(['chamber', 'upright'], ['farEnd', 'sides'], chamber, uprightSide(upright), upright, upright.opening),
      path: ['upright', 'opening'],
    });
  }
  return joints;
}

/**
 * Of two plates that meet one is left between the parts: the thicker, as the heavier plate is the one a shop leaves
 * standing at the fire (common practice, no source). Of two that are alike the first, which stands nearer to the fire.
 */
function plateLeft(parts: [HorizontalPart | Upright, HorizontalPart | Upright], faces: Joint['faces']) {
  const [first, second] = parts.map((part, i) => ({ ...wallAt(part, NAMES[faces[i]]), steel: part.steel }));
  const { plate: thickness, steel } = first.plate >= second.plate ? first : second;
  return { thickness, steel, linings: [first.lining, second.lining] as Joint['linings'] };
}

/** Faces of a part's geometry as a design file names them; a round firebox meets an upright with its roof. */
const NAMES: Readonly<Record<string, FaceName>> = {
  fireEnd: 'fireEnd',
  farEnd: 'stackEnd',
  sides: 'sides',
  shell: 'roof',
  roof: 'roof',
  floor: 'floor',
};

/** Ends that butt. */
function endJoint(
  parts: Joint['parts'],
  faces: Joint['faces'],
  first: HorizontalPart,
  second: Section,
  other: HorizontalPart | Upright,
  opening: Opening,
): Joint {
  const { area, centre, low, high } = overlap(horizontalSection(first), second);
  return {
    parts,
    faces,
    opening,
    path: ['throat'],
    orientation: 'vertical',
    given: [area, area],
    ends: [sectionArea(horizontalSection(first)), sectionArea(second)],
    area,
    ...plateLeft([first, other], faces),
    centre,
    low,
    high,
    // A disc's 0.886 D is the side of the square of its area; the same holds for a lens or a box.
    length: Math.sqrt(area),
  };
}

/** An upright that stands on its firebox. On a round firebox the shared plate is the arc of roof under the upright. */
function roofJoint(design: Design, upright: Upright): Joint {
  const { firebox, throat } = design;
  const width = Math.min(firebox.width, upright.width);
  const depth = Math.min(firebox.length, upright.depth);
  const plan = width * depth;
  const roof = firebox.centre + firebox.height / 2;
  const across = firebox.shape === 'round' ? firebox.width * Math.asin(Math.min(1, width / firebox.width)) : width;
  const area = across * depth;
  const faces: Joint['faces'] = [firebox.shape === 'round' ? 'shell' : 'roof', 'floor'];
  return {
    parts: ['firebox', 'upright'],
    faces,
    opening: throat,
    path: ['throat'],
    orientation: 'up',
    given: [area, plan],
    ends: [area, upright.width * upright.depth],
    area,
    ...plateLeft([firebox, upright], faces),
    centre: roof,
    low: roof,
    high: roof,
    length: plan / (2 * (width + depth)),
  };
}
