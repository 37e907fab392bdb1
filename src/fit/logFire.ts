import type { Design, Splits } from '../design/design.js';
import { interpolate } from '../solve/interpolate.js';
import type { CookLog, WoodAdded } from './log/log.js';

/**
 * Heat of a fire that is fed as a log says, against time [W].
 *
 * Wood laid on burns with the mean times of a split on a bed in a usual draft, but along a smooth curve (see
 * `smoothSplit`): the corners of a bed's own settle its times so sharply that a fit leaves the truth in the others. A
 * log of the fire's heat is taken as it is. Where a log tells neither, the design's full fire burns from its first row
 * on.
 *
 * @param embers heat of what already burned at the first row [W]; it goes out as charcoal does
 */
export function fireOfLog(design: Design, log: CookLog, embers = 0): (t: number) => number {
  const { fire, wood } = design;
  const { flame, charcoal, glow } = fire.splits;
  if (log.fire) {
    const { time_s, value } = log.fire;
    return (t) => Math.max(0, interpolate(time_s, value, t));
  }
  if (log.wood) {
    const laid = log.wood;
    return (t) => embers * Math.exp(-Math.max(0, t) / glow) + wood.heat * burning(laid, { flame, charcoal, glow }, t);
  }
  return (t) => fire.heat * (1 - Math.exp(-Math.max(0, t) / fire.rise));
}

function burning(laid: readonly WoodAdded[], burns: Pick<Splits, 'flame' | 'charcoal' | 'glow'>, t: number): number {
  let sum = 0;
  for (const { time_s, mass_kg } of laid) {
    if (time_s >= t) break;
    sum += mass_kg * smoothSplit(burns, t - time_s);
  }
  return sum;
}

/**
 * Share of a split's heat that it gives a second, some time after it was laid on: flames and charcoal each by a gamma
 * law of shape 2, g(t) = 4 t/mean^2 exp(-2 t/mean). Charcoal is made as the flames burn, so that its mean time is both
 * together.
 */
function smoothSplit({ flame, charcoal, glow }: Pick<Splits, 'flame' | 'charcoal' | 'glow'>, t: number): number {
  const law = (mean: number) => (4 * t * Math.exp((-2 * t) / mean)) / (mean * mean);
  return (1 - charcoal) * law(flame) + charcoal * law(flame + glow);
}
