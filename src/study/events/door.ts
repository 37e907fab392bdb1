import type { Design, PartName } from '../../design/design.js';
import { gaugePlace } from '../../design/places.js';
import type { BuiltPit, Cells } from '../../network/cells.js';
import { OUTDOORS } from '../../network/types.js';

/** A door's hole where the file gives none, as shares of the part: estimates. */
const USUAL = { chamber: { wide: 0.6, high: 0.45 }, upright: { wide: 0.8, high: 0.7 } } as const;
/** Discharge coefficient of a doorway (estimate, spread 0.55-0.70). */
const DISCHARGE = 0.62;

export interface Doorway {
  part: PartName;
  /** [m] */
  width: number;
  /** straight up and down [m] */
  height: number;
  /** height of its middle above the ground [m] */
  centre: number;
  /** the file gives no door, so that a usual one is taken */
  assumed: boolean;
}

/**
 * The door a cook opens: that of the part in which the gauge sits. On a round chamber a door's height is measured along
 * the shell; h of it round the radius r stand 2 r sin(h / 2 r) high. It counts as centred on the part (estimate).
 */
export function doorwayOf(design: Design): Doorway {
  const name = gaugePlace(design).part;
  if (name === 'upright') {
    const part = design.upright!;
    const { wide, high } = USUAL.upright;
    const { width, height } = part.door ?? { width: wide * part.width, height: high * part.height };
    return { part: name, width, height, centre: part.centre, assumed: !part.door };
  }
  const part = design.chamber!;
  const { wide, high } = USUAL.chamber;
  if (!part.door) {
    return { part: name, width: wide * part.length, height: high * part.height, centre: part.centre, assumed: true };
  }
  const r = part.width / 2;
  const { width, height } = part.door;
  const straight = part.shape === 'round' ? 2 * r * Math.sin(Math.min(height / (2 * r), Math.PI / 2)) : height;
  return { part: name, width, height: straight, centre: part.centre, assumed: false };
}

/**
 * Open that door in a network: a tall opening between each cell that it reaches and outdoors, through which gas goes both
 * ways. What the walls radiate out through it, and that the leaf stands in the cold meanwhile, is left out.
 */
export function openDoor(design: Design): (built: BuiltPit) => void {
  return (built) => {
    const { part, width, height, centre } = doorwayOf(design);
    const cells: Cells = (part === 'upright' ? built.upright : built.chamber)!;
    const { zones, openings } = built.network;
    const across = cells.geometry.axis === 'horizontal' ? width / cells.columns.length : width;
    for (const from of cells.zones) {
      const low = Math.max(centre - height / 2, zones[from].floor);
      const high = Math.min(centre + height / 2, zones[from].roof);
      if (high <= low) continue;
      openings.push({
        name: `${part} door`,
        role: 'doorway',
        from,
        to: OUTDOORS,
        area: across * (high - low),
        discharge: DISCHARGE,
        centre: 0.5 * (low + high),
        extent: high - low,
        windPressure: 0,
      });
    }
  };
}
