import { Bed } from './bed.js';
import type { HeldPit } from './heldPit.js';
import { boxOf, CHARCOAL_HEAT, coalsOf, openAtFirst, ruleOf, withIntakes } from './minding.js';
import { BED_STEP, CURVE_STEP, Stoker } from './stoker.js';
import { readsTarget, Timeline } from './timeline.js';

/** A target that takes longer than this is never reached [s]. */
const LONGEST = 24 * 3600;

/** Its highest reading of so long is held against that of as long before, from the third on [s]. */
const WINDOW = 2 * 3600;
const FROM = 3 * WINDOW;

/** How a cold pit is brought to its target by a cook: from the match until the thermometer first reads it. */
export interface Lit {
  reads_s: number;
  /**
   * soonest and latest with half to twice the charcoal and wood that flames as short or as long as it may; null: some
   * of these never [s]
   */
  soonest_s: number;
  latest_s: number | null;
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
  const never = outOfReach(line, stoker.rule.target);
  return stoker.mind(LONGEST, { enough: () => first() || never(), stop: reads }) && first() ? line.moment.time : null;
}

/**
 * Would a pit not read its target in the time left, though its readings rose on as fast as they did last? They rise
 * ever more slowly.
 */
function outOfReach(line: Timeline, target: number): () => boolean {
  let [end, highest, before] = [WINDOW, -Infinity, -Infinity];
  return () => {
    const { time } = line.moment;
    highest = Math.max(highest, line.reading);
    if (time < end) return false;
    const likely = highest + ((LONGEST - time) / WINDOW) * Math.max(0, highest - before);
    [end, before, highest] = [time + WINDOW, highest, -Infinity];
    return time >= FROM && likely < target;
  };
}

/**
 * Factors on charcoal and on how long a split flames: half to twice, and over its spread. All of each with all of the
 * other: more coals may have a cook lay on his first split too late, and quick flames may die before the next, so that
 * no corner is the latest for sure.
 */
const COALS = [0.5, 1, 2];
const FLAMES = [0.55, 1, 1.8];

/** Factor on the tolerances of runs of which only the soonest and the latest are told. */
const ROUGH = 4;

/** The same of the pit that was solved for its target. @returns null: it never reads it so */
export function litPit({ pit: { design, solver }, pit, fire }: HeldPit): Lit | null {
  const rule = ruleOf(design, fire);
  const open = openAtFirst(design, rule);
  const own = rule.intakes ? withIntakes(design, open) : pit;
  const { splits: law } = design.fire;
  const coals_kg = coalsOf(design, fire);
  const lit = (coals: number, flame: number, tolerance: number) => {
    const line = new Timeline(own, solver.coldState(), { longestStep: BED_STEP, spacing: CURVE_STEP, tolerance });
    const stoker = new Stoker(line, new Bed({ ...law, flame: flame * law.flame }), rule, boxOf(design), open);
    const reads_s = lightUp(stoker, coals * coals_kg);
    return reads_s === null ? null : { reads_s, splits: stoker.laid.length };
  };
  const usual = lit(1, 1, 1);
  if (!usual) return null;
  const others = COALS.flatMap((coals) => FLAMES.map((flame) => [coals, flame])).filter(([c, f]) => c !== 1 || f !== 1);
  const times = [usual.reads_s, ...others.map(([coals, flame]) => lit(coals, flame, ROUGH)?.reads_s ?? Infinity)];
  const latest = Math.max(...times);
  return {
    ...usual,
    coals_kg,
    wood_kg: (usual.splits * rule.split) / design.wood.heat,
    soonest_s: Math.min(...times),
    latest_s: latest === Infinity ? null : latest,
  };
}
