import type { Design } from '../../design/design.js';
import { jointsOf } from '../../design/joints.js';
import { stackLengths } from '../../design/stackBounds.js';
import { candidateDesign, withAir, type Candidate } from './candidate.js';
import { whereClean } from '../air/cleanHold.js';
import { throatFor, verdict, worstLit, type Judgement } from './judge.js';
import { COMFORT, JUST_LIT, LIMIT, type LimitKey, type SizeSettings } from './limits.js';
import { ranked, weigh, type Weighed } from './rank.js';
import { windOn } from './weather.js';
import { fullFire, type AirState } from '../air/states.js';
import {
  drawnStack,
  stackOf,
  stockHeights,
  stockStacks,
  stockThroat,
  stockVents,
  type Sized,
  type StockStack,
  type StockVents,
} from './stock.js';

/** A stack to try on a design. */
export interface StackTry {
  stack: StockStack;
  /** null: as drawn */
  height: Sized | null;
}

/** A candidate roughly judged: the hold state is that of its open area, whatever the vents; one moment of the first minutes. */
export interface Rough extends Judgement {
  candidate: Candidate;
  weighed: Weighed;
}

/** What came of one stack: candidates with it, or why there is none. */
export interface StackSurvey {
  rough: Rough[];
  /** what rules the stack out whatever the vents, or leaves no vents; null where there are candidates */
  ruledOut: LimitKey | 'draft' | 'vents' | null;
}

/** Opening that vents are first chosen for: in the middle of what is allowed, by ratio. */
const MIDDLE = Math.sqrt(LIMIT.holdOpening.low! * LIMIT.holdOpening.high!);
/** Vents of each kind that are tried with a stack, at most. */
const TRIED = 3;
/** Smallest open area at which holding is sought, as a share of the largest vents, and where that search begins. */
const SMALLEST = 0.003;
const GUESS = 0.06;

/** Every stack from stock or on hand that the design's parts carry and that ends between its bounds; the drawn one where it stays. */
export function stackTries(design: Design): StackTry[] {
  const { keep = [], stack: asked, onHand } = design.size ?? {};
  const [drawn] = design.stacks;
  if (keep.includes('stack')) return [{ stack: drawnStack(drawn), height: null }];
  const widest = Math.min(
    ...design.stacks.map(({ part }) => {
      const on = design[part]!;
      return Math.min(on.width, 'depth' in on ? on.depth : on.length);
    }),
  );
  const lengths = stackLengths(design);
  return tubesFor(design, asked?.shapes, onHand)
    .filter(({ outside }) => outside <= 0.5 * widest)
    .flatMap((stack) => stockHeights(lengths, stack.long).map((height) => ({ stack, height })));
}

function tubesFor(
  { stacks: [drawn] }: Design,
  shapes: ('round' | 'square')[] | undefined,
  onHand: NonNullable<Design['size']>['onHand'],
): StockStack[] {
  if (!onHand) return stockStacks(drawn.steel, shapes ?? [drawn.shape ?? 'round']);
  return onHand.filter(({ size }) => !shapes || shapes.includes(size.shape ?? 'round')).map(stackOf);
}

/** Vents that fit the design's firebox face beside each other. */
export function ventsThatFit(design: Design): StockVents[] {
  const { firebox } = design;
  const { centre } = firebox.intakes[0];
  const low = firebox.centre - 0.5 * firebox.height;
  const high = firebox.centre + 0.5 * firebox.height;
  return stockVents({ width: firebox.width, height: 2 * Math.min(centre - low, high - centre) });
}

/**
 * Share of the firebox's section that a throat is at the least, where there is room: a quarter, common practice, no source. A
 * smaller one throws a jet, and takes more wood to hold what the dial reads.
 */
const USUAL_THROAT = 0.25;

/** The usual throat, and the largest that the parts it joins leave room for [m2]. */
function throatsOf(design: Design): { usual: number; room: number } {
  const { area, ends } = jointsOf(design).find(({ opening }) => opening === design.throat)!;
  return { usual: USUAL_THROAT * ends[0], room: 0.9 * area };
}

const total = ({ count, area }: StockVents) => count * area;

