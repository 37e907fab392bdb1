import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import { readDesignAnyUnit } from '../../design/read.js';
import type { Tree } from '../../design/vary.js';
import { version } from '../../version.js';
import { candidateFields, treeWith, type Candidate, type CandidateFields } from './candidate.js';
import { ventCurve, type VentCurve } from '../air/ventCurve.js';
import { changesMore, missedAsDrawn, variantsOf, type ConstraintKey, type VariantTry } from './constraints.js';
import { stackCurves, type StackCurve } from './curves.js';
import type { FullJudgement } from './judge.js';
import { CLEAN_FIRE } from '../air/cleanFire.js';
import { moneyOf, paidBack, type Money } from './money.js';
import { cookLength, type Payback } from '../costs.js';
import { heightOptions, type HeightOption } from './heights.js';
import { ranked, type Weighed } from './rank.js';
import { COMFORT, LIMITS, type Limit, type Margin, type SizeSettings } from './limits.js';
import type { ThroatTry } from './throat.js';
import { rulesOfThumb, type RuleOfThumb } from './rules.js';
import { OVER_HEAD } from '../../design/stackBounds.js';
import type { Warning } from '../estimate/result.js';
import { bestOf, type Rough, type StackSurvey } from './search.js';
import type { AirState } from '../air/states.js';
import type { WeatherCheck } from './weather.js';

/** States that margins are read from; null where there is none. */
interface SizeChecks {
  full: AirState | null;
  hold: AirState | null;
  justLit: AirState | null;
  weather: WeatherCheck[];
}

/** Intakes, throat and stack that go together, solved. */
export interface SizeChoice {
  intakes: {
    /** as drawn; kind and count are then those of its first row and of all */
    kept?: true;
    kind: 'disc' | 'slide' | 'pipe';
    count: number;
    diameter_m?: number;
    width_m?: number;
    height_m?: number;
    /** of all, open */
    area_m2: number;
    holdOpening: number | null;
  };
  throat: { kept?: true; area_m2: number };
  stack: {
    kept?: true;
    name: string;
    shape?: 'square';
    diameter_m?: number;
    width_m?: number;
    depth_m?: number;
    wall_m: number;
    height_m: number;
  };
  margins: Margin[];
  checks: SizeChecks;
  failed: string[];
  weighed: Weighed;
  /** what an estimate of it warns of, intakes wide open; null: none was made, since others come first */
  warned: Warning[] | null;
  /** at the design's prices */
  money: Money;
  /** within every limit */
  ok: boolean;
  /** fields of the design file that make it so, as they are written */
  fields: CandidateFields;
}

interface AsDrawn extends Pick<SizeChoice, 'margins' | 'checks' | 'failed' | 'weighed' | 'warned' | 'money' | 'ok'> {
  holdOpening: number | null;
  /** what it is not, of what is asked for */
  missed: ConstraintKey[];
  /** within every limit, in every weather, and what is asked for */
  good: boolean;
}

/** Something asked for, and what would be chosen without it. */
export interface ConstraintCost {
  key: ConstraintKey;
  /** without it another size would be chosen */
  binds: boolean;
  /** that size; null where it does not bind, or nothing fits without it either */
  without: SizeChoice | null;
  /** what the best size costs and saves against that one, in money */
  payback: Payback | null;
}

/** What `size` finds. */
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
    /** how long a cook is that is told in money */
    cook_s: number;
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
  /** what the best of the choices costs and saves against the drawing, in money */
  payback: Payback | null;
  /** one for each thing that is asked for */
  constraints: ConstraintCost[];
  /** the first choice, and it with each height that is asked about */
  heights: HeightOption[];
  /** throats that were tried in the pit as drawn, the smallest first */
  throats: ThroatTry[];
  rules: RuleOfThumb[];
  /** of the chosen size, or of the best there is */
  curves: { stacks: StackCurve[]; vents: VentCurve } | null;
}

