/** Can each part be built: plate against size, doors, what stands inside, stacks on their parts. */
import { format } from '../units/index.js';
import { stackSection } from './geometryOf.js';
import type { Design, HorizontalPart, PartName, Stack, StationName, Upright } from './design.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { gasSection } from './joints.js';
import { widthAt } from './overlap.js';
import { depthOf, FACES, insideOf, wallAt, type FaceName } from './walls.js';

/** Room above a part's roof in which a stack may still begin: a collar or a coupling [m] (3 in, common practice, no source). */
const COLLAR = 0.0762;

/** Largest share of a face that stacks and a door may take together; beyond it nothing holds the part (estimate). */
const MOST_CUT = 0.9;

/** Largest share of a stack's diameter that its two walls may take. */
const MOST_WALL = 0.9;

const length = (si: number): string => format('length', si);

function isUpright(part: HorizontalPart | Upright): part is Upright {
  return 'depth' in part;
}

/** A part's plan: across, and along the gas's way. */
function plan(part: HorizontalPart | Upright): [number, number] {
  return isUpright(part) ? [part.width, part.depth] : [part.width, part.length];
}

function leastSize(part: HorizontalPart | Upright): number {
  return Math.min(...plan(part), part.height);
}

/** Do a part's plates and lining leave an inside? Where they don't, inside sizes mean nothing, and what hangs on them is not told. */
export function isHollow(part: HorizontalPart | Upright): boolean {
  const { width, height, length } = insideOf(part);
  const round = !isUpright(part) && part.shape === 'round';
  const thickest = Math.max(...FACES.slice(0, 3).map((face) => depthOf(wallAt(part, face))));
  return !(Math.min(width, height, length) <= 0 || (round && 2 * thickest >= part.width));
}

/** The first of a part's own fields that fills it up: its plate, or what is thicker than that on a face or inside it. */
function filledUp(name: PartName, part: HorizontalPart | Upright): Path {
  if (2 * part.plate >= leastSize(part)) return [name, 'plate'];
  if (part.lining && isHollow({ ...part, lining: undefined })) return [name, 'lining', 'thickness'];
  const plateAt = (face: FaceName) => wallAt(part, face).plate;
  return [name, FACES.reduce((thickest, face) => (plateAt(face) > plateAt(thickest) ? face : thickest)), 'plate'];
}

export function checkPart(design: Design, name: PartName, reading: Reading): void {
  const part = design[name];
  if (!part) return;
  if (!isHollow(part)) {
    const path = filledUp(name, part);
    reading.replace(path, {
      message: path.length === 2 ? 'is thicker than half the part' : `leaves no room inside the ${name}`,
      allowed: `less than half of ${length(leastSize(part))}`,
    });
  }
  if (part.centre - part.height / 2 < -1e-9) {
    reading.fault([name, 'centre'], {
      message: `puts the ${name} under the ground: it is ${length(part.height)} high`,
      allowed: `at least ${length(part.height / 2)}`,
    });
  }
  checkDoor(name, part, reading);
}

function checkDoor(name: PartName, part: HorizontalPart | Upright, reading: Reading): void {
  const { door } = part;
  if (!door) return;
  const path: Path = [name, 'door'];
  const { wide, high, round } = doorRoom(name, part);
  if (door.width > wide) {
    reading.fault([...path, 'width'], {
      message: `is wider than the ${name}'s face`,
      allowed: `up to ${length(wide)}`,
    });
  } else if (door.height > high) {
    reading.fault([...path, 'height'], {
      message: `is higher than the ${name}'s face`,
      allowed: `up to ${length(high)}`,
    });
  } else if (round && Math.hypot(door.width, door.height) > wide) {
    reading.fault(path, {
      message: 'has corners that stick out of the round end',
      allowed: `a diagonal of up to ${length(wide)}`,
      value: null,
    });
  }
}

/** Where doors are cut: the firebox's outer end, the chamber's shell or side, the upright's side. */
function doorRoom(name: PartName, part: HorizontalPart | Upright): { wide: number; high: number; round: boolean } {
  if (isUpright(part)) return { wide: Math.max(part.width, part.depth), high: part.height, round: false };
  if (name === 'firebox') return { wide: part.width, high: part.height, round: part.shape === 'round' };
  return { wide: part.length, high: part.shape === 'round' ? (Math.PI / 2) * part.width : part.height, round: false };
}