/** Candidates with one stack, roughly judged, one of each kind of vents. */
export function surveyStack(design: Design, { stack, height }: StackTry, settings: SizeSettings): StackSurvey {
  const { keep = [] } = design.size ?? {};
  const keepsVents = keep.includes('intakes');
  const out = (ruledOut: StackSurvey['ruledOut']): StackSurvey => ({ rough: [], ruledOut });
  const vents = keepsVents ? [] : ventsThatFit(design);
  if (!keepsVents && vents.length === 0) return out('vents');
  const most = keepsVents ? drawnVents(design) : total(vents[vents.length - 1]);
  const tube = { ...stack.section, ...(height ? { height: height.value } : {}) };
  const usual = keep.includes('throat') ? null : fittingThroat(design, 0);
  const withArea = (area: number) =>
    withAir(design, {
      vents: keepsVents ? area / most : { count: 1, area, open: 1 },
      throat: usual?.value,
      stack: tube,
    });

  // wide open, a stack does what it can at most
  const open = fullFire(withArea(most));
  if (!open) return out('draft');
  if (open.state.letInRatio < LIMIT.air.low!) return out('air');
  if (open.state.stackVelocity_m_per_s < LIMIT.stackSpeed.low!) return out('stackSpeed');

  const clean = whereClean(withArea, { low: SMALLEST * most, high: most, guess: GUESS * most }, settings, open.solved);
  if (clean === null) return out('holdOpening');
  if (clean.hold.state.fire_W > design.fire.heat) return out('heat');
  const wanted = clean.at / MIDDLE;
  const full = keepsVents ? open : fullFire(withArea(Math.min(most, wanted)));
  if (!full) return out('draft');
  const throat = usual && fittingThroat(design, throatFor(full));
  const judge = (each: StockVents | null) =>
    judgeRoughly(
      design,
      { vents: each, throat, stack, height },
      clean.at / (each ? total(each) : most),
      clean.hold.state,
    );
  if (keepsVents) return { rough: [judge(null)], ruledOut: null };
  const rough = (['disc', 'slide'] as const).flatMap((kind) => {
    const allowed = vents.filter((each) => each.kind === kind && clean.at <= LIMIT.holdOpening.high! * total(each));
    const at = allowed.findIndex((each) => total(each) >= 0.9 * wanted);
    const tried = allowed.slice(Math.max(0, at), Math.max(0, at) + TRIED);
    return firstComfortable(tried.map((each) => () => judge(each)));
  });
  return rough.length > 0 ? { rough, ruledOut: null } : out('vents');
}

/** All that the drawn intakes open [m2]. */
function drawnVents({ firebox }: Design): number {
  return firebox.intakes.reduce((sum, { count, area }) => sum + count * area, 0);
}

/** The first of several candidates that has margin enough, or the best of them. */
function firstComfortable(candidates: (() => Rough)[]): Rough[] {
  let best: Rough | undefined;
  for (const judge of candidates) {
    const rough = judge();
    if (!best || rough.score > best.score) best = rough;
    if (best.score >= COMFORT) break;
  }
  return best ? [best] : [];
}

function judgeRoughly(design: Design, candidate: Candidate, holdOpening: number, hold: AirState): Rough {
  const sized = candidateDesign(design, candidate);
  const full = fullFire(sized);
  const lit = full && worstLit(full, JUST_LIT.slice(0, 1));
  const weighed = { ...weigh(sized, { hold, weather: [] }), windSwing: likelySwing(sized, hold) };
  return { candidate, weighed, ...verdict({ holdOpening, full, hold, wide: null, lit }) };
}

/**
 * How far wind from one side and from the other would move the air, by what the stack alone pulls: flow goes with the root of the
 * pressure.
 */
function likelySwing(design: Design, { theoretical_Pa: pull }: AirState): number {
  const { intake, lee } = windOn(design);
  return Math.sqrt((pull + intake) / (pull + lee));
}

/** A throat of whole tens that is as large as it must be and as is usual, where there is room. */
function fittingThroat(design: Design, least: number): Sized {
  const { usual, room } = throatsOf(design);
  const wanted = stockThroat(Math.max(least, usual));
  if (wanted.value <= room) return wanted;
  // the largest whole tens that fit
  const ten = stockThroat(0).value;
  return stockThroat(Math.max(1, Math.floor(room / ten)) * ten);
}

/** The best of many candidates, as far as a rough judgement goes. */
export function bestOf(surveys: StackSurvey[], count: number): Rough[] {
  const all = surveys.flatMap(({ rough }) => rough);
  return ranked(all.map(({ score, weighed }) => ({ score, works: 0, weighed })))
    .slice(0, count)
    .map((i) => all[i]);
}