/** Candidates that are judged fully, of what is asked for and of what would be without one of that. */
const SHORTLIST = { asked: 12, without: 4 } as const;

/** A candidate as the reader takes it from the file: what is judged is what a builder would run. */
interface Written {
  candidate: Candidate;
  guess: number;
  design: Design;
}

/** Candidates to judge, and which of them each variant has to choose from. */
interface Shelf {
  written: Written[];
  pools: number[][];
}

/**
 * The best candidates of each variant, written into the design file and read again; those that the reader refuses (no
 * room) are left out. What may be chosen as asked may be chosen without one of the things asked for as well.
 *
 * @param surveys what came of each try
 * @param between waited for before each, so that whoever waits can do something else meanwhile
 */
export async function writeOut(
  tree: Tree,
  design: Design,
  { tries, surveys }: { tries: readonly VariantTry[]; surveys: readonly StackSurvey[] },
  between?: () => Promise<void>,
): Promise<Shelf> {
  const written: Written[] = [];
  const known = new Map<string, number>();
  const write = async ({ candidate, holdOpening }: Rough): Promise<number | undefined> => {
    const text = JSON.stringify(treeWith(tree, candidateFields(tree, candidate, 1)));
    if (known.has(text)) return known.get(text);
    await between?.();
    const read = await readDesignAnyUnit(text, { fileName: 'design', alone: true });
    if (!read.design) return undefined;
    known.set(text, written.length);
    return written.push({ candidate, guess: holdOpening ?? 0.3, design: read.design }) - 1;
  };
  const pools: number[][] = [];
  for (const [of, { key }] of variantsOf(design).entries()) {
    const own = (each: number) => each === of || (each === 0 && !changesMore(key));
    const count = key === null ? SHORTLIST.asked : SHORTLIST.without;
    const pool = new Set<number>();
    // twice as many as are wanted, since the reader may refuse some
    for (const rough of bestOf(
      surveys.filter((_, i) => own(tries[i].of)),
      2 * count,
    )) {
      if (pool.size === count) break;
      const at = await write(rough);
      if (at !== undefined) pool.add(at);
    }
    pools.push([...new Set([...pool, ...(pools[0] ?? [])])]);
  }
  return { written, pools };
}

/** A variant's sizes, best first. */
function orderOf(pool: readonly number[], judgements: readonly FullJudgement[]): number[] {
  const sizes = pool.map((i) => {
    const { score, weather, weighed } = judgements[i];
    return { score, works: weather.filter((each) => each.works).length, weighed };
  });
  return ranked(sizes).map((at) => pool[at]);
}

/** Sizes that come first of a variant and have not been estimated yet. */
export function toEstimate({ pools }: Shelf, judgements: readonly FullJudgement[]): number[] {
  const first = pools.flatMap((pool) => orderOf(pool, judgements).slice(0, 1));
  return [...new Set(first)].filter((i) => judgements[i].estimated === null);
}

interface SizeParts extends Shelf {
  design: Design;
  warnings: DesignWarning[];
  tree: Tree;
  settings: SizeSettings;
  throats: ThroatTry[];
  tries: readonly VariantTry[];
  surveys: readonly StackSurvey[];
  judgements: readonly FullJudgement[];
  asDrawn: FullJudgement;
}

