import { withFullFire } from '../air/burnsItsAir.js';
import { geometryOf } from '../../design/geometryOf.js';
import type { Design, Door } from '../../design/design.js';
import type { Resolution } from '../../network/build.js';
import { OUTDOORS } from '../../network/types.js';
import { version } from '../../version.js';
import { biotNumbers } from './biot.js';
import { withHandsAndWeight } from '../carry/carried.js';
import { unknownsUsed } from './unknownsUsed.js';
import { makePit, type Pit } from '../../network/pit.js';
import { rangeWarnings } from './ranges.js';
import type { EstimateResult, PartResult, SteadyState, WarmUp, Warning } from './result.js';
import { fromCold, type FromCold } from './fromCold.js';
import { describeState } from './describeState.js';
import { solveUnderFire, type Solved } from './steady.js';
import type { WarmUpRun } from './warmUp.js';
import { steelWarnings } from './steelWarnings.js';
import { airWarnings, backDraftWarnings, bedWarnings, chokesAtFirst, smokeWarnings } from './airWarnings.js';
import { fallsBack, targetWarning } from './targetWarnings.js';
import { materialWarnings } from './materialWarnings.js';
import { otherState } from './otherState.js';
import { listed } from '../../units/listed.js';

/** A solved pit: the state that holds its target, null where none does, and that of its full fire. */
export interface Solution {
  pit: Pit;
  held: Solved | null;
  full: Solved;
}

/** What was found beyond an estimate. */
export interface Further {
  result: Partial<EstimateResult>;
  warnings: Warning[];
}

/** How finely, how far and what else is computed. */
export interface EstimateOptions {
  /** how finely the parts are cut (default 3 chamber cells, 2 upright, 1 stack) */
  resolution?: Resolution;
  /** factor on the tolerances of the time steps (default 1) */
  tolerance?: number;
  /** leave the warm-up out */
  steadyOnly?: boolean;
  /** what else is asked of the pit once it is solved, as `cooked` follows a cook with splits */
  further?: (solution: Solution) => Further;
  /** follow the warm-up of a pit that soaks at least this far [s] */
  until?: number;
}

/** What a computation cost, for the bench. */
export interface EstimateCost {
  evaluations: number;
  steps: number;
}

/**
 * The main job: steady state under the full fire, the fire that holds the target, and the warm-up, of one design.
 *
 * Never throws on a design that the reader accepts: what physics cannot give is null, and a warning says why.
 *
 * @param design as read, SI
 * @returns the result tree of the file format
 */
export function estimate(design: Design, options: EstimateOptions = {}, cost?: EstimateCost): EstimateResult {
  return withHandsAndWeight(solveAll(withFullFire(design), options, cost));
}

function solveAll(design: Design, options: EstimateOptions, cost?: EstimateCost): EstimateResult {
  const geometry = geometryOf(design);
  const pit = makePit(design, geometry, options.resolution);
  const warnings: Warning[] = [];
  const result: EstimateResult = {
    schema: 1,
    tool: { name: 'pitwright', version },
    design,
    warnings,
    geometry: { parts: [], totalSteelMass_kg: geometry.totalSteelMass },
    estimates: unknownsUsed(design),
    steady: null,
    assumed: null,
    warmUp: null,
    balance: { energyError: 0, massError_kg_per_s: 0 },
  };
  if (!pit.built.network.openings.some((o) => o.to === OUTDOORS)) {
    warnings.push(sealed(design.fire.heat));
    result.geometry.parts = partResults(pit, new Float64Array(pit.built.network.nodes.length));
    return result;
  }
  const found = solveUnderFire(pit, design.fire.heat);
  if (!found.outcome.converged) {
    warnings.push(noSteadyDraft(pit, found));
    result.geometry.parts = partResults(pit, new Float64Array(pit.built.network.nodes.length));
    return result;
  }
  const airless = airWarnings(describeState(pit, found), 'assumed fire').some((w) => w.code === 'no-air-path');
  const { full, held, reached, run }: FromCold = airless
    ? { full: { state: found, other: null }, held: { state: null, other: null }, reached: 0, run: null }
    : fromCold(pit, found, options.steadyOnly ? 'forks' : 'always', options);
  const solved = full.state;
  const assumed = describeState(pit, solved);
  const biot = biotNumbers(pit, solved.x);
  result.assumed = assumed;
  result.geometry.parts = partResults(pit, biot);
  warnings.push(...airWarnings(assumed, 'assumed fire'), ...backDraftWarnings(assumed, 'assumed fire'));
  warnings.push(...smokeWarnings(assumed, 'assumed fire'), ...materialWarnings(pit, solved.x, biot));
  warnings.push(...rangeWarnings(pit, solved.x), ...bedWarnings(design));
  if (airless) {
    result.balance = worstOf([assumed], null);
    return result;
  }
  if (full.other) warnings.push(otherState(assumed, describeState(pit, full.other), 'assumed fire'));
  if (held.state) {
    result.steady = describeState(pit, held.state);
    warnings.push(...backDraftWarnings(result.steady, 'hold fire'), ...smokeWarnings(result.steady, 'hold fire'));
    warnings.push(...airWarnings(result.steady, 'hold fire').filter((w) => w.code === 'little-air'));
  }
  if (held.other) warnings.push(otherState(result.steady, describeState(pit, held.other), 'hold fire'));
  const hold = held.state ? [{ fire: 'hold fire' as const, x: held.state.x }] : [];
  warnings.push(...steelWarnings(pit, [...hold, { fire: 'assumed fire', x: solved.x }]));
  if (run) {
    if (!options.steadyOnly) result.warmUp = run.warmUp;
    if (!run.finished) warnings.push(brokeOff(run.warmUp));
    warnings.push(...chokesAtFirst(run.warmUp, design, assumed), ...fallsBack(run.warmUp, design));
    if (cost) Object.assign(cost, { evaluations: run.evaluations, steps: run.warmUp.steps });
  }
  const more = options.further?.({ pit, held: held.state, full: solved });
  if (more) {
    Object.assign(result, more.result);
    warnings.push(...more.warnings);
  }
  warnings.push(...targetWarning(design, assumed, result.steady, reached, run));
  result.balance = worstOf([assumed, ...(result.steady ? [result.steady] : [])], run);
  return result;
}

