/**
 * Can stacks stand where the file says: on their part, round their gather box, and leave enough of the plate they are
 * cut into.
 */
import { length } from './faults.js';
import { MOST_WALL } from './ranges.js';
import { format } from '../units/index.js';
import { damperHeight, stackSection } from './stackSection.js';
import type { Design, HorizontalPart, Stack, Upright } from './design.js';
import { doorsOf } from './doors.js';
import { gatherOf } from './gather.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { isUpright, plan } from './partPlan.js';

/**
 * Room above a part's roof in which a stack may still begin: a collar or a coupling [m] (3 in, common practice, no
 * source).
 */
const COLLAR = 0.0762;

/** Largest share of a face that stacks and a door may take together; beyond it nothing holds the part (estimate). */
const MOST_CUT = 0.9;

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

/**
 * The face that holds door and stacks: a round shell, both sides of a box, an upright's sides less the one it shares.
 */
function sideArea(part: HorizontalPart | Upright): number {
  if (isUpright(part)) return (part.width + 2 * part.depth) * part.height;
  return (part.shape === 'round' ? Math.PI * part.width : 2 * part.height) * part.length;
}
