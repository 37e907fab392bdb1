/** A design to its areas, masses, volumes and heights. */
import type { Design, HorizontalPart, Insulation, PartName, Stack, Steel, Upright } from './design.js';
import { steelDensity } from '../physics/steel.js';
import { deckArea, deckOf } from './decks.js';
import { doorsOf } from './doors.js';
import type { OpenFace } from './faces.js';
import { fireGrateOf } from './fireGrate.js';
import { gatherOf } from './gather.js';
import type { Face, Geometry, PartGeometry, SharedPlate, StackGeometry } from './geometry.js';
import { jointsOf, type Joint } from './joints.js';
import { stackSection } from './stackSection.js';
import { PARTS } from './stations.js';
import { horizontalPart, uprightPart, type OpenPart } from './partGeometry.js';

/**
 * Geometry of a design that `readDesign` accepted.
 *
 * Holes taken out of the plate: throat and upright opening, intakes at their full area, the foot of each stack. A door's hole
 * is closed by its leaf. A plate that two parts share is the outside of neither, and each counts half its mass.
 *
 * @returns SI: m, m2, m3, kg
 */
export function geometryOf(design: Design): Geometry {
  const opened = openParts(design);
  const joints = jointsOf(design);
  for (const joint of joints) {
    joint.parts.forEach((name, side) => giveTo(joint, opened.get(name)!, side));
  }
  cutHoles(design, opened);
  const shared = joints.map(sharedPlate);
  const parts = [...opened.values()].map((part) => closePart(design, part, shared));
  const stacks = design.stacks.map((stack) => {
    const gather = gatherOf(design, stack);
    return { ...stackGeometry(stack), ...(gather ? { gather } : {}) };
  });
  const total =
    sum(parts.map((part) => part.steelMass)) +
    sum(stacks.map(({ mass, gather }) => mass + (gather ? gather.mass + gather.contactMass : 0))) +
    sum(parts.map((part) => skinMass(part.faces, partOf(design, part.name)))) +
    sum(design.stacks.map(stackSkinMass)) +
    sum(
      parts.flatMap((part) =>
        partOf(design, part.name).contents.map((each) => (isSteel(each.material) ? each.mass : 0)),
      ),
    ) +
    sum((design.chamber?.grates ?? []).map(({ mass }) => mass)) +
    (fireGrateOf(design.firebox)?.mass ?? 0);
  return { parts, shared, stacks, totalSteelMass: total };
}

function sum(values: number[]): number {
  return values.reduce((a, b) => a + b, 0);
}

function isSteel(material: string): boolean {
  return material === 'steel' || material === 'stainless';
}

function partOf(design: Design, name: PartName): HorizontalPart | Upright {
  const part = design[name];
  if (!part) throw new RangeError(`the design has no ${name}`);
  return part;
}

function openParts(design: Design): Map<PartName, OpenPart> {
  const parts = new Map<PartName, OpenPart>([['firebox', horizontalPart('firebox', design.firebox)]]);
  if (design.chamber) parts.set('chamber', horizontalPart('chamber', design.chamber));
  if (design.upright) parts.set('upright', uprightPart(design.upright));
  return parts;
}

function face(parts: Map<PartName, OpenPart>, name: PartName, wanted: string): OpenFace {
  const found = parts.get(name)?.open.find((each) => each.name === wanted);
  if (!found) throw new RangeError(`${name} has no face ${wanted}`);
  return found;
}

/** A part gives its share of a joint. Of a head what the other part covers goes, and the gas in it. */
function giveTo(joint: Joint, part: OpenPart, side: number): void {
  const wanted = joint.faces[side];
  const own = face(new Map([[part.name, part]]), part.name, wanted);
  const { heads } = part;
  if (!heads || (wanted !== 'fireEnd' && wanted !== 'farEnd')) {
    own.give(joint.given[side], joint.centre);
    return;
  }
  const share = Math.min(1, joint.given[side] / joint.ends[side]);
  own.giveShare(share, joint.centre);
  part.gasVolume -= share * heads[wanted];
  heads[wanted] *= 1 - share;
}

function cutHoles(design: Design, parts: Map<PartName, OpenPart>): void {
  const { firebox, chamber } = design;
  for (const intake of firebox.intakes) face(parts, 'firebox', 'fireEnd').cut(intake.count * intake.area);
  if (firebox.ashDoor) face(parts, 'firebox', 'fireEnd').hang(firebox.ashDoor, firebox.ashDoor);
  for (const part of PARTS) {
    const side = part === 'chamber' && chamber?.shape === 'round' ? 'shell' : 'sides';
    for (const door of doorsOf(design, part)) face(parts, part, part === 'firebox' ? 'fireEnd' : side).hang(door, door);
  }
  for (const stack of design.stacks) {
    const gather = gatherOf(design, stack);
    const cut = gather ? gather.contact + stack.gather!.mouth : stackSection(stack).area;
    face(parts, stack.part, stackFace(design, stack)).cut(cut);
  }
}