function partResults(pit: Pit, biot: Float64Array): PartResult[] {
  const { nodes } = pit.built.network;
  const worst = (name: string) => nodes.reduce((most, n, i) => (n.part === name ? Math.max(most, biot[i]) : most), 0);
  const parts = pit.geometry.parts.map((part) => ({
    name: part.name as string,
    ...platesOfPart(pit.design[part.name]!),
    steelArea_m2: part.steelArea,
    steelMass_kg: part.steelMass,
    gasVolume_m3: part.gasVolume,
    ...(part.liningMass > 0 ? { liningMass_kg: part.liningMass } : {}),
    biot: worst(part.name),
  }));
  const stacks = pit.geometry.stacks.map((stack, i) => ({
    name: pit.geometry.stacks.length > 1 ? `stack ${i + 1}` : 'stack',
    plate_m: pit.design.stacks[i].wall,
    steelArea_m2: 0.5 * (stack.insideArea + stack.outsideArea),
    steelMass_kg: stack.mass,
    gasVolume_m3: stack.volume,
    biot: worst('stack'),
  }));
  const boxes = pit.geometry.stacks.flatMap(({ gather }, i) =>
    gather
      ? [
          {
            name: pit.geometry.stacks.length > 1 ? `gather box ${i + 1}` : 'gather box',
            plate_m: pit.design.stacks[i].gather!.plate,
            steelArea_m2: 0.5 * (gather.insideArea + gather.outsideArea) + gather.contact,
            steelMass_kg: gather.mass + gather.contactMass,
            gasVolume_m3: gather.volume,
            biot: worst('stack'),
          },
        ]
      : [],
  );
  return [...parts, ...stacks, ...boxes];
}

function platesOfPart({
  plate,
  door,
  doors = [],
}: {
  plate: number;
  door?: Door;
  doors?: Door[];
}): Pick<PartResult, 'plate_m' | 'doorPlate_m'> {
  // of several doors the thinnest
  const leaves = [...(door ? [door] : []), ...doors].map((each) => each.plate);
  return { plate_m: plate, ...(leaves.length > 0 ? { doorPlate_m: Math.min(...leaves) } : {}) };
}

function worstOf(states: SteadyState[], run: WarmUpRun | null): EstimateResult['balance'] {
  const energies = states.map((s) => s.energyError);
  const masses = states.map((s) => s.massError_kg_per_s);
  return {
    energyError: Math.max(run?.energyError ?? 0, ...energies),
    massError_kg_per_s: Math.max(run?.massError ?? 0, ...masses),
  };
}

/** A pit without a single opening to outdoors. */
function sealed(heat: number): Warning {
  return {
    code: 'no-air-path',
    message:
      'every opening is shut: no air gets in and no smoke out, so that no fire burns. Open an intake and the stack',
    where: '',
    fire: 'assumed fire',
    value: 0,
    limits: { low: heat, unit: 'W' },
  };
}

/**
 * A design whose gas finds no steady way: it keeps tipping from one way of flowing to another. The last state on the
 * way tells what it is about.
 */
function noSteadyDraft(pit: Pit, solved: Solved): Warning {
  const last = describeState(pit, solved);
  const wrong = last.openings
    .filter((o) => ['intake', 'throat', 'stackExit'].includes(o.role) && o.flow_kg_per_s < 0)
    .map((o) => o.name);
  const reasons = [
    ...(wrong.length > 0 ? [`gas runs backwards through ${listed(wrong)}`] : []),
    ...(last.limitedByAir ? ['the fire gets too little air'] : []),
  ];
  const why = reasons.length > 0 ? ` (${reasons.join('; ')})` : '';
  return {
    code: 'no-steady-draft',
    message: `the draft never settles: the gas keeps tipping from one way of flowing to another${why}. Give the pit a clear way through: intake low, throat and stack large enough, stack top well above the intake`,
    where: '',
    fire: 'assumed fire',
    value: solved.outcome.heatError,
    limits: null,
  };
}

function brokeOff(warmUp: WarmUp): Warning {
  const time = warmUp.series.time_s[warmUp.series.time_s.length - 1];
  return {
    code: 'draft-tips-over',
    message: `from ${(time / 60).toFixed(1)} min on the draft keeps tipping from one way of flowing to another, so that the warm-up can't be followed further: give the pit a clear way through (intake, throat, stack)`,
    where: 'warm-up',
    value: time,
    limits: null,
  };
}
