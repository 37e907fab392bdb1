import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import { readDesignAnyUnit } from '../../design/read.js';
import type { Tree } from '../../design/vary.js';
import { version } from '../../version.js';
import { candidateFields, treeWith, type Candidate, type CandidateFields } from './candidate.js';
import { ventCurve, type VentCurve } from '../air/ventCurve.js';
import { stackCurves, type StackCurve } from './curves.js';
import type { FullJudgement } from './judge.js';
import { CLEAN_FIRE } from '../air/cleanFire.js';
import { COMFORT, LIMITS, type Limit, type Margin, type SizeSettings } from './limits.js';
import { rulesOfThumb, type RuleOfThumb } from './rules.js';
import { STACK_TOP, type Rough, type StackSurvey } from './search.js';
import type { AirState } from '../air/states.js';
import type { WeatherCheck } from './weather.js';

/** States that margins are read from; null where there is none. */
export interface SizeChecks {
  full: AirState | null;
  hold: AirState | null;
  justLit: AirState | null;
  weather: WeatherCheck[];
}

export interface SizeChoice {
  intakes: {
    kind: 'disc' | 'slide';
    count: number;
    diameter_m?: number;
    width_m?: number;
    height_m?: number;
    /** of all, open */
    area_m2: number;
    holdOpening: number | null;
  };
  throat: { area_m2: number };
  stack: { name: string; diameter_m: number; wall_m: number; height_m: number };
  margins: Margin[];
  checks: SizeChecks;
  failed: string[];
  /** within every limit */
  ok: boolean;
  /** fields of the design file that make it so, as they are written */
  fields: CandidateFields;
}

export interface AsDrawn {
  holdOpening: number | null;
  margins: Margin[];
  checks: SizeChecks;
  failed: string[];
  ok: boolean;
}

export interface SizeResult {
  schema: 1;
  tool: { name: 'pitwright'; version: string };
  design: Design;
  warnings: DesignWarning[];
  wanted: {
    fullFire_W: number;
    target_K: number;
    /** air over what the wood needs at which the fire that holds counts as clean, and the estimate's spread */
    cleanAir: { ratio: number; low: number; high: number };
    limits: readonly Limit[];
    /** margin from which on the lightest stack decides */
    comfort: number;
    stackTop_m: number;
    stacksTried: number;
    /** stacks ruled out, by what rules them out */
    ruledOut: Record<string, number>;
    /** candidates within every limit, and their number */
    candidates: number;
    within: number;
  };
  asDrawn: AsDrawn;
  /** best first; the first that keeps within every limit, if one does, is the chosen one */
  choices: SizeChoice[];
  /** index in choices; null: none keeps within every limit */
  chosen: number | null;
  rules: RuleOfThumb[];
  /** of the chosen size, or of the best there is */
  curves: { stacks: StackCurve[]; vents: VentCurve } | null;
}

/** Candidates that are judged fully. */
export const SHORTLIST = 12;

/** A candidate as the reader takes it from the file: what is judged is what a builder would run. */
export interface Written {
  candidate: Candidate;
  guess: number;
  design: Design;
}

/**
 * Candidates written into the design file and read again; those that the reader refuses (no room) are left out.
 *
 * @param between waited for before each, so that whoever waits can do something else meanwhile
 */
export async function writeOut(tree: Tree, rough: Rough[], between?: () => Promise<void>): Promise<Written[]> {
  const written: Written[] = [];
  for (const { candidate, holdOpening } of rough) {
    if (written.length === SHORTLIST) break;
    await between?.();
    const text = JSON.stringify(treeWith(tree, candidateFields(tree, candidate, 1)));
    const { design } = await readDesignAnyUnit(text, { fileName: 'design', alone: true });
    if (design) written.push({ candidate, guess: holdOpening ?? 0.3, design });
  }
  return written;
}

export interface SizeParts {
  design: Design;
  warnings: DesignWarning[];
  tree: Tree;
  settings: SizeSettings;
  surveys: StackSurvey[];
  written: Written[];
  judgements: FullJudgement[];
  asDrawn: FullJudgement;
}

/** The answer, from what the threads gave. */
export function sizeResult(parts: SizeParts): SizeResult {
  const { design, warnings, tree, settings, surveys, written, judgements, asDrawn } = parts;
  const order = written.map((_, i) => i).sort((a, b) => rank(judgements[a], judgements[b]) || a - b);
  const choices = order.map((i) => choiceOf(tree, written[i], judgements[i]));
  const rough = surveys.flatMap((survey) => survey.rough);
  const ruledOut: Record<string, number> = {};
  for (const { ruledOut: by } of surveys) if (by !== null) ruledOut[by] = (ruledOut[by] ?? 0) + 1;
  const best = order.length > 0 ? written[order[0]].design : null;
  const scale = settings.cleanAir / CLEAN_FIRE.ratio;
  return {
    schema: 1,
    tool: { name: 'pitwright', version },
    design,
    warnings,
    wanted: {
      fullFire_W: design.fire.heat,
      target_K: design.fire.target,
      cleanAir: { ratio: settings.cleanAir, low: scale * CLEAN_FIRE.low, high: scale * CLEAN_FIRE.high },
      limits: LIMITS,
      comfort: COMFORT,
      stackTop_m: STACK_TOP,
      stacksTried: surveys.length,
      ruledOut,
      candidates: rough.length,
      within: rough.filter(({ score }) => score >= 0).length,
    },
    asDrawn: { ...judged(asDrawn), holdOpening: asDrawn.holdOpening },
    choices,
    chosen: choices.length > 0 && choices[0].ok ? 0 : null,
    rules: rulesOfThumb(best ?? design),
    curves: best && { stacks: stackCurves(best), vents: ventCurve(best, settings.cleanAir) },
  };
}

/** Within the limits first, then those that work in more of the weather; else as they came: the lightest stack first. */
function rank(a: FullJudgement, b: FullJudgement): number {
  const worth = ({ score }: FullJudgement) => Math.min(COMFORT, score);
  const works = ({ weather }: FullJudgement) => weather.filter((each) => each.works).length;
  const inside = (each: FullJudgement) => Number(each.score >= 0);
  const within = inside(b) - inside(a);
  if (within !== 0) return within;
  return works(b) - works(a) || (worth(a) === worth(b) ? 0 : worth(b) - worth(a));
}

function judged({ margins, full, hold, lit, weather, failed, score }: FullJudgement) {
  return { margins, checks: { full, hold, justLit: lit, weather }, failed, ok: score >= 0 };
}

function choiceOf(tree: Tree, { candidate }: Written, judgement: FullJudgement): SizeChoice {
  const { vents, throat, stack, height } = candidate;
  return {
    intakes: {
      kind: vents.kind,
      count: vents.count,
      ...(vents.diameter ? { diameter_m: vents.diameter.value } : {}),
      ...(vents.width ? { width_m: vents.width.value, height_m: vents.height!.value } : {}),
      area_m2: vents.count * vents.area,
      holdOpening: judgement.holdOpening,
    },
    throat: { area_m2: throat.value },
    stack: { name: stack.name, diameter_m: stack.outside, wall_m: stack.thickness, height_m: height.value },
    ...judged(judgement),
    fields: candidateFields(tree, candidate, 1),
  };
}
