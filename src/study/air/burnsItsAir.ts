/** A bed that burns all the air it gets, and so the largest fire that a box makes. */
import { bedHeat } from '../../design/bed.js';
import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { makePit } from '../../network/pit.js';
import { rootNear } from '../../solve/rootNear.js';
import { solveUnderFire } from '../estimate/steady.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { airState, fullFire, type FullFire } from './states.js';

/** Air goes with about this power of the fire, less one. */
const SLOPE = -0.7;
/** Longest step of the search and the least fire looked at, both of the logarithm of the fire. */
const STRIDE = Math.log(6);
const LEAST = Math.log(1e-4);
/** What counts as found: of the air, and of the fire, where air jumps. */
const FOUND = { air: 1e-4, fire: 1e-6 };
/** Share of the full fire below which a fire is short of air. */
const SHORT = 0.999;

/**
 * The fire that takes a given air over what its wood needs, by a search in logarithms.
 *
 * @param wider the same with its intakes wider open: where that is short of air, so is this
 */
export function burnsItsAir(design: Design, ratio: number, wider: FullFire | null = null): FullFire | null {
  const short = wider !== null && wider.state.fire_W < SHORT * design.fire.heat;
  const full = short ? { ...wider, pit: makePit(design, geometryOf(design)) } : fullFire(design);
  if (!full || (!short && full.state.excessAirRatio >= ratio)) return full;
  const { pit } = full;
  const most = Math.log(design.fire.heat);
  let { solved } = full;
  let found: FullFire | null = null;
  const off = (log: number): number => {
    const heat = Math.exp(log);
    solved = solveUnderFire(pit, heat, solved.x);
    if (!solved.outcome.converged) return Number.NaN;
    const state = airState(pit, solved);
    const air = Math.log((state.excessAirRatio * state.fire_W) / (ratio * heat));
    if (Math.abs(air) >= FOUND.air && !(air > 0 && log === most)) return air;
    found = { pit, solved, state };
    return 0;
  };
  const guess = Math.log(wider?.state.fire_W ?? design.fire.heat);
  rootNear(off, { guess, low: most + LEAST, high: most, slope: SLOPE, stride: STRIDE, tolerance: FOUND.fire });
  return found;
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
