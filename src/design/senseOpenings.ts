/** Can gas pass where the file says: vents on the firebox face, throat and upright opening inside what they join. */
import { length } from './faults.js';
import { format } from '../units/index.js';
import type { Design, HorizontalPart, Intake, Upright } from './design.js';
import { ashDoorCentre } from './fireGrate.js';
import { gasSection, jointsOf, type Joint } from './joints.js';
import { overlap, sectionArea, widthAt } from './overlap.js';
import type { Reading } from './reading.js';
import { isHollow } from './senseParts.js';
import type { Path } from './path.js';
import { insideOf } from './walls.js';

/** How far an upright's floor may stand off its firebox's roof [m] (3 in, common practice, no source). */
const SEAT = 0.0762;

/** Share of the firebox's inside height over which a grate leaves no room for wood: common practice, no source. */
const MOST_GRATE = 0.8;

const area = (si: number): string => format('area', si, 'shop', { unit: 'in²' });

/** Height of one vent, where its kind tells it [m]. */
function ventHeight(intake: Intake): number {
  return intake.kind === 'slide' ? 0 : Math.sqrt((4 * intake.area) / Math.PI);
}

/** Vents fit into the firebox, and do not stand over or under it. */
export function checkIntakes(design: Design, reading: Reading): void {
  checkGrate(design, reading);
  const { firebox } = design;
  const face = isHollow(firebox) ? sectionArea(gasSection(firebox)) : Infinity;
  const [low, high] = [firebox.centre - firebox.height / 2, firebox.centre + firebox.height / 2];
  let alone = false;
  firebox.intakes.forEach((intake, i) => {
    const path: Path = ['firebox', 'intakes', i];
    if (intake.area > face) {
      alone = true;
      reading.fault([...path, sizeKey(reading, path)], {
        message: `makes a vent of ${area(intake.area)}, larger than the firebox face`,
        allowed: `up to ${area(face)}`,
      });
    } else if (intake.centre - ventHeight(intake) / 2 < low || intake.centre + ventHeight(intake) / 2 > high) {
      const over = intake.centre + ventHeight(intake) / 2 > high;
      reading.fault([...path, 'centre'], {
        message: over ? 'puts the vent above the firebox roof' : 'puts the vent under the firebox floor',
        allowed: `${length(low + ventHeight(intake) / 2)} to ${length(high - ventHeight(intake) / 2)}`,
      });
    }
  });
  const all = firebox.intakes.reduce((sum, intake) => sum + intake.count * intake.area, 0);
  if (!alone && all > face) {
    reading.fault(['firebox', 'intakes'], {
      message: `come to ${area(all)} together, larger than the firebox face`,
      allowed: `up to ${area(face)}`,
      value: null,
    });
  }
}

/** The grate stands inside the firebox, and its ash door under it. */
function checkGrate({ firebox }: Design, reading: Reading): void {
  const { grate, ashDoor } = firebox;
  if (!isHollow(firebox)) return;
  const { height: room, floor } = insideOf(firebox);
  if (grate && grate.height >= MOST_GRATE * room) {
    reading.fault(['firebox', 'grate', 'height'], {
      message: `leaves no room for a fire: the firebox is ${length(room)} high inside`,
      allowed: `less than ${length(MOST_GRATE * room)}`,
    });
  }
  if (!ashDoor) return;
  if (!grate) {
    if (reading.hasFault(['firebox', 'grate'])) return;
    reading.fault(['firebox', 'ashDoor'], {
      message: 'opens the ash space under a grate, and the firebox has none',
      allowed: 'with firebox.grate; without one it is an intake',
      example: 'grate: { height: 6 in }',
      value: null,
    });
    return;
  }
  const [low, high] = [floor + ashDoor.height / 2, floor + grate.height - ashDoor.height / 2];
  const centre = ashDoorCentre(firebox);
  if (ashDoor.height > grate.height) {
    reading.fault(['firebox', 'ashDoor', 'height'], {
      message: `is higher than the ash space, ${length(grate.height)} from floor to grate`,
      allowed: `up to ${length(grate.height)}`,
    });
  } else if (centre < low - 1e-6 || centre > high + 1e-6) {
    reading.fault(['firebox', 'ashDoor', 'centre'], {
      message: 'puts the ash door outside the ash space under the grate',
      allowed: `${length(low)} to ${length(high)}`,
    });
  } else {
    const section = { shape: firebox.shape, width: firebox.width, height: firebox.height, centre: firebox.centre };
    const wide = Math.min(widthAt(section, centre - ashDoor.height / 2), widthAt(section, centre + ashDoor.height / 2));
    if (ashDoor.width > wide) {
      reading.fault(['firebox', 'ashDoor', 'width'], {
        message: 'is wider than the firebox there',
        allowed: `up to ${length(wide)}`,
      });
    }
  }
}

