import type { Design, PartName } from '../../design/design.js';
import { doorsOf, type PlacedDoor } from '../../design/doors.js';
import { gaugePlace } from '../../design/places.js';
import type { BuiltPit, Cells } from '../../network/cells.js';
import { coverage } from '../../network/openings.js';
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
  /** of several doors which one, and where its middle is along the part */
  name?: string;
  along?: number;
  share?: number;
  /** the file gives no door, so that a usual one is taken */
  assumed: boolean;
}

/**
 * The door a cook opens: that of the part in which the gauge sits, of several the one nearest to it. On a round chamber a door's
 * height is measured along the shell; h of it round the radius r stand 2 r sin(h / 2 r) high. One door counts as centred on the
 * part (estimate).
 */
export function doorwayOf(design: Design): Doorway {
  const gauge = gaugePlace(design);
  const { part: name } = gauge;
  const doors = doorsOf(design, name);
  if (doors.length > 0) {
    const long = name === 'chamber' ? design.chamber!.length : 0;
    const off = ({ along, centre }: PlacedDoor) =>
      Math.hypot((along - gauge.along) * long, name === 'upright' ? centre - gauge.height : 0);
    const {
      width,
      straight,
      centre,
      along,
      share,
      name: own,
    } = doors.reduce((a, b) => (off(b) < off(a) - 1e-9 ? b : a));
    const which = doors.length > 1 ? { name: own, along, share } : {};
    return { part: name, width, height: straight, centre, assumed: false, ...which };
  }
  const { centre, width, height } = design[name]!;
  const { wide, high } = USUAL[name === 'upright' ? 'upright' : 'chamber'];
  const across = name === 'upright' ? width : design.chamber!.length;
  return { part: name, width: wide * across, height: high * height, centre, assumed: true };
}

/**
 * Open that door in a network: a tall opening between each cell that it reaches and outdoors, through which gas goes both
 * ways. What the walls radiate out through it, and that the leaf stands in the cold meanwhile, is left out.
 */
export function openDoor(design: Design): (built: BuiltPit) => void {
  return (built) => {
    const { part, width, height, centre, along, share } = doorwayOf(design);
    const cells: Cells = (part === 'upright' ? built.upright : built.chamber)!;
    const { zones, openings } = built.network;
    const lying = cells.geometry.axis === 'horizontal';
    for (const from of cells.zones) {
      const column = cells.columns.findIndex((each) => each.includes(from));
      const across = lying ? width * coverage(cells, { along, share }, column) : width;
      const low = Math.max(centre - height / 2, zones[from].floor);
      const high = Math.min(centre + height / 2, zones[from].roof);
      if (high <= low || across <= 0) continue;
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
