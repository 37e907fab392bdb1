/** A bed that burns all the air it gets, and so the largest fire that a box makes. */
import type { Design } from '../../design/design.js';
import { solveUnderFire } from '../estimate/steady.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { airState, fullFire, type FullFire } from './states.js';

const TURNS = 30;
const FOUND = 1e-4;

/** The fire that takes a given air over what its wood needs, by repeated substitution: air goes with a small power of the fire. */
export function burnsItsAir(design: Design, ratio: number, near: FullFire | null = null): FullFire | null {
  const full = fullFire(design);
  if (!full || full.state.excessAirRatio >= ratio) return full;
  const { pit } = full;
  const { heatValue, airPerFuel } = pit.model.network.fire;
  let heat = Math.min(design.fire.heat, near?.state.fire_W ?? design.fire.heat);
  let solved = full.solved;
  for (let turn = 0; turn < TURNS; turn++) {
    solved = solveUnderFire(pit, heat, solved.x);
    if (!solved.settled.converged) return null;
    const state = airState(pit, solved);
    const next = Math.min(design.fire.heat, (state.air_kg_per_s * heatValue) / (ratio * airPerFuel));
    if (Math.abs(next / heat - 1) < FOUND) return { pit, solved, state };
    heat = next;
  }
  return null;
}

/**
 * The design with the full fire that its box makes, where the file gives none: what its bed can burn, or the fire that takes all
 * the air its vents give it as drawn and still burns clean, whichever is less.
 */
export function withFullFire(design: Design): Design {
  if (design.fire.heatOf !== 'box') return design;
  const burnt = burnsItsAir({ ...design, fire: { ...design.fire, heatOf: 'bed' } }, CLEAN_FIRE.ratio);
  const byAir = burnt !== null && burnt.state.fire_W < 0.999 * design.fire.heat;
  const heat = byAir ? burnt.state.fire_W : design.fire.heat;
  return { ...design, fire: { ...design.fire, heat, heatOf: byAir ? 'air' : 'bed' } };
}
