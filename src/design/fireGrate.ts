/** The grate that the wood burns on, and the ash space under it. SI. */
import { steelDensity } from '../physics/steel.js';
import type { Firebox } from './design.js';
import { gasSection } from './joints.js';
import { widthAt } from './overlap.js';
import { insideOf } from './walls.js';

interface FireGrate {
  /** above the ground [m] */
  height: number;
  /** clear between the bars [m2] */
  free: number;
  /** of its bars [kg], and all round them [m2] */
  mass: number;
  area: number;
}

/**
 * Square bars over the whole of the firebox at their height, or what the file says that they weigh; undefined: there is
 * none.
 */
export function fireGrateOf(firebox: Firebox): FireGrate | undefined {
  const { grate } = firebox;
  if (!grate) return undefined;
  const { bars, apart, steel } = grate;
  const { floor, length } = insideOf(firebox);
  const height = floor + grate.height;
  const plan = widthAt(gasSection(firebox), height) * length;
  const long = plan / (bars + apart);
  const mass = grate.mass ?? long * bars ** 2 * steelDensity(steel);
  return { height, free: plan * (apart / (bars + apart)), mass, area: (4 * mass) / (bars * steelDensity(steel)) };
}

/** Height of the middle of the ash door above the ground [m]: given, or between floor and grate. */
export function ashDoorCentre(firebox: Firebox): number {
  const { ashDoor, grate } = firebox;
  return ashDoor?.centre ?? insideOf(firebox).floor + 0.5 * (grate?.height ?? 0);
}
