import type { Design } from '../../design/design.js';
import { jointsOf } from '../../design/joints.js';
import { stackLengths } from '../../design/stackBounds.js';
import { candidateDesign, withAir, type Candidate } from './candidate.js';
import { throatFor, verdict, worstLit, type Judgement } from './judge.js';
import { COMFORT, JUST_LIT, LIMIT, type LimitKey, type SizeSettings } from './limits.js';
import { fittingThroat } from './throat.js';
import { cleanArea, MIDDLE, mostOpen, openedBy, total, ventsThatFit } from './vents.js';
import { ranked, weigh, type Weighed } from './rank.js';
import { windOn } from './weather.js';
import { someFullFire, type AirState } from '../air/states.js';
import {
  drawnStack,
  stackOf,
  stockHeights,
  stockStacks,
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

/**
 * A candidate roughly judged: the hold state is that of its open area, whatever the vents; one moment of the first
 * minutes.
 */
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

/** Vents of each kind that are tried with a stack, at most. */
const TRIED = 3;
/**
 * Every stack from stock or on hand that the design's parts carry and that ends between its bounds; the drawn one where
 * it stays.
 */
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

/**
 * Where no clean fire holds in the pit as drawn: a quarter of the firebox's section [m2], common practice, no source.
 */
function usualThroat(design: Design): number {
  return 0.25 * jointsOf(design).find(({ opening }) => opening === design.throat)!.ends[0];
}

/** Candidates with one stack, roughly judged, one of each kind of vents. */
export function surveyStack(design: Design, { stack, height }: StackTry, settings: SizeSettings): StackSurvey {
  const { keep = [] } = design.size ?? {};
  const keepsVents = keep.includes('intakes');
  const out = (ruledOut: StackSurvey['ruledOut']): StackSurvey => ({ rough: [], ruledOut });
  const vents = ventsThatFit(design);
  const most = mostOpen(design);
  if (most === 0) return out('vents');
  const tube = { ...stack.section, ...(height ? { height: height.value } : {}) };
  const first = keep.includes('throat') ? null : fittingThroat(design, settings.throat ?? usualThroat(design));
  const withArea = (area: number) =>
    withAir(design, { vents: openedBy(design, area), throat: first?.value, stack: tube });

  // wide open, a stack does what it can at most
  const open = someFullFire(withArea(most));
  if (!open) return out('draft');
  if (open.state.letInRatio < LIMIT.air.low!) return out('air');
  if (open.state.stackVelocity_m_per_s < LIMIT.stackSpeed.low!) return out('stackSpeed');

  const clean = cleanArea(withArea, most, settings, open.solved);
  if (clean === null) return out('holdOpening');
  if (clean.hold.state.fire_W > design.fire.heat) return out('heat');
  const wanted = clean.at / MIDDLE;
  const full = keepsVents ? open : someFullFire(withArea(Math.min(most, wanted)));
  if (!full) return out('draft');
  const throat = first && fittingThroat(design, Math.max(first.value, throatFor(full)));
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
  const full = someFullFire(sized);
  const lit = full && worstLit(full, JUST_LIT.slice(0, 1));
  const weighed = { ...weigh(sized, { hold, weather: [] }), windSwing: likelySwing(sized, hold) };
  return { candidate, weighed, ...verdict({ holdOpening, full, hold, wide: null, lit }) };
}

/**
 * How far wind from one side and from the other would move the air, by what the stack alone pulls: flow goes with the
 * root of the pressure.
 */
function likelySwing(design: Design, { theoretical_Pa: pull }: AirState): number {
  const { intake, lee } = windOn(design);
  return Math.sqrt((pull + intake) / (pull + lee));
}

/** The best of many candidates, as far as a rough judgement goes. */
export function bestOf(surveys: StackSurvey[], count: number): Rough[] {
  const all = surveys.flatMap(({ rough }) => rough);
  return ranked(all.map(({ score, weighed }) => ({ score, works: 0, weighed })))
    .slice(0, count)
    .map((i) => all[i]);
}
