/** A design to its areas, masses, volumes and heights. */
import { LININGS } from './catalog/index.js';
import type { Design, HorizontalPart, Insulation, PartName, Stack, Steel, Upright } from './design.js';
import { steelDensity } from '../physics/steel.js';
import { deckArea, deckOf } from './decks.js';
import { doorsOf, leafName, type PlacedDoor } from './doors.js';
import type { OpenFace } from './faces.js';
import { fireGrateOf } from './fireGrate.js';
import { gatherOf } from './gather.js';
import type { Face, Geometry, PartGeometry, SharedPlate, StackGeometry } from './geometry.js';
import { jointsOf, type Joint } from './joints.js';
import { stackSection } from './stackSection.js';
import { PARTS } from './stations.js';
import { leafWall, type Wall } from './walls.js';
import { horizontalPart, uprightPart, type OpenPart } from './partGeometry.js';

/**
 * Geometry of a design that `readDesign` accepted.
 *
 * Holes taken out of the plate: throat and upright opening, intakes at their full area, the foot of each stack. A
 * door's hole is closed by its leaf. A plate that two parts share is the outside of neither, and each counts half its
 * mass.
 *
 * @returns SI: m, m2, m3, kg
 */
export function geometryOf(design: Design): Geometry {
  const opened = openParts(design);
  const joints = jointsOf(design);
  for (const joint of joints) {
    joint.parts.forEach((name, side) => giveTo(joint, opened, name, side));
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
    sum(parts.map((part) => skinMass(part.faces, partOf(design, part.name).steel))) +
    sum(parts.map((part) => shieldMass(part.faces, partOf(design, part.name).steel))) +
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

type OpenParts = Map<PartName, OpenPart>;

function face(parts: OpenParts, name: PartName, wanted: string): OpenFace {
  const found = parts.get(name)?.open.find((each) => each.name === wanted);
  if (!found) throw new RangeError(`${name} has no face ${wanted}`);
  return found;
}

/** A part gives its share of a joint. Of a head what the other part covers goes, and the gas in it. */
function giveTo(joint: Joint, parts: OpenParts, name: PartName, side: number): void {
  const wanted = joint.faces[side];
  const part = parts.get(name)!;
  const { heads } = part;
  if (!heads || (wanted !== 'fireEnd' && wanted !== 'farEnd')) {
    give(parts, name, wanted, joint.given[side], joint.centre);
    return;
  }
  const share = Math.min(1, joint.given[side] / joint.ends[side]);
  face(parts, name, wanted).giveShare(share, joint.centre);
  part.gasVolume -= share * heads[wanted];
  heads[wanted] *= 1 - share;
}

/** A shell that is one wall, or of one in thirds those that are named, the first to be taken from first. */
function shellOf(parts: OpenParts, name: PartName, thirds: readonly string[]): OpenFace[] {
  const whole = parts.get(name)?.open.find((each) => each.name === 'shell');
  return whole ? [whole] : thirds.map((third) => face(parts, name, third));
}

/**
 * Give area of a face to a plate shared with another part; a round firebox gives the top of its shell to an upright on
 * it.
 */
function give(parts: OpenParts, name: PartName, wanted: string, area: number, middle: number): void {
  const faces = wanted === 'shell' ? shellOf(parts, name, ['roof', 'sides']) : [face(parts, name, wanted)];
  let rest = area;
  faces.forEach((each, i) => {
    const own = i < faces.length - 1 ? Math.min(rest, each.left) : rest;
    each.give(own, middle);
    rest -= own;
  });
}

function cutHoles(design: Design, parts: Map<PartName, OpenPart>): void {
  const { firebox, chamber } = design;
  for (const intake of firebox.intakes) face(parts, 'firebox', 'fireEnd').cut(intake.count * intake.area);
  const front = face(parts, 'firebox', 'fireEnd');
  if (firebox.ashDoor) front.hang(firebox.ashDoor, firebox.ashDoor);
  for (const part of PARTS) {
    const doors = doorsOf(design, part);
    if (doors.length === 0) continue;
    // a lid lies in the upper front of a shell
    const lid = part === 'chamber' && chamber?.shape === 'round';
    const hosts =
      part === 'firebox' ? [front] : lid ? shellOf(parts, part, ['sides', 'roof']) : [face(parts, part, 'sides')];
    for (const door of doors) hangDoor(parts, part, partOf(design, part), door, hosts);
  }
  for (const stack of design.stacks) {
    const gather = gatherOf(design, stack);
    const cut = gather ? gather.contact + stack.gather!.mouth : stackSection(stack).area;
    stackFace(design, stack, parts).cut(cut);
  }
}

/** Hang a door in faces that share it evenly: in their plate, or as a face of its own where it is covered otherwise. */
function hangDoor(
  parts: OpenParts,
  name: PartName,
  part: HorizontalPart | Upright,
  door: PlacedDoor,
  hosts: OpenFace[],
): void {
  const wall = leafWall(part, door, name === 'firebox' ? 'fireEnd' : 'sides');
  if (!wall) {
    for (const host of hosts) host.hang(door, door, 1 / hosts.length);
    return;
  }
  const reach = hosts.length > 1 ? { low: 0.25, high: 1 } : undefined;
  parts.get(name)!.open.push(hosts[0].leaf(leafName(door), door, wall, reach));
  for (const host of hosts) host.give((door.width * door.height) / hosts.length, NaN);
}

/** The face a stack stands on: the roof when its base is in the top tenth, else the side or shell. */
function stackFace(design: Design, stack: Stack, parts: OpenParts): OpenFace {
  const part = partOf(design, stack.part);
  const gather = gatherOf(design, stack);
  if (stack.part === 'chamber' && design.chamber?.shape === 'round') {
    const above = (stack.base - part.centre) / part.height;
    const third = gather ? gather.face : above >= 0.25 ? 'roof' : above >= -0.25 ? 'sides' : 'floor';
    return shellOf(parts, 'chamber', [third])[0];
  }
  const onRoof = gather ? gather.face === 'roof' : stack.base >= part.centre + 0.4 * part.height;
  return face(parts, stack.part, onRoof ? 'roof' : 'sides');
}

function sharedPlate(joint: Joint): SharedPlate {
  const { opening, thickness, steel, linings } = joint;
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
    linings,
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
    liningMass:
      sum(faces.map(liningMass)) + sum(half.map((each) => sharedLiningMass(each, each.parts.indexOf(part.name)))),
  };
}

/** Sizes and weight of a stack. SI. */
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

/** By how much what is laid onto a face is larger than it at a distance from it: over a round shell it is a ring. */
export function growth({ orientation, length }: Pick<Face, 'orientation' | 'length'>, distance: number): number {
  return orientation === 'horizontalCylinder' ? 1 + (2 * distance) / length : 1;
}

/** Outer skins of a part [kg]: over the insulation, so a round shell's is larger by twice its thickness. */
export function skinMass(faces: Face[], steel: Steel): number {
  return sum(
    faces.map((each) => {
      const { insulation } = each.wall;
      if (!insulation) return 0;
      return each.outsideArea * growth(each, insulation.thickness) * insulation.skin * skinDensity(insulation, steel);
    }),
  );
}

/** Heat shields of a part [kg], of its steel: as large as what they stand before, over insulation and gap. */
export function shieldMass(faces: Face[], steel: Steel): number {
  return sum(
    faces.map((each) => {
      const { shield, insulation } = each.wall;
      if (!shield) return 0;
      const distance = (insulation?.thickness ?? 0) + shield.gap;
      return each.outsideArea * growth(each, distance) * shield.plate * steelDensity(steel);
    }),
  );
}

/** Brick and board inside a face [kg]. */
export function liningMass({ lining, wall }: Face): number {
  return wall.lining ? lining * LININGS[wall.lining.material].density : 0;
}

/** Brick and board on one side of a plate between two parts [kg]. */
export function sharedLiningMass({ area, linings }: SharedPlate, side: number): number {
  const lining = linings[side];
  return lining ? area * lining.thickness * LININGS[lining.material].density : 0;
}

/** Steel of parts and stacks that insulation covers [m2]. */
export function insulatedArea(design: Design): number {
  const { parts, stacks } = geometryOf(design);
  const wrapped = ({ insulation }: { insulation?: Insulation }) => insulation !== undefined && insulation.thickness > 0;
  return (
    faceArea(parts, ({ insulation }) => insulation !== undefined) +
    sum(design.stacks.map((stack, i) => (wrapped(stack) ? stacks[i].outsideArea : 0)))
  );
}

/** Hot face of brick and board in all parts [m2]. */
export function linedArea(design: Design): number {
  const { parts, shared } = geometryOf(design);
  return (
    sum(parts.flatMap(({ faces }) => faces.map(({ wall, insideArea }) => (wall.lining ? insideArea : 0)))) +
    sum(shared.flatMap(({ area, linings }) => linings.map((lining) => (lining ? area : 0))))
  );
}

function faceArea(parts: PartGeometry[], counts: (wall: Wall) => boolean): number {
  return sum(parts.map(({ faces }) => sum(faces.map((each) => (counts(each.wall) ? each.outsideArea : 0)))));
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
