import type { Design, Splits } from '../design/design.js';
import { interpolate } from '../solve/interpolate.js';
import type { CookLog, WoodAdded } from './log/log.js';

/**
 * Heat of a fire that is fed as a log says, against time [W].
 *
 * Wood laid on at a time burns by the law of a split (see `splitFire`): its flaming share soon, its charcoal slowly, each by
 * g(t) = t / a^2 exp(-t / a). A log of the fire's heat is taken as it is. Where a log tells neither, the design's assumed
 * fire burns from its first row on.
 *
 * @param embers heat of what already burned at the first row [W]; it goes out as charcoal does
 */
export function fireOfLog(design: Design, log: CookLog, embers = 0): (t: number) => number {
  const { fire, wood } = design;
  const { glow } = fire.splits;
  const left = embers > 0 ? (t: number) => embers * (1 + (2 * t) / glow) * Math.exp((-2 * t) / glow) : () => 0;
  if (log.fire) {
    const { time_s, value } = log.fire;
    return (t) => Math.max(0, interpolate(time_s, value, t));
  }
  if (log.wood) {
    const laid = log.wood;
    return (t) => left(t) + burning(fire.splits, laid, wood.heat, t);
  }
  return (t) => fire.heat * (1 - Math.exp(-Math.max(0, t) / fire.rise));
}

function burning({ flame, charcoal, glow }: Splits, laid: readonly WoodAdded[], heat: number, t: number): number {
  let sum = 0;
  for (const { time_s, mass_kg } of laid) {
    if (time_s >= t) break;
    const age = t - time_s;
    sum += mass_kg * ((1 - charcoal) * burnLaw(age, flame / 2) + charcoal * burnLaw(age, glow / 2));
  }
  return heat * sum;
}

function burnLaw(t: number, a: number): number {
  return (t / (a * a)) * Math.exp(-t / a);
}