export function checkReverse(design: Design, reading: Reading): void {
  const { chamber, throat, stacks } = design;
  const reverse = chamber?.reverse;
  if (!reverse || !isHollow(chamber)) return;
  const path: Path = ['chamber', 'reverse'];
  const inside = gasSection(chamber);
  if (reverse.height + reverse.plate >= inside.height) {
    reading.fault([...path, 'height'], {
      message: 'puts the plate outside the chamber',
      allowed: `less than ${length(inside.height - reverse.plate)}`,
    });
    return;
  }
  const { floor, length: inner } = insideOf(chamber);
  const level = floor + reverse.height;
  const area = widthAt(inside, level) * inner;
  if (reverse.turn > 0.5 * area) {
    reading.fault([...path, 'turn'], {
      message: 'takes more than half of the plate away',
      allowed: `up to ${format('area', 0.5 * area)}`,
    });
  }
  if (throat.centre > level) {
    reading.fault(['throat', 'centre'], {
      message: 'lets the fire in above the reverse-flow plate',
      allowed: `less than ${length(level)}`,
    });
  }
  stacks.forEach((stack, i) => {
    if (stack.part === 'chamber' && stack.base <= level) {
      reading.fault(['stacks', i, 'base'], {
        message: 'draws from under the reverse-flow plate',
        allowed: `more than ${length(level)}`,
      });
    }
  });
}

export function checkStacks(design: Design, reading: Reading): void {
  design.stacks.forEach((stack, i) => checkStack(design, stack, ['stacks', i], reading));
  for (const name of ['chamber', 'upright'] as const) checkCut(design, name, reading);
}

function checkStack(design: Design, stack: Stack, path: Path, reading: Reading): void {
  const size = stackSection(stack);
  const narrow = Math.min(size.across, size.along);
  if (2 * stack.wall >= MOST_WALL * narrow) {
    reading.replace([...path, 'wall'], {
      message: 'is thicker than half the stack, or leaves hardly a bore',
      allowed: `less than ${length((MOST_WALL / 2) * narrow)}`,
    });
  }
  const part = design[stack.part];
  if (reading.hasFault([...path, 'part'])) return;
  if (!part) {
    if (design.chamber ?? design.upright) {
      const there = design.chamber ? 'chamber' : 'upright';
      reading.fault([...path, 'part'], {
        code: 'unknown-name',
        message: `names a part this pit lacks`,
        allowed: there,
      });
    }
    return;
  }
  const [across, along] = plan(part);
  const floor = part.centre - part.height / 2;
  const roof = part.centre + part.height / 2;
  if (stack.base < floor || stack.base > roof + COLLAR) {
    reading.fault([...path, 'base'], {
      message: `is outside the ${stack.part}, which reaches from ${length(floor)} to ${length(roof)} above the ground`,
      allowed: `${length(floor)} to ${length(roof + COLLAR)}`,
    });
  }
  const least = Math.min(across, along);
  const wide = { diameter: stack.diameter, width: stack.width, depth: stack.depth };
  for (const [key, side] of Object.entries(wide)) {
    if (side === undefined || !(side > least)) continue;
    reading.fault([...path, key], {
      message: `is wider than the ${stack.part} it stands on`,
      allowed: `up to ${length(least)}`,
      value: reading.at(path).has(key) ? undefined : null,
    });
  }
}

/** Stacks and door together must leave a face standing. */
function checkCut(design: Design, name: 'chamber' | 'upright', reading: Reading): void {
  const part = design[name];
  if (!part) return;
  const [across, along] = plan(part);
  const room = Math.min(across * along, isUpright(part) ? (across + 2 * along) * part.height : 2 * part.height * along);
  const door = part.door ? part.door.width * part.door.height : 0;
  const sizes = ['diameter', 'width', 'depth'];
  const feet = design.stacks
    .filter((stack, i) => stack.part === name && !sizes.some((key) => reading.hasFault(['stacks', i, key])))
    .map((stack) => stackSection(stack).area)
    .reduce((a, b) => a + b, 0);
  if (feet > 0 && feet > MOST_CUT * room) {
    reading.fault(['stacks'], {
      message: `take more than the ${name}'s roof together`,
      allowed: `up to ${format('area', MOST_CUT * room)} in all`,
      value: null,
    });
  } else if (door > 0 && feet + door > MOST_CUT * sideArea(part)) {
    reading.fault([name, 'door'], {
      message: `and the stacks leave nothing of the ${name}'s side`,
      allowed: `up to ${format('area', MOST_CUT * sideArea(part))} in all`,
      value: null,
    });
  }
}

/** The face that holds door and stacks: a round shell, both sides of a box, an upright's sides less the one it shares. */
function sideArea(part: HorizontalPart | Upright): number {
  if (isUpright(part)) return (part.width + 2 * part.depth) * part.height;
  return (part.shape === 'round' ? Math.PI * part.width : 2 * part.height) * part.length;
}

export function checkContents(design: Design, name: PartName, stations: StationName[], reading: Reading): void {
  design[name]?.contents.forEach((content, i) => {
    if (content.station && !stations.includes(content.station)) {
      reading.fault([name, 'contents', i, 'station'], {
        code: 'unknown-name',
        message: `is no station of this ${name}`,
        allowed: stations.join(', '),
      });
    }
  });
}
