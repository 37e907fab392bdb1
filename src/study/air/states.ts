import { smokeOf, smokeShare } from '../estimate/smoke.js';
import { gaugeReading } from '../estimate/gauge.js';
import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { fullFromCold } from '../estimate/fromCold.js';
import { makePit, type Pit } from '../../network/pit.js';
import type { SteadyState } from '../estimate/result.js';
import { describeState } from '../estimate/describeState.js';
import { solveUnderFire, solveHoldFire, type Solved } from '../estimate/steady.js';

/** What a state of a pit says about its air, in a few numbers. */
export interface AirState {
  fire_W: number;
  fireAsked_W: number;
  /** of the gas at the fire */
  excessAirRatio: number;
  /** of what comes into the firebox from outdoors: a size must not rest on a leaky chamber */
  letInRatio: number;
  air_kg_per_s: number;
  /** settled reading of the gauge [K] */
  reading_K: number;
  stackBase_Pa: number;
  stackVelocity_m_per_s: number;
  intakeVelocity_m_per_s: number;
  throatVelocity_m_per_s: number;
  /** smoke out of door gaps over gas out of stacks; of the part that loses most of it */
  smokeShare: number;
  partSmokeShare: number;
  /** draft that the stack makes without any flow */
  theoretical_Pa: number;
  /** intakes, throat and stacks that flow the wrong way */
  backwards: string[];
}

/** A pit with its steady state under the full fire. */
export interface FullFire {
  pit: Pit;
  solved: Solved;
  state: AirState;
}

/** Flow against an opening's own direction counts from here on [kg/s]. */
const STILL = 1e-6;

/**
 * A steady state under the full fire; null where the draft never settles. Where the gas has several ways it need not be
 * the one that a pit lit cold comes to.
 */
export function someFullFire(design: Design): FullFire | null {
  const pit = makePit(design, geometryOf(design));
  const solved = solveUnderFire(pit, design.fire.heat);
  return solved.outcome.converged ? { pit, solved, state: airState(pit, solved) } : null;
}

/** The steady state that a pit lit cold comes to under the full fire; null where the draft never settles. */
export function fullFire(design: Design): FullFire | null {
  const found = someFullFire(design);
  if (!found) return null;
  const { pit } = found;
  const solved = fullFromCold(pit, found.solved);
  return solved === found.solved ? found : { pit, solved, state: airState(pit, solved) };
}

/** A pit that holds its target. */
export interface HoldFire {
  pit: Pit;
  solved: Solved;
  state: AirState;
}

/**
 * The steady state that holds the target; null where no fire does.
 *
 * @param start a state of this or a like pit to start from; absent: the full fire is solved first
 */
export function holdFire(design: Design, start?: Solved): HoldFire | null {
  const pit = makePit(design, geometryOf(design));
  const from = start ?? solveUnderFire(pit, design.fire.heat);
  if (!from.outcome.converged) return null;
  const held = solveHoldFire(pit, design.fire.target, from);
  return held.solved ? { pit, solved: held.solved, state: airState(pit, held.solved) } : null;
}

/**
 * The gas in a pit whose steel is still cold, over a fire that has just been lit: the first minutes, when a draft is
 * weakest.
 *
 * @param share of the full fire
 */
export function justLit({ pit }: FullFire, share: number): AirState | null {
  const { solver, design } = pit;
  const heat = share * design.fire.heat;
  const x = solver.burningState(heat, solver.coldState());
  const outcome = solver.solve(x, { mode: 'release', heat }, 'nodes');
  return outcome.converged ? airState(pit, { x, outcome, asked: heat }) : null;
}

/** A solved state in a few numbers. */
export function airState(pit: Pit, solved: Solved): AirState {
  const state = describeState(pit, solved);
  const { model } = pit;
  const throat = state.openings.find(({ role }) => role === 'throat')!;
  return {
    fire_W: state.fire_W,
    fireAsked_W: state.fireAsked_W,
    excessAirRatio: state.excessAirRatio,
    letInRatio: state.letInRatio,
    air_kg_per_s: state.air_kg_per_s,
    reading_K: gaugeReading(state, pit.design.gauge)!,
    stackBase_Pa: state.draft.stackBase_Pa,
    stackVelocity_m_per_s: state.draft.stackVelocity_m_per_s,
    intakeVelocity_m_per_s: state.draft.intakeVelocity_m_per_s,
    throatVelocity_m_per_s: throat.flow_kg_per_s / (model.density[model.network.fire.zone] * throat.area_m2),
    smokeShare: gapShare(state),
    partSmokeShare: partShare(state),
    theoretical_Pa: state.draft.theoretical_Pa,
    backwards: state.openings
      .filter(({ role, flow_kg_per_s: flow }) => isWay(role) && flow < -STILL)
      .map(({ name }) => name),
  };
}

function isWay(role: string): boolean {
  return role === 'intake' || role === 'throat' || role === 'stackExit';
}

function gapShare({ openings }: SteadyState): number {
  const out = openings.reduce((sum, o) => sum + (o.role === 'gap' ? Math.max(0, o.flow_kg_per_s) : 0), 0);
  const { stack } = smokeOf(openings);
  return stack > 0 ? out / stack : 1;
}

/** As an estimate counts it, by the part whose door gap it is. */
function partShare({ openings }: SteadyState): number {
  const { stack, byPart } = smokeOf(openings);
  return smokeShare(Math.max(0, ...byPart.values()), stack);
}
