import type { BuiltPit } from '../../network/cells.js';
import type { HeldPit } from './heldPit.js';
import { tend } from './tender.js';
import { Timeline, type Curve } from './timeline.js';
import { variantOf } from './variant.js';

/** The thermometer counts as back when it is within this of the target [K]: 5 °F, common practice, no source. */
export const BACK_WITHIN = 5 / 1.8;
/** The pit is followed at least this long afterwards, for the curve, and at most so long [s]. */
const SHORTEST = 1800;
const LONGEST = 4 * 3600;
/** Share of the usual tolerance of a step: recovery is told in seconds. */
const SHARPER = 0.2;
/** Longest step, so that curves bend where they should [s]. */
const LONGEST_STEP = 300;

/** What a passing change does to a pit that holds its target. */
export interface Disturbance {
  lasts_s: number;
  /** by how much the lagging thermometer falls below the target, and rises above it, at most [K] */
  dip_K: number;
  rise_K: number;
  lowest_K: number;
  /** from the end of it until the thermometer stays within 5 °F of the target [s]; null: not within four hours */
  recovery_s: number | null;
  curve: Curve;
  energyError: number;
  massError_kg_per_s: number;
}

/**
 * Change something about a pit that holds its target, for a while, with the fire left as it is; then undo it and tend.
 *
 * @param change to the network while it lasts; zones and nodes stay
 * @param lasts [s]; 0 changes nothing
 * @param tolerance factor on the tolerances of the time steps
 * @returns null: the gas found no state to settle in
 */
export function disturb(
  { pit, x, fire, full }: HeldPit,
  change: (built: BuiltPit) => void,
  lasts: number,
  tolerance = SHARPER,
): Disturbance | null {
  const { target } = pit.design.fire;
  const line = new Timeline(pit, x, { longestStep: LONGEST_STEP, tolerance });
  const asItWas = () => ({ mode: 'release', heat: fire }) as const;
  if (!line.burn(asItWas)) return null;
  if (lasts > 0) {
    line.enter(variantOf(pit, change));
    if (!line.burn(asItWas) || !line.runTo(lasts)) return null;
    line.enter(pit);
  }
  let end = lasts + SHORTEST;
  while (tend(line, { target, full }, end)) {
    if (Math.abs(line.reading - target) < 0.5 * BACK_WITHIN || end >= lasts + LONGEST) {
      return describe(line, target, lasts);
    }
    end += SHORTEST;
  }
  return null;
}

function describe({ curve, energyError, massError }: Timeline, target: number, lasts: number): Disturbance {
  const lowest = Math.min(...curve.thermometer_K);
  return {
    lasts_s: lasts,
    dip_K: Math.max(0, target - lowest),
    rise_K: Math.max(0, Math.max(...curve.thermometer_K) - target),
    lowest_K: lowest,
    recovery_s: recovery(curve, target, lasts),
    curve,
    energyError,
    massError_kg_per_s: massError,
  };
}

/** When the thermometer last comes within reach of the target, after the disturbance is over [s]. */
function recovery({ time_s: time, thermometer_K: reading }: Curve, target: number, lasts: number): number | null {
  const off = (i: number) => Math.abs(reading[i] - target) - BACK_WITHIN;
  let i = time.length - 1;
  if (off(i) > 0) return null;
  while (i >= 0 && off(i) <= 0) i--;
  if (i < 0) return 0;
  // the reading nears the target as its lag dies away, so that its distance falls along an exponential
  const [before, after] = [Math.abs(reading[i] - target), Math.abs(reading[i + 1] - target)];
  const share = after > 0 ? Math.log(before / BACK_WITHIN) / Math.log(before / after) : 1;
  return Math.max(0, time[i] + share * (time[i + 1] - time[i]) - lasts);
}
