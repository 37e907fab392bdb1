import { withFullFire } from '../air/burnsItsAir.js';
import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import type { Resolution } from '../../network/build.js';
import { makePit, type Pit } from '../../network/pit.js';
import { fromCold } from '../estimate/fromCold.js';
import { solveUnderFire, type Solved } from '../estimate/steady.js';

/** A pit that has soaked and holds its target: where the studies of events begin. */
export interface HeldPit {
  pit: Pit;
  /** unknowns there, every thermometer at its settled reading */
  x: Float64Array;
  /** the fire that holds it [W] */
  fire: number;
  /** the largest fire that is made in it: the assumed one, as far as air lets it burn [W] */
  full: number;
  /** unknowns under that, all settled */
  hot: Float64Array;
}

/**
 * Solve for the pit that holds its target, having been lit cold.
 * @param resolution how finely its parts are cut (default: as an estimate's)
 * @param follow it from the match always, or only where its gas may have several ways
 * @returns null: no fire does, or the draft never settles
 */
export function holdPit(given: Design, resolution?: Resolution, follow: 'always' | 'forks' = 'always'): HeldPit | null {
  const design = withFullFire(given);
  const pit = makePit(design, geometryOf(design), resolution);
  const found = solveUnderFire(pit, design.fire.heat);
  if (!found.outcome.converged) return null;
  const { full, held } = fromCold(pit, found, follow);
  return held.state && heldAt(pit, held.state, full.state);
}

/** A pit that holds its target in one state, and in another burns its full fire. */
export function heldAt(pit: Pit, solved: Solved, full: Solved): HeldPit {
  const { balances, model } = pit;
  const x = solved.x.slice();
  balances.evaluate(x, { mode: 'release', heat: solved.asked });
  for (let i = 0; i < model.stemCount; i++) x[model.nodeCount + i] = balances.stems.settled(x, i);
  return { pit, x, fire: x[model.fire], full: Math.max(full.x[model.fire], x[model.fire]), hot: full.x };
}
