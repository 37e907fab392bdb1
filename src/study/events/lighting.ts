import { Bed } from './bed.js';
import type { HeldPit } from './heldPit.js';
import { boxOf, CHARCOAL_HEAT, coalsOf, openAtFirst, ruleOf, withIntakes } from './minding.js';
import { BED_STEP, Stoker } from './stoker.js';
import { readsTarget, Timeline } from './timeline.js';

/** A target that takes longer than this is never reached [s]. */
const LONGEST = 24 * 3600;

/** How a cold pit is brought to its target by a cook: from the match until the thermometer first reads it. */
export interface Lit {
  reads_s: number;
  /** charcoal in the chimney, and wood laid on by then [kg] */
  coals_kg: number;
  wood_kg: number;
  splits: number;
}

/**
 * Light a pit that is cold with a chimney of coals, and lay splits on it as it wants them.
 *
 * @param coals [kg]
 * @returns when it first reads its target [s]; null: it never does, or steps broke off
 */
export function lightUp(stoker: Stoker, coals: number): number | null {
  const { line, bed } = stoker;
  bed.lightCoals(coals * CHARCOAL_HEAT);
  stoker.light();
  const reads = readsTarget(line);
  const first = () => reads.left(line.moment) <= 0;
  return stoker.mind(LONGEST, { enough: first, stop: reads }) && first() ? line.moment.time : null;
}

/** The same of the pit that was solved for its target. @returns null: it never reads it so */
export function litPit({ pit: { design, settler }, pit, fire }: HeldPit): Lit | null {
  const rule = ruleOf(design, fire);
  const open = openAtFirst(design, rule);
  const own = rule.intakes ? withIntakes(design, open) : pit;
  const line = new Timeline(own, settler.coldState(), { longestStep: BED_STEP });
  const stoker = new Stoker(line, new Bed(design.fire.splits), rule, boxOf(design), open);
  const coals = coalsOf(design, fire);
  const reads = lightUp(stoker, coals);
  if (reads === null) return null;
  const splits = stoker.laid.length;
  return { reads_s: reads, coals_kg: coals, wood_kg: (splits * rule.split) / design.wood.heat, splits };
}