/** The face a stack stands on: the roof when its base is in the top tenth, else the side or shell. */
function stackFace(design: Design, stack: Stack): string {
  if (stack.part === 'chamber' && design.chamber?.shape === 'round') return 'shell';
  const part = partOf(design, stack.part);
  const gather = gatherOf(design, stack);
  const onRoof = gather ? gather.onRoof : stack.base >= part.centre + 0.4 * part.height;
  return onRoof ? 'roof' : 'sides';
}

function sharedPlate(joint: Joint): SharedPlate {
  const { opening, thickness, steel } = joint;
  const area = joint.area - opening.area;
  const centre =
    joint.orientation === 'vertical'
      ? (joint.centre * joint.area - opening.centre * opening.area) / area
      : joint.centre;
  return {
    parts: joint.parts,
    orientation: joint.orientation,
    area,
    thickness,
    steel,
    mass: area * thickness * steelDensity(steel),
    length: joint.length,
    centre: Math.min(joint.high, Math.max(joint.low, centre)),
  };
}

function closePart(design: Design, part: OpenPart, shared: SharedPlate[]): PartGeometry {
  const { open, ...rest } = part;
  const own = partOf(design, part.name);
  const density = steelDensity(own.steel);
  const faces = open.map((each) => each.close(density)).filter((each): each is Face => each !== undefined);
  const half = shared.filter((each) => each.parts.includes(part.name));
  const deck = part.name === 'chamber' && design.chamber ? deckOf(design.chamber) : undefined;
  const deckMass = deck ? deckArea(design.chamber!) * deck.plate * density : 0;
  return {
    ...rest,
    faces,
    steelArea:
      sum(faces.map((each) => (each.outsideArea + each.insideArea) / 2)) + sum(half.map((each) => each.area / 2)),
    steelMass: sum(faces.map((each) => each.mass)) + sum(half.map((each) => each.mass / 2)) + deckMass,
  };
}

export function stackGeometry(stack: Stack): StackGeometry {
  const { wall, height } = stack;
  const [outside, inside] = [stackSection(stack), stackSection(stack, -wall)];
  const middle = stackSection(stack, -wall / 2);
  return {
    bore: inside.round ? inside.across : (4 * inside.area) / inside.girth,
    flowArea: inside.area,
    outsideArea: outside.girth * height,
    insideArea: inside.girth * height,
    mass: middle.girth * wall * height * steelDensity(stack.steel),
    volume: inside.area * height,
    base: stack.base,
    top: stack.base + height,
  };
}

/** Outer skin of a part [kg]: over the insulation, so a round shell's is larger by twice its thickness. */
export function skinMass(faces: Face[], { insulation, steel }: Pick<HorizontalPart, 'insulation' | 'steel'>): number {
  if (!insulation || insulation.thickness === 0) return 0;
  const areas = faces.map((each) =>
    each.orientation === 'horizontalCylinder'
      ? each.outsideArea * (1 + (2 * insulation.thickness) / each.length)
      : each.outsideArea,
  );
  return sum(areas) * insulation.skin * skinDensity(insulation, steel);
}

/** Steel of parts and stacks that insulation covers [m2]. */
export function insulatedArea(design: Design): number {
  const { parts, stacks } = geometryOf(design);
  const wrapped = ({ insulation }: { insulation?: Insulation }) => insulation !== undefined && insulation.thickness > 0;
  return (
    sum(
      parts.map(({ name, faces }) => (wrapped(partOf(design, name)) ? sum(faces.map((each) => each.outsideArea)) : 0)),
    ) + sum(design.stacks.map((stack, i) => (wrapped(stack) ? stacks[i].outsideArea : 0)))
  );
}

/** Outer skin of a stack [kg]. */
export function stackSkinMass(stack: Stack): number {
  const { insulation, steel } = stack;
  if (!insulation || insulation.thickness === 0) return 0;
  const area = stackSection(stack, insulation.thickness).girth * stack.height;
  return area * insulation.skin * skinDensity(insulation, steel);
}

function skinDensity({ skinSteel }: Insulation, wrapped: Steel): number {
  return steelDensity(skinSteel ?? wrapped);
}
