/** Can doors be cut where the file says: inside their part, apart from each other. */
import { length, quoted } from './faults.js';
import { format } from '../units/index.js';
import type { Design, Door, HorizontalPart, PartName, Upright } from './design.js';
import { doorsOf, type PlacedDoor } from './doors.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { isUpright } from './partPlan.js';

export function checkDoors(design: Design, name: PartName, part: HorizontalPart | Upright, reading: Reading): void {
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
        message: `and ${quoted(doors[other].name)} take the same place`,
        allowed: name === 'chamber' ? 'doors side by side (along: 25 %, along: 75 %)' : 'doors over each other',
        value: null,
      });
    }
  });
}

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
