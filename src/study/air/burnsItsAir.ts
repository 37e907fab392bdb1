/** A bed that burns all the air it gets, and so the largest fire that a box makes. */
import { bedHeat } from '../../design/bed.js';
import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { makePit } from '../../network/pit.js';
import { logSecant } from '../../solve/logSecant.js';
import { solveUnderFire } from '../estimate/steady.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { airState, fullFire, type FullFire } from './states.js';

const TURNS = 30;
const FOUND = 1e-4;
/** Air goes with about this power of the fire, less one, and no further from it than this. */
const SLOPE = { usual: -0.7, least: -2.1, most: -0.21 };
/** Share of the full fire below which a fire is short of air. */
const SHORT = 0.999;

/**
 * The fire that takes a given air over what its wood needs.
 *
 * @param wider the same with its intakes wider open: where that is short of air, so is this
 */
export function burnsItsAir(design: Design, ratio: number, wider: FullFire | null = null): FullFire | null {
  const short = wider !== null && wider.state.fire_W < SHORT * design.fire.heat;
  const full = short ? { ...wider, pit: makePit(design, geometryOf(design)) } : fullFire(design);
  if (!full || (!short && full.state.excessAirRatio >= ratio)) return full;
  const { pit } = full;
  const most = design.fire.heat;
  let { solved, state } = full;
  const heat = logSecant(
    (each) => {
      solved = solveUnderFire(pit, each, solved.x);
      if (!solved.outcome.converged) return Number.NaN;
      state = airState(pit, solved);
      const off = Math.log((state.excessAirRatio * state.fire_W) / (ratio * each));
      return Math.abs(off) < FOUND || (off > 0 && each === most) ? 0 : off;
    },
    { guess: wider?.state.fire_W ?? most, low: 0, high: most, slope: SLOPE, stride: Infinity, turns: TURNS },
  );
  return heat === null ? null : { pit, solved, state };
}

/**
 * The design with the fire that its bed makes where the file gives none, for vents that are turned: these set what
 * burns of it.
 */
export function withBedFire(design: Design): Design {
  if (design.fire.heatOf !== 'air') return design;
  return { ...design, fire: { ...design.fire, heat: Math.max(design.fire.heat, bedHeat(design)), heatOf: 'bed' } };
}

/**
 * The design with the full fire that its box makes, where the file gives none: what its bed can burn, or the fire that
 * takes all the air its vents give it as drawn and still burns clean, whichever is less.
 */
export function withFullFire(design: Design): Design {
  if (design.fire.heatOf !== 'box') return design;
  const burnt = burnsItsAir({ ...design, fire: { ...design.fire, heatOf: 'bed' } }, CLEAN_FIRE.ratio);
  const byAir = burnt !== null && burnt.state.fire_W < SHORT * design.fire.heat;
  const heat = byAir ? burnt.state.fire_W : design.fire.heat;
  return { ...design, fire: { ...design.fire, heat, heatOf: byAir ? 'air' : 'bed' } };
}
