/** How a design's cook minds the fire: what he lays on, when, and on what bed. */
import type { Design } from '../../design/design.js';
import { bedOf } from '../../design/bed.js';
import { geometryOf } from '../../design/geometryOf.js';
import { makePit, type Pit } from '../../network/pit.js';
import { CLEAN_FIRE } from '../air/cleanFire.js';
import { cleanVents, openOf, withOpening } from '../air/cleanHold.js';
import type { Rule } from './stoker.js';

/**
 * Splits without a weight are of the size, of these, that is done nearest to every half hour: common practice, no
 * source [s]; a ladder in lb.
 */
const USUAL_CYCLE = 1800;
const LADDER = [0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60];
const POUND = 0.45359237;

/** The bed, and what air clean flames on it want over what their wood needs. */
export function boxOf(design: Design): { bedArea: number; airFactor: number } {
  return { ...bedOf(design), airFactor: CLEAN_FIRE.ratio };
}

/** Heat of the split that is laid on [J]. */
function splitHeat({ fire, wood }: Design, holds: number): number {
  const { mass, every } = fire.splits;
  if (mass !== undefined) return mass * wood.heat;
  if (every !== undefined && every > 0) return holds * every;
  const wanted = (holds * USUAL_CYCLE) / wood.heat / POUND;
  const off = (pounds: number) => Math.abs(Math.log(pounds / wanted));
  return LADDER.reduce((best, pounds) => (off(pounds) < off(best) ? pounds : best)) * POUND * wood.heat;
}

/** Intakes are never shut tight [-]. */
const LEAST_OPEN = 0.01;

/** Net heat of charcoal [J/kg]: from memory, 29 to 33 MJ/kg. */
export const CHARCOAL_HEAT = 30e6;

/** Charcoal that a cook is lit with: as much as would hold the pit for once, where the design does not say [kg]. */
export function coalsOf({ fire }: Design, holds: number): number {
  return fire.coals ?? (Math.min(holds, fire.heat) * fire.splits.glow) / CHARCOAL_HEAT;
}

/** How the design's cook minds the fire. */
export function ruleOf(design: Design, holds: number): Rule {
  const { cook, splits, target, heat: full } = design.fire;
  return {
    target,
    line: -cook.line,
    look: cook.look,
    late: cook.late,
    every: splits.every,
    split: splitHeat(design, holds),
    door: splits.door,
    intakes: cook.intakes.length === 2 ? [cook.intakes[0], cook.intakes[1]] : undefined,
    full,
  };
}

/**
 * How far the intakes stand open at first: as drawn, or where the cook turns them, where the fire that holds burns
 * clean.
 */
export function openAtFirst(design: Design, { intakes }: Rule): number {
  if (!intakes) return openOf(design);
  const [low, high] = intakes.map((each) => Math.max(LEAST_OPEN, each));
  return Math.min(high, Math.max(low, cleanVents(design)?.open ?? openOf(design)));
}

/** The pit with its intakes open to a share of all. */
export function withIntakes(design: Design, open: number): Pit {
  const changed = withOpening(design, open);
  return makePit(changed, geometryOf(changed));
}
