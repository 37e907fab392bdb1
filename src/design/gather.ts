/** A box that gathers gas before a stack: on the side or end of its part, or on the roof. The tube stands on it. SI. */
import { ENTRANCE_LOSS, expansionLoss } from '../physics/friction.js';
import { steelDensity } from '../physics/steel.js';
import type { Chamber, Design, Stack, Upright } from './design.js';
import { stackSection } from './stackSection.js';
import { wallAt } from './walls.js';

/** How far a box's floor may stand off the roof that it sits on [m] (1 in, common practice, no source). */
const SEAT = 0.0254;
/** A stack as wide as its box would have no loss at its foot: less than this no real foot has. */
const LEAST_LOSS = 0.02;

/** The box that gathers gas before a stack, as it stands; lengths in m. */
export interface GatherBox {
  onRoof: boolean;
  /** of its part that it stands on, and the plate of that [m] */
  face: 'roof' | 'sides';
  plate: number;
  /** heights of floor and roof above the ground [m] */
  low: number;
  high: number;
  /** heights of the mouth's middle [m] */
  mouthCentre: number;
  /** plan inside, across the gas's way up [m2]; gas [m3] */
  section: number;
  volume: number;
  /** steel that has outdoors on its other side [m2] */
  outsideArea: number;
  insideArea: number;
  /** what it covers of its part, the mouth taken out [m2]; not lined */
  contact: number;
  /** of its own plate, and of that wall [kg] */
  mass: number;
  contactMass: number;
  /** loss coefficients: of the mouth on the velocity there, of the tube's foot on that in the tube */
  mouthLoss: number;
  footLoss: number;
}

/**
 * The box before a stack; undefined where there is none.
 *
 * Mouth: a sharp entrance, then a jet that spreads over the box, K = 0.5 + (1 - mouth/box)2. Foot: a sudden
 * contraction, the entrance's loss times (1 - tube/box). Reference: Idelchik, Handbook of Hydraulic Resistance
 * (entrance, sudden expansion, sudden contraction); Borda-Carnot.
 */
export function gatherOf(design: Design, stack: Stack): GatherBox | undefined {
  const { gather, base, entryLoss } = stack;
  const part: Chamber | Upright | undefined = design[stack.part];
  if (!gather || !part) return undefined;
  const { width, depth, height, plate, mouth } = gather;
  const low = base - height;
  const onRoof = low >= part.centre + part.height / 2 - SEAT;
  const face = onRoof ? 'roof' : 'sides';
  const wall = wallAt(part, face).plate;
  const covered = onRoof ? width * depth : width * height;
  const foot = stackSection(stack).area;
  const bore = stackSection(stack, -stack.wall).area;
  const [w, d, h] = [width - 2 * plate, depth - (onRoof ? 2 : 1) * plate, height - 2 * plate];
  const around = onRoof
    ? 2 * (width + depth) * height + width * depth
    : (width + 2 * depth) * height + 2 * width * depth;
  const within = onRoof ? 2 * (w + d) * h + w * d : (w + 2 * d) * h + 2 * w * d;
  const section = w * d;
  const contact = covered - mouth;
  return {
    onRoof,
    face,
    plate: wall,
    low,
    high: base,
    mouthCentre: gather.centre ?? (onRoof ? low : base - height / 2),
    section,
    volume: section * h,
    outsideArea: around - foot,
    insideArea: within - bore,
    contact,
    mass: (0.5 * (around + within) - foot) * plate * steelDensity(stack.steel),
    contactMass: contact * wall * steelDensity(part.steel),
    mouthLoss: gather.loss ?? ENTRANCE_LOSS + expansionLoss(Math.min(1, mouth / section)),
    footLoss: Math.max(LEAST_LOSS, entryLoss * (1 - Math.min(1, bore / section))),
  };
}
