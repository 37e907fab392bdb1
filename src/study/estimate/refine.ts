import { gaugeReading } from './gauge.js';
import type { Design } from '../../design/design.js';
import { DEFAULT_RESOLUTION, type Resolution } from '../../network/build.js';
import { held } from '../quantities.js';
import { estimate } from './estimate.js';
import type { EstimateResult } from './result.js';

/** One run of a refinement study: what was refined, and what came out. */
export interface RefinedRun {
  label: string;
  resolution: Resolution;
  /** factor on the tolerances of the time steps */
  tolerance: number;
  fire_W: number | null;
  /**
   * settled reading of the gauge, and the spread between the hottest and the coldest cooking station, under hold [K]
   */
  gauge_K: number | null;
  spread_K: number | null;
  gauge_s: number | null;
  soaked_s: number | null;
  steps: number;
  energyError: number;
}

/** An estimate on finer cells, tighter steps and a layered firebox. */
export interface Refinement {
  cells: RefinedRun[];
  steps: RefinedRun[];
  /** gas of the firebox in as many layers as a chamber has, where it is else one mixed body */
  firebox: RefinedRun[];
}

const BASE: Resolution = DEFAULT_RESOLUTION;

/**
 * How much of a result hangs on how finely it is computed: the same design with more cells, and with tighter time
 * steps.
 *
 * Cells are refined three- and fivefold, so that the cells that are read stay in the middle of their stations.
 * Time-step tolerances are halved again and again. Layers in the firebox are no refinement but another picture of its
 * gas, which measured rooms with a fire speak for: what they change is what mixing it may cost.
 */
export function refine(design: Design): Refinement {
  const base = runOf(design, 'as computed', BASE, 1);
  const cells = [base, ...[3, 5].map((n) => runOf(design, `${n} times the cells`, scaled(n), 1))];
  const steps = [2, 1, 0.5, 0.25, 0.125].map((factor) =>
    factor === 1 ? base : runOf(design, `tolerance x ${factor}`, BASE, factor),
  );
  const layered = runOf(design, `${BASE.levels} layers`, { ...BASE, firebox: BASE.levels }, 1);
  return { cells, steps, firebox: [base, layered] };
}

function scaled(n: number): Resolution {
  return { ...BASE, chamber: BASE.chamber * n, upright: BASE.upright * n, stack: BASE.stack * n };
}

function runOf(design: Design, label: string, resolution: Resolution, tolerance: number): RefinedRun {
  const result: EstimateResult = estimate(design, { resolution, tolerance });
  return {
    label,
    resolution,
    tolerance,
    fire_W: result.steady?.fire_W ?? null,
    gauge_K: result.steady && gaugeReading(result.steady, design.gauge),
    spread_K: held('endToEnd_K').of({ result }),
    gauge_s: result.warmUp?.gauge_s ?? null,
    soaked_s: result.warmUp?.soaked_s ?? null,
    steps: result.warmUp?.steps ?? 0,
    energyError: result.balance.energyError,
  };
}
