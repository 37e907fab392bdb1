/** What a builder weighs between sizes that keep their limits, and in which order. */
import type { Design } from '../../design/design.js';
import { lidOf } from '../../design/stackBounds.js';
import { stackGeometry } from '../../design/geometryOf.js';
import type { AirState } from '../air/states.js';
import { COMFORT } from './limits.js';
import type { WeatherCheck } from './weather.js';

/** What sets one size before another once both keep their limits. */
export interface Weighed {
  /** air of the full fire with the wind on the intakes, over that with them in its lee; null: not known */
  windSwing: number | null;
  /** wood while the target is held; null: it is not */
  wood_kg_per_s: number | null;
  /** steel of all stacks, without their gather boxes */
  stack_kg: number;
  /** of the lowest top over the lid of its part */
  overLid_m: number;
}

/** What choices are ranked by beside their margins. */
export function weigh(
  design: Design,
  { hold, weather }: { hold: AirState | null; weather: readonly WeatherCheck[] },
): Weighed {
  const air = (key: WeatherCheck['key']) => weather.find((each) => each.key === key)?.full?.letInRatio ?? 0;
  const [on, lee] = [air('windOnIntake'), air('intakeInLee')];
  return {
    windSwing: on > 0 && lee > 0 ? on / lee : null,
    wood_kg_per_s: hold && hold.fire_W / design.wood.heat,
    stack_kg: design.stacks.reduce((sum, stack) => sum + stackGeometry(stack).mass, 0),
    overLid_m: Math.min(...design.stacks.map((stack) => stack.base + stack.height - lidOf(design, stack))),
  };
}

/** What sizes are told apart by; larger `works` and `score` are better. */
export interface Ranked {
  score: number;
  /** kinds of weather that it works in */
  works: number;
  weighed: Weighed;
}

/**
 * Within this factor of the best, two sizes count alike in the wind, and in wood; within this much of the best, in what
 * is in hand.
 */
export const ALIKE = 1.1;
const ALIKE_IN_HAND = 0.1;

const step = (value: number | null, best: number): number =>
  value === null ? Infinity : Math.floor(Math.log(value / best) / Math.log(ALIKE) + 1e-9);

/**
 * Indexes of sizes, best first: those within the limits, those that work in more of the weather, those with more in
 * hand, a quarter counting as enough; then those that the wind moves least, those that burn less wood, all three by
 * steps of a tenth from the best; then the lighter stack.
 */
export function ranked(sizes: readonly Ranked[]): number[] {
  const inside = sizes.filter(({ score }) => score >= 0);
  const counted = inside.length > 0 ? inside : sizes;
  const best = (of: (each: Weighed) => number | null) =>
    Math.min(...counted.map(({ weighed }) => of(weighed)).filter((each) => each !== null));
  const swing = best(({ windSwing }) => windSwing);
  const wood = best(({ wood_kg_per_s }) => wood_kg_per_s);
  const inHand = Math.min(COMFORT, Math.max(...counted.map(({ score }) => score)));
  const places = sizes.map(({ score, works, weighed }) => [
    score >= 0 ? 0 : 1,
    -works,
    score === -Infinity ? Infinity : Math.floor((inHand - Math.min(COMFORT, score)) / ALIKE_IN_HAND + 1e-9),
    step(weighed.windSwing, swing),
    step(weighed.wood_kg_per_s, wood),
    weighed.stack_kg,
  ]);
  return sizes.map((_, i) => i).sort((a, b) => firstOf(places[a], places[b]) || a - b);
}

function firstOf(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i] ? -1 : 1;
  return 0;
}
