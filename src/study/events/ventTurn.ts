/** How fast a pit answers when its intakes are turned. */
import type { Design } from '../../design/design.js';
import { burnsItsAir } from '../air/burnsItsAir.js';
import { CLEAN_FIRE } from '../air/cleanFire.js';
import { withOpening } from '../air/cleanHold.js';
import { holdPit } from './heldPit.js';
import { Timeline } from './timeline.js';

/** Factor by which the intakes are opened further. */
const TURN = 1.25;
/** Share of its way after which a thermometer has answered [-]: 1 - 1/e, of what falls off evenly its time constant. */
const ANSWERED = 1 - Math.exp(-1);
const LONGEST = 6 * 3600;
/** What ends a run on a reading ends it within this [K]. */
const NEAR = 0.05;

/** The intakes opened further from where they hold the target by their air. */
export interface VentTurn {
  from: number;
  to: number;
  /** where the thermometer settles then [K] */
  settles_K: number;
  /** after which it has gone 63 % of the way [s] */
  answers_s: number;
}

/**
 * Turn the intakes of a pit that holds its target by its air, wood enough on the bed; the fire follows its air at once.
 *
 * @param open share at which they hold it
 * @returns null where that can't be followed, or moves the thermometer by less than a kelvin
 */
export function turnedVents(design: Design, open: number): VentTurn | null {
  const to = Math.min(1, open * TURN);
  const held = holdPit(withOpening(design, open));
  const after = held && burnsItsAir(withOpening(design, to), CLEAN_FIRE.ratio);
  if (!after) return null;
  const { target } = design.fire;
  const way = after.state.reading_K - target;
  if (Math.abs(way) < 1) return null;
  const line = new Timeline(after.pit, held.x);
  if (!line.burn(() => ({ mode: 'release', heat: after.state.fire_W }))) return null;
  const { nodeCount, network } = after.pit.model;
  const there = {
    left: ({ x }: { x: Float64Array }) => Math.sign(way) * (target + ANSWERED * way - x[nodeCount + network.gauge]),
    within: NEAR,
  };
  while (line.moment.time < LONGEST) {
    const took = line.step(LONGEST, there);
    if (took === 'failed') return null;
    if (took === 'event') return { from: open, to, settles_K: after.state.reading_K, answers_s: line.moment.time };
  }
  return null;
}
