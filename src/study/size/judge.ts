import { cooked } from '../events/cooked.js';
import type { Design } from '../../design/design.js';
import { whereClean, withOpening } from '../air/cleanHold.js';
import { estimate } from '../estimate/estimate.js';
import { smokeShare } from '../estimate/smoke.js';
import type { EstimateResult, Warning } from '../estimate/result.js';
import {
  COUNTED,
  JUST_LIT,
  LIMIT,
  limitOf,
  marginOf,
  scoreOf,
  THROAT_USE,
  type LimitKey,
  type Margin,
  type SizeSettings,
} from './limits.js';
import { fullFire, holdFire, justLit, type AirState, type FullFire } from '../air/states.js';
import { checkWeather, weathersOf, type WeatherCheck } from './weather.js';
import { weigh, type Weighed } from './rank.js';

/** A way for the fire to breathe, judged. */
export interface Judgement {
  /**
   * share that the intakes are open while holding, a whole number of percent; null: no share makes a clean hold fire
   */
  holdOpening: number | null;
  margins: Margin[];
  /** what could not be computed, and so has no margin; empty when all could */
  failed: string[];
  /** smallest margin; -Infinity where something could not be computed */
  score: number;
}

/** A size solved in full: its states, margins and how it takes other weather. */
export interface FullJudgement extends Judgement {
  full: AirState | null;
  hold: AirState | null;
  lit: AirState | null;
  weather: WeatherCheck[];
  /** what sets one size before another */
  weighed: Weighed;
  /** an estimate with the intakes wide open; null: none was made */
  estimated: EstimateResult | null;
}

/**
 * A design judged with everything: the very opening at which it holds, the first minutes, and other weather.
 *
 * @param design whatever share its intakes are open
 * @param guess of the opening at which it holds
 */
export function judgeFully(design: Design, guess: number, settings: SizeSettings): FullJudgement {
  const designAt = (open: number) => withOpening(design, open);
  const none = { hold: null, lit: null, weather: [], estimated: null };
  const full = fullFire(designAt(1));
  if (!full) {
    const solved = { holdOpening: null, full, hold: null, wide: null, lit: null };
    return { ...verdict(solved), ...none, full, weighed: weigh(design, { hold: null, weather: [] }) };
  }
  const clean = whereClean(designAt, { low: 0.01, high: 1, guess }, settings, full.solved);
  const holdOpening = clean && Math.max(0.01, Math.round(100 * clean.at) / 100);
  const hold =
    clean && holdOpening !== null ? (holdFire(designAt(holdOpening), clean.hold.solved)?.state ?? null) : null;
  const wide = holdFire(designAt(1), full.solved)?.state ?? null;
  const lit = worstLit(full, JUST_LIT);
  const weather = weathersOf(design).map((each) => checkWeather(designAt(1), each));
  return {
    ...verdict({ holdOpening, full, hold, wide, lit }),
    full: full.state,
    hold,
    lit,
    weather,
    weighed: weigh(design, { hold, weather }),
    estimated: null,
  };
}

/** A design with its intakes wide open, as a builder would estimate it. */
export function estimateWide(design: Design): EstimateResult {
  return estimate(withOpening(design, 1), { further: cooked });
}

/** A judgement with an estimate of its design: a limit that one of its warnings is of is not kept. */
export function withEstimate(judgement: FullJudgement, estimated: EstimateResult): FullJudgement {
  const { warnings } = estimated;
  const of = (key: LimitKey) => warnings.filter(({ code }) => limitOf(code) === key);
  const margins = [
    ...judgement.margins.map((each) => worseOf(each, of(each.key))),
    ...COUNTED.map((key) => marginOf(key, of(key).length)),
  ];
  const score = judgement.failed.length > 0 ? -Infinity : scoreOf(margins);
  return { ...judgement, margins, score, estimated };
}

/** A margin as the warnings of its limit have it, where theirs is the worse. */
function worseOf(margin: Margin, warnings: Warning[]): Margin {
  const { key } = margin;
  const told = warnings.map(({ code, value, limits }) => {
    if (key === 'gapSmoke') return marginOf(key, smokeShare(value!, limits!.high! / LIMIT.gapSmoke.high!));
    if (key === 'backDraft') return marginOf(key, warnings.length);
    if (code === 'little-air') return marginOf(key, value!);
    // told of what has a number of its own, which stays as it is
    return { ...margin, margin: Math.min(margin.margin, -1) };
  });
  return [margin, ...told].reduce((worst, each) => (each.margin < worst.margin ? each : worst));
}

/** Of the first minutes, the moment that leaks most smoke. @param shares of the full fire */
export function worstLit(full: FullFire, shares: readonly number[]): AirState | null {
  const states = shares.map((share) => justLit(full, share));
  if (states.some((state) => state === null)) return null;
  const all = states as AirState[];
  const worst = all.reduce((a, b) => (b.smokeShare > a.smokeShare ? b : a));
  return { ...worst, backwards: [...new Set(all.flatMap(({ backwards }) => backwards))] };
}

/** Margins of what was solved. */
export function verdict(solved: {
  holdOpening: number | null;
  full: FullFire | null;
  hold: AirState | null;
  /** holding with the intakes wide open */
  wide: AirState | null;
  lit: AirState | null;
}): Judgement {
  const { holdOpening, full, hold, wide, lit } = solved;
  const failed = [
    ...(full ? [] : ['the draft never settles']),
    ...(full && holdOpening === null
      ? ['no opening of the intakes gives the fire that holds the air of a clean one']
      : []),
    ...(full && holdOpening !== null && !hold ? ['no fire holds the target with the intakes so far open'] : []),
    ...(full && !lit ? ['the draft never settles with the fire just lit'] : []),
  ];
  const margins: Margin[] = [];
  if (full) {
    const { state, pit } = full;
    const { site, fire } = pit.design;
    margins.push(
      marginOf('air', state.letInRatio),
      marginOf('heat', (state.reading_K - site.air) / (fire.target - site.air)),
      marginOf('stackSpeed', state.stackVelocity_m_per_s),
      marginOf('intakeSpeed', state.intakeVelocity_m_per_s),
      marginOf('throatSpeed', state.throatVelocity_m_per_s),
    );
  }
  if (holdOpening !== null) margins.push(marginOf('holdOpening', holdOpening));
  if (hold) margins.push(marginOf('holdStackSpeed', hold.stackVelocity_m_per_s));
  if (lit) margins.push(marginOf('smoke', lit.smokeShare));
  const settled = [full?.state, hold, wide].filter((each) => each !== null && each !== undefined);
  if (full) {
    const all = [...settled, ...(lit ? [lit] : [])];
    margins.push(
      marginOf('draft', Math.min(...all.map((each) => each.stackBase_Pa))),
      marginOf('gapSmoke', Math.max(...settled.map((each) => each.partSmokeShare))),
      marginOf('backDraft', new Set(all.flatMap((each) => each.backwards)).size),
    );
  }
  return { holdOpening, margins, failed, score: failed.length > 0 ? -Infinity : scoreOf(margins) };
}

/** Throat area [m2] at which a full fire's gas runs through it with a quarter of the greatest speed in hand. */
export function throatFor({ state, pit }: FullFire): number {
  const now = pit.design.throat.area;
  return (now * state.throatVelocity_m_per_s) / (THROAT_USE * LIMIT.throatSpeed.high!);
}
