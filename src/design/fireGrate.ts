/** The grate that the wood burns on, and the ash space under it. SI. */
import { steelDensity } from '../physics/steel.js';
import type { Firebox } from './design.js';
import { widthAt } from './overlap.js';
import { innerLength } from './partGeometry.js';

export interface FireGrate {
  /** above the ground [m] */
  height: number;
  /** clear between the bars [m2] */
  free: number;
  /** of its bars [kg], and all round them [m2] */
  mass: number;
  area: number;
}

/** Square bars over the whole of the firebox at their height, or what the file says that they weigh; undefined: there is none. */
export function fireGrateOf(firebox: Firebox): FireGrate | undefined {
  const { grate, shape, centre, plate } = firebox;
  if (!grate) return undefined;
  const { bars, apart, steel } = grate;
  const inside = { shape, width: firebox.width - 2 * plate, height: firebox.height - 2 * plate, centre };
  const height = centre - inside.height / 2 + grate.height;
  const plan = widthAt(inside, height) * innerLength(firebox);
  const long = plan / (bars + apart);
  const mass = grate.mass ?? long * bars ** 2 * steelDensity(steel);
  return { height, free: plan * (apart / (bars + apart)), mass, area: (4 * mass) / (bars * steelDensity(steel)) };
}

/** Height of the middle of the ash door above the ground [m]: given, or between floor and grate. */
export function ashDoorCentre(firebox: Firebox): number {
  const { ashDoor, grate, centre, height, plate } = firebox;
  return ashDoor?.centre ?? centre - height / 2 + plate + 0.5 * (grate?.height ?? 0);
}
