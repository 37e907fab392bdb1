import { hasGaps } from '../../design/decks.js';
import type { Design } from '../../design/design.js';
import type { Pit } from '../../network/pit.js';
import { heldAbove, solveHoldFire, type Solved } from './steady.js';
import { fullFireFrom, runWarmUp, type WarmUpOptions, type WarmUpRun } from './warmUp.js';

/** Two states are one when fire and temperatures differ by no more than a solver's leftovers: a share, [K]. */
const SAME = { fire: 5e-3, temperature: 1 };

/** A steady state that a pit lit cold comes to, and another that the same fire or target also has. */
interface Arrival {
  state: Solved | null;
  other: Solved | null;
}

/** What becomes of a pit that is lit cold. */
export interface FromCold {
  /** under the full fire */
  full: { state: Solved; other: Solved | null };
  /** under the fire that holds the target */
  held: Arrival;
  /** the most that the thermometer gets to [K] */
  reached: number;
  /** null: not followed */
  run: WarmUpRun | null;
}

/**
 * Can the gas of a pit go more than one way, so that how it was lit decides? It can where a second stack may draw or
 * let air down, and where it may turn back over a reverse-flow plate: 48 of 49 random shop designs with two states were
 * of these.
 */
function forks({ stacks, chamber }: Design): boolean {
  return stacks.length > 1 || chamber?.reverse !== undefined || hasGaps(chamber);
}

/**
 * The steady states of a pit that belong to one lit cold. Solvers find a state, not always that: gas can have several,
 * and only following the pit from the match tells which it is. What the solvers had found first is told as the other.
 *
 * @param found a steady state under the full fire
 * @param follow 'always', or only where the gas may have several ways
 */
export function fromCold(pit: Pit, found: Solved, follow: 'always' | 'forks', options: WarmUpOptions = {}): FromCold {
  const { target } = pit.design.fire;
  const holds = solveHoldFire(pit, target, found);
  const { reached } = holds;
  if (follow === 'forks' && !forks(pit.design)) {
    return { full: { state: found, other: null }, held: { state: holds.solved, other: null }, reached, run: null };
  }
  const run = runWarmUp(pit, options, holds.solved);
  const { first, settled } = run;
  const arrive = (state: Solved | null, other: Solved | null): Arrival =>
    state && other && same(pit, state, other) ? { state: other, other: null } : { state, other };
  if (!first) {
    const full = arrive(settled ?? found, found) as FromCold['full'];
    const fireOf = ({ x }: Solved) => x[pit.model.fire];
    // a fire within the full one that would hold what the full one does not reach: another state's
    const within = holds.solved !== null && (full.other !== null || fireOf(holds.solved) < fireOf(full.state));
    if (!within || !settled) return { full, held: { state: holds.solved, other: null }, reached, run };
    const above = heldAbove(pit, target, full.state);
    return { full, held: arrive(above.solved, holds.solved), reached: above.reached, run };
  }
  const told = settled && arrive(settled, holds.solved);
  if (told && !told.other && told.state === holds.solved && !forks(pit.design)) {
    return { full: { state: found, other: null }, held: told, reached, run };
  }
  const gone = fullFireFrom(pit, first, found.asked);
  const full = (gone ? arrive(gone, found) : { state: found, other: null }) as FromCold['full'];
  const held = told ?? arrive(solveHoldFire(pit, target, full.state).solved, holds.solved);
  return { full, held, reached, run };
}

/** Of those, the one under the full fire alone, for which nothing has to be held. */
export function fullFromCold(pit: Pit, found: Solved): Solved {
  if (!forks(pit.design)) return found;
  const { first, settled } = runWarmUp(pit, { toFirst: true });
  const gone = first ? fullFireFrom(pit, first, found.asked) : settled;
  return gone && !same(pit, gone, found) ? gone : found;
}

function same({ model }: Pit, a: Solved, b: Solved): boolean {
  if (Math.abs(a.x[model.fire] - b.x[model.fire]) > SAME.fire * Math.abs(b.x[model.fire])) return false;
  for (let i = 0; i < model.fuel; i++) if (Math.abs(a.x[i] - b.x[i]) > SAME.temperature) return false;
  return true;
}
