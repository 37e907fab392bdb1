/** How splits of wood are laid on, and how one burns. */
export interface SplitBurning {
  /** time from one to the next [s]; 0: all the time */
  every: number;
  /** mean time at which the flaming share, and the charcoal, has burned [s] */
  flame: number;
  glow: number;
  /** share of the heat that the charcoal holds [-]; 0-1 */
  charcoal: number;
}

/**
 * Heat of a fire that is fed one equal split every so often, long enough that every day looks like the last.
 *
 * A split burns in two parts, each by a gamma law of shape 2, g(t) = t/a^2 exp(-t/a), whose mean time is 2 a: the flaming
 * share soon, the charcoal slowly. Summed over all splits laid on before, at period N, with q = exp(-N/a):
 * sum over k of g(t + k N) = exp(-t/a)/a^2 [t/(1 - q) + N q/(1 - q)^2].
 * @param splits how often, and how one burns
 * @param mean heat averaged over a period [W]
 * @param t time since the last split was laid on [s]; 0 to the period
 * @returns [W]; the mean itself when the period is 0
 * @example splitFire({ every: 0, flame: 600, glow: 2400, charcoal: 0.35 }, 9000, 0) // 9000 W
 * Reference: ours. The law and its times are estimates: no burn-rate law with data was found in print. Charcoal holds about a
 * third of the net heat: 15 to 25 % of the dry wood at some 32 MJ/kg (from memory).
 */
export function splitFire({ every, flame, charcoal, glow }: SplitBurning, mean: number, t: number): number {
  if (every <= 0) return mean;
  const energy = mean * every;
  return energy * ((1 - charcoal) * sumOfAll(t, every, flame / 2) + charcoal * sumOfAll(t, every, glow / 2));
}

function sumOfAll(t: number, period: number, a: number): number {
  const left = -Math.expm1(-period / a);
  return (Math.exp(-t / a) / (a * a)) * (t / left + (period * (1 - left)) / (left * left));
}

/**
 * A steady fire after its last wood, by the same law: what was laid on before burns on.
 *
 * Fed evenly by many small splits, at time t a fire still gives the share S(t) of what it gave, with S the integral of g from t
 * on, (1 + t / a) exp(-t / a); what it has yet to give is the integral of S from t on, (t + 2 a) exp(-t / a).
 *
 * @param splits how one burns: flaming and glowing times [s], share of charcoal
 * @param t time since the last wood [s]
 * @returns share of the steady fire, 1 at first; heat yet to come as a time of that fire [s]
 * @example burnDown({ flame: 600, glow: 2400, charcoal: 0.35 }, 0).share // 1
 * Reference: ours, the law of `splitFire` integrated.
 */
export function burnDown(
  { flame, charcoal, glow }: Omit<SplitBurning, 'every'>,
  t: number,
): { share: number; left: number } {
  const [soon, slow] = [flame / 2, glow / 2].map((a) => {
    const fallen = Math.exp(-t / a);
    return { share: (1 + t / a) * fallen, left: (t + 2 * a) * fallen };
  });
  const both = (of: 'share' | 'left') => (1 - charcoal) * soon[of] + charcoal * slow[of];
  return { share: both('share'), left: both('left') };
}
