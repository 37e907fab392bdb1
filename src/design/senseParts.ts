/** Can each part be built: plate against size, doors, what stands inside, stacks on their parts. */
import { format } from '../units/index.js';
import { damperHeight, stackSection } from './stackSection.js';
import type { Chamber, Design, Door, HorizontalPart, PartName, Stack, StationName, Upright } from './design.js';
import { deckOf, deckWidth } from './decks.js';
import { doorsOf, type PlacedDoor } from './doors.js';
import { shortened } from './faults.js';
import { gatherOf } from './gather.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { depthOf, FACES, insideOf, wallAt, type FaceName } from './walls.js';

/** Room above a part's roof in which a stack may still begin: a collar or a coupling [m] (3 in, common practice, no source). */
const COLLAR = 0.0762;

/** Largest share of a face that stacks and a door may take together; beyond it nothing holds the part (estimate). */
const MOST_CUT = 0.9;

/** Largest share of a stack's diameter that its two walls may take. */
const MOST_WALL = 0.9;

/** Largest share of a row of plates that its gaps may take together: common practice, no source. */
const MOST_OPEN = 0.7;

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
  if ('flange' in part && (part.flange ?? 0) > 0 && part.heads === 'flat') {
    reading.fault([name, 'flange'], {
      message: 'is the straight flange of a head, and this part has flat ends',
      allowed: 'with heads: dished, elliptical or hemispherical, or left out',
      example: 'heads: dished, flange: 1-1/2 in',
    });
  }
  checkDoors(design, name, part, reading);
}

function checkDoors(design: Design, name: PartName, part: HorizontalPart | Upright, reading: Reading): void {
  const doors = doorsOf(design, name);
  doors.forEach((door, i) => {
    const path: Path = door.name === '' ? [name, 'door'] : [name, 'doors', i];
    checkDoor(name, part, door, path, reading);
    if (door.name === '') return;
    const [low, high] = [part.centre - part.height / 2, part.centre + part.height / 2];
    const room = { from: low + door.straight / 2, to: high - door.straight / 2 };
    if (door.centre < room.from - 1e-6 || door.centre > room.to + 1e-6) {
      reading.fault([...path, 'centre'], {
        message: `puts the door ${door.centre > room.to ? 'over the roof' : 'under the floor'} of the ${name}`,
        allowed: `${length(room.from)} to ${length(room.to)}`,
        value: reading.at(path).has('centre') ? undefined : null,
      });
    }
    if (name === 'chamber') checkAlong(part as HorizontalPart, door, path, reading);
    const other = doors.findIndex((each, j) => j < i && overlaps(part, name, each, door));
    if (other >= 0) {
      reading.fault(path, {
        message: `and ${plain(doors[other].name)} take the same place`,
        allowed: name === 'chamber' ? 'doors side by side (along: 25 %, along: 75 %)' : 'doors over each other',
        value: null,
      });
    }
  });
}

const plain = (name: string): string => `'${shortened(name)}'`;

function checkAlong(part: HorizontalPart, door: PlacedDoor, path: Path, reading: Reading): void {
  const half = door.width / 2 / part.length;
  if (door.along >= half - 1e-6 && door.along <= 1 - half + 1e-6) return;
  reading.fault([...path, 'along'], {
    message: 'puts the door past the end of the chamber',
    allowed: `${format('share', half)} to ${format('share', 1 - half)}`,
    value: reading.at(path).has('along') ? undefined : null,
  });
}

function overlaps(part: HorizontalPart | Upright, name: PartName, a: PlacedDoor, b: PlacedDoor): boolean {
  const close = 1e-6;
  const up = 0.5 * (a.straight + b.straight) - Math.abs(a.centre - b.centre) > close;
  if (name !== 'chamber' || isUpright(part)) return up;
  return up && 0.5 * (a.width + b.width) - Math.abs(a.along - b.along) * part.length > close;
}

