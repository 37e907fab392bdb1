import { OUTDOORS } from '../../network/types.js';
import { TOUCH_LIMIT } from '../../physics/burn.js';
import type { HeldPit } from './heldPit.js';
import type { Pit } from '../../network/pit.js';
import { Timeline, type Curve } from './timeline.js';

/** Longest that a pit is followed as it cools [s]. */
const LONGEST = 48 * 3600;
const LONGEST_STEP = 1800;

/** How long a pit stays hot once its fire is drawn. */
export interface CoolDown {
  /** until the lagging thermometer has lost half of what it read above outdoors [s]; null: not within two days */
  half_s: number | null;
  /** until no outside wall or skin is above the touch limit of ASTM C1055, 60 degC [s]; null: not within two days */
  touch_s: number | null;
  curve: Curve;
  energyError: number;
  massError_kg_per_s: number;
}

/**
 * A pit that held its target, from the moment its fire is out (drawn, not left to glow: a bed of embers adds to it),
 * vents as they stand.
 *
 * @returns null: steps broke off before either time was known
 */
export function coolDown({ pit, x }: HeldPit): CoolDown | null {
  const { temperature: outdoors } = pit.model.network.outdoors;
  const line = new Timeline(pit, x, { longestStep: LONGEST_STEP });
  const half = 0.5 * (line.reading + outdoors);
  const hottest = [hottestOutside(pit, x)];
  if (!line.burn(() => ({ mode: 'release', heat: 0 }))) return null;
  while (line.moment.time < LONGEST && (line.reading > half || hottest[hottest.length - 1] > TOUCH_LIMIT.temperature)) {
    if (line.step(LONGEST) === 'failed') return null;
    hottest.push(hottestOutside(pit, line.moment.x));
  }
  const { curve, energyError, massError } = line;
  return {
    half_s: fallsTo(curve.time_s, curve.thermometer_K, half, outdoors),
    touch_s: fallsTo(curve.time_s, hottest, TOUCH_LIMIT.temperature, outdoors),
    curve,
    energyError,
    massError_kg_per_s: massError,
  };
}

/** The hottest patch of the outside [K]. */
export function hottestOutside(pit: Pit, x: Float64Array): number {
  let hottest = 0;
  for (const face of pit.model.network.faces) if (face.zone === OUTDOORS) hottest = Math.max(hottest, x[face.node]);
  return hottest;
}

/**
 * When falling values pass a level for good, since a moment: what is left above outdoors falls along an exponential
 * between two points.
 */
export function fallsTo(time: number[], values: number[], level: number, outdoors: number, since = 0): number | null {
  let i = values.length - 1;
  if (values[i] > level) return null;
  while (i >= 0 && values[i] <= level) i--;
  if (i < 0) return 0;
  const [above, wanted, below] = [values[i] - outdoors, level - outdoors, values[i + 1] - outdoors];
  const share =
    below > 0 && wanted > 0 ? Math.log(above / wanted) / Math.log(above / below) : (above - wanted) / (above - below);
  return time[i] + share * (time[i + 1] - time[i]) - since;
}
