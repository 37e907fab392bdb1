import type { Design } from '../../design/design.js';
import { whereClean, withOpening } from '../air/cleanHold.js';
import { JUST_LIT, LIMIT, marginOf, THROAT_USE, type Margin, type SizeSettings } from './limits.js';
import { fullFire, holdFire, justLit, type AirState, type FullFire } from '../air/states.js';
import { checkWeather, weathersOf, type WeatherCheck } from './weather.js';

/** A way for the fire to breathe, judged. */
export interface Judgement {
  /** share that the intakes are open while holding, a whole number of percent; null: no share makes a clean hold fire */
  holdOpening: number | null;
  margins: Margin[];
  /** what could not be computed, and so has no margin; empty when all could */
  failed: string[];
  /** smallest margin; -Infinity where something could not be computed */
  score: number;
}

export interface FullJudgement extends Judgement {
  full: AirState | null;
  hold: AirState | null;
  lit: AirState | null;
  weather: WeatherCheck[];
}

/**
 * A design judged with everything: the very opening at which it holds, the first minutes, and other weather.
 *
 * @param design whatever share its intakes are open
 * @param guess of the opening at which it holds
 */
export function judgeFully(design: Design, guess: number, settings: SizeSettings): FullJudgement {
  const designAt = (open: number) => withOpening(design, open);
  const full = fullFire(designAt(1));
  if (!full)
    return { ...verdict({ holdOpening: null, full, hold: null, lit: null }), full, hold: null, lit: null, weather: [] };
  const clean = whereClean(designAt, { low: 0.01, high: 1, guess }, settings, full.solved);
  const holdOpening = clean && Math.max(0.01, Math.round(100 * clean.at) / 100);
  const hold =
    clean && holdOpening !== null ? (holdFire(designAt(holdOpening), clean.hold.solved)?.state ?? null) : null;
  const lit = worstLit(full, JUST_LIT);
  return {
    ...verdict({ holdOpening, full, hold, lit }),
    full: full.state,
    hold,
    lit,
    weather: weathersOf(design).map((each) => checkWeather(designAt(1), each)),
  };
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
  lit: AirState | null;
}): Judgement {
  const { holdOpening, full, hold, lit } = solved;
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
      marginOf('air', state.excessAirRatio),
      marginOf('heat', (state.reading_K - site.air) / (fire.target - site.air)),
      marginOf('stackSpeed', state.stackVelocity_m_per_s),
      marginOf('intakeSpeed', state.intakeVelocity_m_per_s),
      marginOf('throatSpeed', state.throatVelocity_m_per_s),
    );
  }
  if (holdOpening !== null) margins.push(marginOf('holdOpening', holdOpening));
  if (hold) margins.push(marginOf('holdStackSpeed', hold.stackVelocity_m_per_s));
  if (lit) margins.push(marginOf('smoke', lit.smokeShare));
  const backwards = new Set([...(full?.state.backwards ?? []), ...(hold?.backwards ?? []), ...(lit?.backwards ?? [])]);
  if (full) margins.push(marginOf('backDraft', backwards.size));
  const score = failed.length > 0 ? -Infinity : Math.min(...margins.map(({ margin }) => margin));
  return { holdOpening, margins, failed, score };
}

/** Throat area [m2] at which a full fire's gas runs through it with a quarter of the greatest speed in hand. */
export function throatFor({ state, pit }: FullFire): number {
  const now = pit.design.throat.area;
  return (now * state.throatVelocity_m_per_s) / (THROAT_USE * LIMIT.throatSpeed.high!);
}
