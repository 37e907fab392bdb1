import type { Design } from '../../design/design.js';
import { jointsOf } from '../../design/joints.js';
import { candidateDesign, withAir, type Candidate } from './candidate.js';
import { whereClean } from '../air/cleanHold.js';
import { throatFor, verdict, worstLit, type Judgement } from './judge.js';
import { COMFORT, JUST_LIT, LIMIT, type LimitKey, type SizeSettings } from './limits.js';
import { fullFire } from '../air/states.js';
import {
  STOCK_HEIGHTS,
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
  height: Sized;
}

/** A candidate roughly judged: the hold state is that of its open area, whatever the vents; one moment of the first minutes. */
export interface Rough extends Judgement {
  candidate: Candidate;
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

/** A stack ends at least so high above the ground [m], so that smoke clears a cook's head: 6 ft, common practice, no source. */
export const STACK_TOP = 1.8288;

/** Every stack from stock that the design's parts carry and that ends over a cook's head. */
export function stackTries(design: Design): StackTry[] {
  const widest = Math.min(
    ...design.stacks.map(({ part }) => {
      const on = design[part]!;
      return Math.min(on.width, 'depth' in on ? on.depth : on.length);
    }),
  );
  const base = Math.min(...design.stacks.map((stack) => stack.base));
  const heights = STOCK_HEIGHTS.filter(({ value }) => base + value >= STACK_TOP - 1e-9);
  return stockStacks(design.stacks[0].steel)
    .filter(({ outside }) => outside <= 0.5 * widest)
    .flatMap((stack) => heights.map((height) => ({ stack, height })));
}

/** Vents that fit the design's firebox face beside each other. */
export function ventsThatFit(design: Design): StockVents[] {
  const { firebox } = design;
  const { centre } = firebox.intakes[0];
  const low = firebox.centre - 0.5 * firebox.height;
  const high = firebox.centre + 0.5 * firebox.height;
  return stockVents({ width: firebox.width, height: 2 * Math.min(centre - low, high - centre) });
}

/** Largest throat that the parts it joins leave room for [m2]. */
function throatRoom(design: Design): number {
  return 0.9 * jointsOf(design).find(({ opening }) => opening === design.throat)!.area;
}

const total = ({ count, area }: StockVents) => count * area;

/** Candidates with one stack, roughly judged, one of each kind of vents. */
export function surveyStack(design: Design, { stack, height }: StackTry, settings: SizeSettings): StackSurvey {
  const vents = ventsThatFit(design);
  const size = { diameter: stack.outside, wall: stack.thickness, height: height.value };
  const out = (ruledOut: StackSurvey['ruledOut']): StackSurvey => ({ rough: [], ruledOut });
  if (vents.length === 0) return out('vents');
  const most = total(vents[vents.length - 1]);
  const withArea = (area: number) => withAir(design, { count: 1, area, open: 1 }, design.throat.area, size);

  // wide open, a stack does what it can at most
  const open = fullFire(withArea(most));
  if (!open) return out('draft');
  if (open.state.excessAirRatio < LIMIT.air.low!) return out('air');
  if (open.state.stackVelocity_m_per_s < LIMIT.stackSpeed.low!) return out('stackSpeed');

  const clean = whereClean(withArea, { low: SMALLEST * most, high: most, guess: GUESS * most }, settings, open.solved);
  if (clean === null) return out('holdOpening');
  if (clean.hold.state.fire_W > design.fire.heat) return out('heat');
  const wanted = clean.at / MIDDLE;
  const full = fullFire(withArea(Math.min(most, wanted)));
  if (!full) return out('draft');
  const throat = fittingThroat(design, throatFor(full));
  const rough = (['disc', 'slide'] as const).flatMap((kind) => {
    const allowed = vents.filter((each) => each.kind === kind && clean.at <= LIMIT.holdOpening.high! * total(each));
    const at = allowed.findIndex((each) => total(each) >= 0.9 * wanted);
    const judged = allowed.slice(Math.max(0, at), Math.max(0, at) + TRIED).map((each) => () => {
      const candidate: Candidate = { vents: each, throat, stack, height };
      return judgeRoughly(design, candidate, clean.at / total(each), clean.hold.state);
    });
    return firstComfortable(judged);
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

function judgeRoughly(
  design: Design,
  candidate: Candidate,
  holdOpening: number,
  hold: Parameters<typeof verdict>[0]['hold'],
): Rough {
  const full = fullFire(candidateDesign(design, candidate));
  const lit = full && worstLit(full, JUST_LIT.slice(0, 1));
  return { candidate, ...verdict({ holdOpening, full, hold, lit }) };
}

function fittingThroat(design: Design, least: number): Sized {
  const room = throatRoom(design);
  const wanted = stockThroat(least);
  if (wanted.value <= room) return wanted;
  // the largest whole tens that fit
  const ten = stockThroat(0).value;
  return stockThroat(Math.max(1, Math.floor(room / ten)) * ten);
}

/**
 * The best of many candidates: margins up to a quarter count, and of those that have it the lightest stack comes first.
 */
export function bestOf(surveys: StackSurvey[], count: number): Rough[] {
  return surveys
    .flatMap(({ rough }) => rough)
    .sort(byScore)
    .slice(0, count);
}

/** Larger score first, as far as it matters; of equals the lighter stack, then the fewer vents. */
export function byScore(a: Rough, b: Rough): number {
  const worth = ({ score }: Rough) => Math.min(COMFORT, score);
  const steel = ({ candidate: { stack, height } }: Rough) => stack.outside * stack.thickness * height.value;
  return worth(b) - worth(a) || steel(a) - steel(b) || a.candidate.vents.count - b.candidate.vents.count;
}
