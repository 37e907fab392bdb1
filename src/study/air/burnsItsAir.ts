/** A bed that burns all the air it gets, and so the largest fire that a box makes. */
import { bedHeat } from '../../design/bed.js';
import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { makePit } from '../../network/pit.js';
import { solveUnderFire } from '../estimate/steady.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { airState, fullFire, type FullFire } from './states.js';

const TURNS = 30;
const FOUND = 1e-4;
/** Air goes with about this power of the fire, less one. */
const USUAL_SLOPE = -0.7;
/** Share of the full fire below which a fire is short of air. */
const SHORT = 0.999;

/**
 * The fire that takes a given air over what its wood needs, by secants in logarithms.
 *
 * @param wider the same with its intakes wider open: where that is short of air, so is this
 */
export function burnsItsAir(design: Design, ratio: number, wider: FullFire | null = null): FullFire | null {
  const short = wider !== null && wider.state.fire_W < SHORT * design.fire.heat;
  const full = short ? { ...wider, pit: makePit(design, geometryOf(design)) } : fullFire(design);
  if (!full || (!short && full.state.excessAirRatio >= ratio)) return full;
  const { pit } = full;
  let heat = wider?.state.fire_W ?? design.fire.heat;
  let { solved } = full;
  let before: { log: number; off: number } | undefined;
  for (let turn = 0; turn < TURNS; turn++) {
    solved = solveUnderFire(pit, heat, solved.x);
    if (!solved.outcome.converged) return null;
    const state = airState(pit, solved);
    const off = Math.log((state.excessAirRatio * state.fire_W) / (ratio * heat));
    if (Math.abs(off) < FOUND || (off > 0 && heat === design.fire.heat)) return { pit, solved, state };
    const log = Math.log(heat);
    const secant = before ? (off - before.off) / (log - before.log) : USUAL_SLOPE;
    before = { log, off };
    const slope = secant < 0.3 * USUAL_SLOPE && secant > 3 * USUAL_SLOPE ? secant : USUAL_SLOPE;
    heat = Math.min(design.fire.heat, Math.exp(log - off / slope));
  }
  return null;
}

/** The design with the fire that its bed makes where the file gives none, for vents that are turned: these set what burns of it. */
export function withBedFire(design: Design): Design {
  if (design.fire.heatOf !== 'air') return design;
  return { ...design, fire: { ...design.fire, heat: Math.max(design.fire.heat, bedHeat(design)), heatOf: 'bed' } };
}

/**
 * The design with the full fire that its box makes, where the file gives none: what its bed can burn, or the fire that takes all
 * the air its vents give it as drawn and still burns clean, whichever is less.
 */
export function withFullFire(design: Design): Design {
  if (design.fire.heatOf !== 'box') return design;
  const burnt = burnsItsAir({ ...design, fire: { ...design.fire, heatOf: 'bed' } }, CLEAN_FIRE.ratio);
  const byAir = burnt !== null && burnt.state.fire_W < SHORT * design.fire.heat;
  const heat = byAir ? burnt.state.fire_W : design.fire.heat;
  return { ...design, fire: { ...design.fire, heat, heatOf: byAir ? 'air' : 'bed' } };
}
