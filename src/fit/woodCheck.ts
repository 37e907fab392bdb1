import type { Design } from '../design/design.js';
import { geometryOf } from '../design/geometryOf.js';
import { spotOf, type CookLog } from './log/log.js';
import { makePit } from '../network/pit.js';
import { solveUnderFire, solveHoldFire } from '../study/estimate/steady.js';
import { firstReading } from './hotStart.js';

/** The wood of a log against what its pit can burn, and what it took. */
export interface WoodCheck {
  laid_kg: number;
  /** generously: no pit burns more in the time, with what may lie in the box at the end */
  most_kg: number;
  /** sparingly: less can't have held what the probes read */
  least_kg: number;
}

/** A fire this many times the design's is all that air allows. */
const MORE_THAN_AIR = 50;
/** On the steady fire that air through open vents allows; doors ajar, gusts and estimates don't double it. */
const GENEROUS = 2;
/** Wood that fills a firebox, loosely stacked [kg/m³] (estimate). */
const STACKED = 200;
/** Of the wood that would hold the mean reading all the time; a wrong unit or a forgotten column is further off. */
const SPARING = 0.2;
/** A mean reading this little above outdoors tells nothing of a fire [K]. */
const WARM = 30;

/** @returns null: the log has no wood, or its fire beside it; or the pit has no steady state to tell by */
export function checkWood(design: Design, log: CookLog): WoodCheck | null {
  if (!log.wood || log.fire) return null;
  const laid = log.wood.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const open: Design = {
    ...design,
    firebox: { ...design.firebox, intakes: design.firebox.intakes.map((each) => ({ ...each, open: 1 })) },
    stacks: design.stacks.map((each) => ({ ...each, damper: 1 })),
  };
  const geometry = geometryOf(open);
  const pit = makePit(open, geometry);
  const all = solveUnderFire(pit, MORE_THAN_AIR * design.fire.heat);
  if (!all.outcome.converged) return null;
  const box = geometry.parts.find(({ name }) => name === 'firebox');
  const burnt = (all.x[pit.model.fire] * log.length_s) / design.wood.heat;
  return {
    laid_kg: laid,
    most_kg: GENEROUS * burnt + STACKED * (box?.gasVolume ?? 0),
    least_kg: (SPARING * heldBy(design, log) * log.length_s) / design.wood.heat,
  };
}

/**
 * Fire that would hold the mean of the gauge over the log [W]; 0: it can't be told, or the log began with heat of its
 * own.
 */
function heldBy(design: Design, log: CookLog): number {
  const channel = log.channels.find(
    (each) => each.measured === 'thermometer' && spotOf(each) === design.gauge && each.value_K.length > 0,
  );
  if (!channel || firstReading(design, log) !== null) return 0;
  const mean = channel.value_K.reduce((sum, value) => sum + value, 0) / channel.value_K.length;
  if (mean - design.site.air < WARM) return 0;
  const pit = makePit(design, geometryOf(design));
  const full = solveUnderFire(pit, design.fire.heat);
  const solved = full.outcome.converged ? solveHoldFire(pit, mean, full).solved : null;
  return solved ? solved.x[pit.model.fire] : 0;
}
