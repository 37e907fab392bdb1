/** Can each part be built: plate against size, doors, what stands inside, stacks on their parts. */
import type { Design, HorizontalPart, PartName, StationName, Upright } from './design.js';
import { length } from './faults.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { depthOf, FACES, insideOf, wallAt, type FaceName } from './walls.js';
import { isUpright, leastSize } from './partPlan.js';
import { checkDoors } from './senseDoors.js';

/**
 * Do a part's plates and lining leave an inside? Where they don't, inside sizes mean nothing, and what hangs on them is
 * not told.
 */
export function isHollow(part: HorizontalPart | Upright): boolean {
  const { width, height, length } = insideOf(part);
  const round = !isUpright(part) && part.shape === 'round';
  const thickest = Math.max(...FACES.slice(0, 3).map((face) => depthOf(wallAt(part, face))));
  return !(Math.min(width, height, length) <= 0 || (round && 2 * thickest >= part.width));
}

/**
 * The first of a part's own fields that fills it up: its plate, or what is thicker than that on a face or inside it.
 */
function filledUp(name: PartName, part: HorizontalPart | Upright): Path {
  if (2 * part.plate >= leastSize(part)) return [name, 'plate'];
  if (part.lining && isHollow({ ...part, lining: undefined })) return [name, 'lining', 'thickness'];
  const plateAt = (face: FaceName) => wallAt(part, face).plate;
  return [name, FACES.reduce((thickest, face) => (plateAt(face) > plateAt(thickest) ? face : thickest)), 'plate'];
}

/** A part has room inside and stands above the ground, its heads suit it, and its doors fit. */
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

/** What a part holds lies at a station of it. */
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
