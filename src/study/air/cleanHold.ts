/** The opening at which a pit holds its target with a clean fire. */
import type { Design } from '../../design/design.js';
import { rootNear } from '../../solve/rootNear.js';
import type { Solved } from '../estimate/steady.js';
import type { CleanVents } from '../estimate/result.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { holdFire, type HoldFire } from './states.js';

/** Excess air goes about with this power of the intakes' area. */
const POWER = 0.85;
/** Longest step of the search, in the logarithm of the opening. */
const STRIDE = Math.log(6);
/**
 * What counts as found: of the air, where gaps bring much of it an opening hangs on little; and of the opening, where
 * air jumps.
 */
const FOUND = { air: 0.002, opening: 1e-6 };

/** Where the fire that holds the target burns with the air of a clean small fire. */
export interface CleanHold {
  /** the argument there */
  at: number;
  hold: HoldFire;
}

/**
 * Argument (an open area or share) at which the fire that holds the target gets the air of a clean small fire; in
 * logarithms, since excess air goes about with a power of the opening. From a guess: nearly shut there may be no fire
 * that holds.
 *
 * @returns null when there is none between the bounds, or no fire holds on the way
 */
export function whereClean(
  designAt: (at: number) => Design,
  bounds: { low: number; high: number; guess: number },
  { cleanAir }: { cleanAir: number },
  start?: Solved,
): CleanHold | null {
  let from = start;
  let found: CleanHold | null = null;
  const off = (log: number): number => {
    const at = Math.exp(log);
    const hold = holdFire(designAt(at), from);
    if (!hold) return Number.NaN;
    from = hold.solved;
    const air = Math.log(hold.state.excessAirRatio / cleanAir);
    if (Math.abs(air) >= FOUND.air) return air;
    found = { at, hold };
    return 0;
  };
  const [low, high, guess] = [bounds.low, bounds.high, bounds.guess].map(Math.log);
  rootNear(off, { guess, low, high, slope: POWER, stride: STRIDE, tolerance: FOUND.opening });
  return found;
}

/** Intakes are never shut tight, and where a clean fire is looked for first [-]. */
const LEAST_OPEN = 0.01;
const GUESS = 0.3;

/** Share of all that the intakes of a design stand open. */
export function openOf({ firebox }: Design): number {
  const whole = firebox.intakes.reduce((sum, { count, area }) => sum + count * area, 0);
  const open = firebox.intakes.reduce((sum, each) => sum + each.count * each.area * each.open, 0);
  return whole > 0 ? open / whole : 0;
}

/**
 * Where the intakes stand while the fire that holds the target burns clean; null: nowhere. @param start a state near it
 */
export function cleanVents(design: Design, start?: Solved): CleanVents | null {
  if (design.firebox.intakes.length === 0) return null;
  const bounds = { low: LEAST_OPEN, high: 1, guess: GUESS };
  const found = whereClean((open) => withOpening(design, open), bounds, { cleanAir: CLEAN_FIRE.ratio }, start);
  if (!found) return null;
  const { fire_W } = found.hold.state;
  return { drawn: openOf(design), open: found.at, fire_W, wood_kg_per_s: fire_W / design.wood.heat };
}

/** The design with all its intakes open by a share. */
export function withOpening(design: Design, open: number): Design {
  const { firebox } = design;
  return { ...design, firebox: { ...firebox, intakes: firebox.intakes.map((each) => ({ ...each, open })) } };
}