function checkDoor(name: PartName, part: HorizontalPart | Upright, door: Door, path: Path, reading: Reading): void {
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

/** A reverse-flow plate or a row of plates lies inside the chamber, the fire comes in under it and the stack draws from over it. */
export function checkDeck(design: Design, reading: Reading): void {
  const { chamber, throat, stacks } = design;
  const deck = chamber && deckOf(chamber);
  if (!deck || !isHollow(chamber) || reading.hasFault(['chamber', 'plates'])) return;
  const path: Path = ['chamber', chamber.reverse ? 'reverse' : 'plates'];
  if (chamber.reverse && chamber.plates) {
    reading.fault(['chamber', 'plates'], {
      message: 'lie where the reverse-flow plate lies',
      allowed: 'reverse or plates',
      value: null,
    });
    return;
  }
  const { height: room, floor, length: inner } = insideOf(chamber);
  if (deck.height + deck.plate >= room) {
    reading.fault([...path, 'height'], {
      message: `puts the ${chamber.reverse ? 'plate' : 'plates'} outside the chamber`,
      allowed: `less than ${length(room - deck.plate)}`,
    });
    return;
  }
  const level = floor + deck.height;
  if (chamber.reverse) {
    const area = deckWidth(chamber) * inner;
    if (chamber.reverse.turn > 0.5 * area) {
      reading.fault([...path, 'turn'], {
        message: 'takes more than half of the plate away',
        allowed: `up to ${format('area', 0.5 * area)}`,
      });
    }
  } else checkGaps(chamber, path, reading);
  if (throat.centre > level) {
    reading.fault(['throat', 'centre'], {
      message: `lets the fire in above the ${deck.name}`,
      allowed: `less than ${length(level)}`,
    });
  }
  stacks.forEach((stack, i) => {
    const draws = gatherOf(design, stack)?.mouthCentre ?? stack.base;
    if (stack.part === 'chamber' && draws <= level) {
      reading.fault(['stacks', i, 'base'], {
        message: `draws from under the ${deck.name}`,
        allowed: `more than ${length(level)}`,
      });
    }
  });
}

function checkGaps(chamber: Chamber, path: Path, reading: Reading): void {
  const { gaps } = chamber.plates!;
  const example = '[4 in, 2 in, 2 in, 6 in]';
  if (gaps.length === 0) {
    if (reading.hasFault([...path, 'gaps'])) return;
    reading.fault([...path, 'gaps'], {
      code: 'missing',
      message: 'are missing: gas must get up through the plates',
      allowed: 'a list of lengths, along from the throat',
      example,
      value: null,
    });
    return;
  }
  const long = insideOf(chamber).length;
  const open = gaps.reduce((sum, gap) => sum + gap, 0);
  if (open > MOST_OPEN * long) {
    reading.fault([...path, 'gaps'], {
      message: `come to ${length(open)} of ${length(long)}: nothing to speak of is left of the plates`,
      allowed: `up to ${length(MOST_OPEN * long)} in all`,
      value: null,
    });
  }
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
  const at = damperHeight(stack);
  if (at < stack.base - 1e-6 || at > stack.base + stack.height + 1e-6) {
    reading.fault([...path, 'damperAt'], {
      message: `is outside the stack, which reaches from ${length(stack.base)} to ${length(stack.base + stack.height)} above the ground`,
      allowed: `${length(stack.base)} to ${length(stack.base + stack.height)}, top or base`,
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
  if (stack.gather) checkGather(design, stack, path, reading);
  const [across, along] = plan(part);
  const floor = part.centre - part.height / 2;
  const roof = part.centre + part.height / 2;
  const foot = stack.gather ? stack.base - stack.gather.height : stack.base;
  if (stack.base < floor || foot > roof + COLLAR) {
    reading.fault([...path, 'base'], {
      message: `${stack.gather ? 'puts its gather box off' : 'is outside'} the ${stack.part}, which reaches from ${length(floor)} to ${length(roof)} above the ground`,
      allowed: `${length(floor)} to ${length(roof + COLLAR + (stack.gather?.height ?? 0))}`,
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

/** A gather box stands against its part, its mouth in the wall that it covers, and the tube fits on it. */
function checkGather(design: Design, stack: Stack, path: Path, reading: Reading): void {
  const part = design[stack.part]!;
  const { width, depth, height, plate, mouth } = stack.gather!;
  const at: Path = [...path, 'gather'];
  const fault = (key: string, message: string, allowed: string) => {
    const given = reading.at(at).has(key);
    reading.fault([...at, key], { message, allowed, value: given ? undefined : null });
  };
  const least = Math.min(width, depth, height);
  if (2 * plate >= least) return fault('plate', 'is thicker than half the box', `less than half of ${length(least)}`);
  const box = gatherOf(design, stack)!;
  const [across, along] = plan(part);
  const wide = Math.max(across, along);
  if (width > wide) return fault('width', `is wider than the ${stack.part} that it stands on`, `up to ${length(wide)}`);
  const [low, high] = [part.centre - part.height / 2, part.centre + part.height / 2];
  const wall = box.onRoof
    ? { low: box.low - 1, high: box.low + 1 }
    : { low: Math.max(box.low, low), high: Math.min(box.high, high) };
  const room =
    (width - 2 * plate) * (box.onRoof ? depth - 2 * plate : Math.min(height - 2 * plate, wall.high - wall.low));
  if (mouth > room)
    return fault('mouth', 'is larger than the wall that the box covers', `up to ${format('area', Math.max(0, room))}`);
  if (box.mouthCentre < wall.low || box.mouthCentre > wall.high)
    fault('centre', 'is outside the wall that the box covers', `${length(wall.low)} to ${length(wall.high)}`);
  if (box.low < low - 1e-6)
    fault('height', `lets the box hang below the ${stack.part}`, `up to ${length(stack.base - low)}`);
  const tube = stackSection(stack);
  if (
    Math.max(tube.across, tube.along) > Math.max(width, depth) ||
    Math.min(tube.across, tube.along) > Math.min(width, depth)
  )
    fault(
      'depth',
      'is smaller than the tube that stands on the box',
      `at least ${length(Math.max(tube.across, tube.along))}`,
    );
}

/** Stacks and door together must leave a face standing. */
function checkCut(design: Design, name: 'chamber' | 'upright', reading: Reading): void {
  const part = design[name];
  if (!part) return;
  const [across, along] = plan(part);
  const room = Math.min(across * along, isUpright(part) ? (across + 2 * along) * part.height : 2 * part.height * along);
  const door = doorsOf(design, name).reduce((sum, { width, height }) => sum + width * height, 0);
  const sizes = ['diameter', 'width', 'depth'];
  const feet = design.stacks
    .filter((stack, i) => stack.part === name && !sizes.some((key) => reading.hasFault(['stacks', i, key])))
    .map((stack) => {
      const box = gatherOf(design, stack);
      return box ? box.contact + stack.gather!.mouth : stackSection(stack).area;
    })
    .reduce((a, b) => a + b, 0);
  if (feet > 0 && feet > MOST_CUT * room) {
    reading.fault(['stacks'], {
      message: `take more than the ${name}'s roof together`,
      allowed: `up to ${format('area', MOST_CUT * room)} in all`,
      value: null,
    });
  } else if (door > 0 && feet + door > MOST_CUT * sideArea(part)) {
    reading.fault([name, part.doors ? 'doors' : 'door'], {
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