function sizeKey(reading: Reading, path: Path): string {
  const intake = reading.at(path);
  return ['diameter', 'width', 'area'].find((key) => intake.has(key)) ?? 'area';
}

/** Parts that are joined meet, and the opening fits into where they do. */
export function checkJoints(design: Design, reading: Reading): void {
  const { firebox, chamber, upright, throat } = design;
  for (const joint of jointsOf(design)) {
    if (joint.orientation === 'up' && upright) checkSeat(firebox, upright, throat, reading);
    else if (joint.parts[0] === 'chamber' && chamber && upright) checkEnd(joint, chamber, upright, reading);
    else if (joint.parts[1] === 'chamber' && chamber) checkEnd(joint, firebox, chamber, reading);
    else if (upright) checkEnd(joint, firebox, upright, reading);
  }
}

/** Two ends that butt: they must meet, and the opening must fit into where they do. */
function checkEnd(joint: Joint, first: HorizontalPart, second: HorizontalPart | Upright, reading: Reading): void {
  if (!isHollow(first) || !isHollow(second)) return;
  const [a, b] = joint.parts;
  const sections = [gasSection(first), gasSection(second)];
  const { opening, path } = joint;
  const shared = overlap(sections[0], sections[1]);
  if (shared.low >= shared.high) {
    reading.fault(path, {
      message: `joins ${a} and ${b}, which do not meet: the ${a} reaches from ${reach(first)}, the ${b} from ${reach(second)} above the ground`,
      allowed: 'parts that overlap in height',
      value: null,
    });
    return;
  }
  const names = [a, b];
  const tight = sections.findIndex((section) => opening.area > sectionArea(section));
  if (tight >= 0) {
    reading.fault([...path, 'area'], {
      message: `is larger than the section of the ${names[tight]} it joins`,
      allowed: `up to ${area(shared.area)}, where ${a} and ${b} meet`,
    });
  } else if (opening.area > shared.area) {
    reading.fault([...path, 'area'], {
      message: `is larger than what ${a} and ${b} have in common`,
      allowed: `up to ${area(shared.area)}`,
    });
  }
  if (opening.centre <= shared.low || opening.centre >= shared.high) {
    const over = opening.centre >= shared.high;
    reading.fault([...path, 'centre'], {
      message: `is ${over ? 'above' : 'below'} where ${a} and ${b} meet`,
      allowed: `${length(shared.low)} to ${length(shared.high)}`,
    });
  }
}

function reach(part: HorizontalPart | Upright): string {
  return `${length(part.centre - part.height / 2)} to ${length(part.centre + part.height / 2)}`;
}

/** An upright on its firebox: it must sit on the roof, and the throat must fit under it. */
function checkSeat(firebox: HorizontalPart, upright: Upright, throat: Design['throat'], reading: Reading): void {
  const roof = firebox.centre + firebox.height / 2;
  const floor = upright.centre - upright.height / 2;
  // A saddle may reach down a round firebox to its middle.
  const least = firebox.shape === 'round' ? firebox.centre : roof - SEAT;
  if (floor < least - 1e-9 || floor > roof + SEAT + 1e-9) {
    reading.fault(['upright', 'centre'], {
      message: `puts the upright's floor at ${length(floor)}, not on the firebox roof at ${length(roof)}`,
      allowed: `${length(least + upright.height / 2)} to ${length(roof + SEAT + upright.height / 2)}`,
    });
  }
  if (throat.centre < least - 1e-9 || throat.centre > roof + SEAT + 1e-9) {
    reading.fault(['throat', 'centre'], {
      message: `is not at the firebox roof, which is at ${length(roof)}`,
      allowed: `${length(least)} to ${length(roof + SEAT)}`,
    });
  }
  if (!isHollow(firebox) || !isHollow(upright)) return;
  const [below, above] = [insideOf(firebox), insideOf(upright)];
  const wide = Math.min(below.width, above.width);
  const deep = Math.min(below.length, above.length);
  if (throat.area > wide * deep) {
    reading.fault(['throat', 'area'], {
      message: 'is larger than what firebox and upright have in common',
      allowed: `up to ${area(wide * deep)}`,
    });
  }
}