/** The answer, from what the threads gave. */
export async function sizeResult(parts: SizeParts): Promise<SizeResult> {
  const { design, warnings, tree, settings, throats, tries, surveys, written, pools, judgements, asDrawn } = parts;
  const order = orderOf(pools[0], judgements);
  const choice = (i: number) => choiceOf(design, tree, { written: written[i], judgement: judgements[i] });
  const paid = (other: FullJudgement) => (order.length > 0 ? paidBack(design, judgements[order[0]], other) : null);
  const choices = order.map(choice);
  const asked = surveys.filter((_, i) => tries[i].of === 0);
  const rough = asked.flatMap((survey) => survey.rough);
  const ruledOut: Record<string, number> = {};
  for (const { ruledOut: by } of asked) if (by !== null) ruledOut[by] = (ruledOut[by] ?? 0) + 1;
  const best = order.length > 0 ? written[order[0]] : null;
  const scale = settings.cleanAir / CLEAN_FIRE.ratio;
  const spread = (ratio: number) => Number((scale * ratio).toPrecision(3));
  const constraints = variantsOf(design).flatMap(({ key }, of): ConstraintCost[] => {
    if (key === null) return [];
    const [first] = orderOf(pools[of], judgements);
    const other = first !== undefined && first !== order[0] && judgements[first].score >= 0;
    return [
      {
        key,
        binds: other,
        without: other ? choice(first) : null,
        payback: other ? paid(judgements[first]) : null,
      },
    ];
  });
  const missed = missedAsDrawn(design);
  const drawn = judged(design, asDrawn);
  return {
    schema: 1,
    tool: { name: 'pitwright', version },
    design,
    warnings,
    wanted: {
      fullFire_W: design.fire.heat,
      target_K: design.fire.target,
      cleanAir: { ratio: settings.cleanAir, low: spread(CLEAN_FIRE.low), high: spread(CLEAN_FIRE.high) },
      limits: LIMITS,
      comfort: COMFORT,
      stackTop_m: OVER_HEAD,
      cook_s: cookLength(design),
      stacksTried: asked.length,
      ruledOut,
      candidates: rough.length,
      within: rough.filter(({ score }) => score >= 0).length,
    },
    asDrawn: {
      ...drawn,
      holdOpening: asDrawn.holdOpening,
      missed,
      good: drawn.ok && missed.length === 0 && asDrawn.weather.every(({ works }) => works),
    },
    choices,
    chosen: choices.length > 0 && choices[0].ok ? 0 : null,
    payback: paid(asDrawn),
    constraints,
    heights: best ? await heightOptions(treeWith(tree, choices[0].fields), best.design) : [],
    throats,
    rules: rulesOfThumb(best?.design ?? design),
    curves: best && {
      stacks: stackCurves(best.design, { stack: best.candidate.stack, height: best.design.stacks[0].height }),
      vents: ventCurve(best.design, settings.cleanAir),
    },
  };
}

function judged(design: Design, judgement: FullJudgement) {
  const { margins, full, hold, lit, weather, weighed, estimated, failed, score } = judgement;
  const warned = estimated && estimated.warnings;
  const money = moneyOf(design, judgement);
  return { margins, checks: { full, hold, justLit: lit, weather }, weighed, warned, money, failed, ok: score >= 0 };
}

function choiceOf(
  asked: Design,
  tree: Tree,
  { written: { candidate, design }, judgement }: { written: Written; judgement: FullJudgement },
): SizeChoice {
  const { vents, throat, stack, height } = candidate;
  const { intakes } = design.firebox;
  const count = intakes.reduce((sum, each) => sum + each.count, 0);
  const [drawn] = design.stacks;
  const { shape, diameter, width, depth } = drawn;
  return {
    intakes: {
      ...(vents ? {} : { kept: true as const }),
      kind: vents?.kind ?? intakes[0].kind,
      count,
      ...(vents?.diameter ? { diameter_m: vents.diameter.value } : {}),
      ...(vents?.width ? { width_m: vents.width.value, height_m: vents.height!.value } : {}),
      area_m2: intakes.reduce((sum, each) => sum + each.count * each.area, 0),
      holdOpening: judgement.holdOpening,
    },
    throat: { ...(throat ? {} : { kept: true as const }), area_m2: design.throat.area },
    stack: {
      ...(height ? {} : { kept: true as const }),
      name: stack.name,
      ...(shape === 'square' ? { shape, width_m: width, depth_m: depth ?? width } : { diameter_m: diameter }),
      wall_m: drawn.wall,
      height_m: drawn.height,
    },
    ...judged(asked, judgement),
    fields: candidateFields(tree, candidate, 1),
  };
}
