/**
 * How a split of wood burns: the front of charcoal that eats into it, what of its heat leaves as flame, and the
 * charcoal that glows on.
 */

/** Charring of wood in the standard fire, by density [kg/m3], [m/s]: 0.65 and 0.50 mm/min. */
const CHARRING = { light: { density: 290, rate: 0.65e-3 / 60 }, heavy: { density: 450, rate: 0.5e-3 / 60 } } as const;

/**
 * Speed at which the front of charcoal eats into hardwood in the standard fire.
 * @param density of the air-dry wood [kg/m3]; straight between 290 and 450, as at the nearer one outside
 * @returns [m/s]
 * @example charringRate(700) // 8.333e-6 m/s
 * Reference: EN 1995-1-2:2004, table 3.1, solid hardwood (from memory; 0.65 and 0.50 mm/min seen at second hand).
 */
export function charringRate(density: number): number {
  const { light, heavy } = CHARRING;
  const share = Math.min(1, Math.max(0, (density - light.density) / (heavy.density - light.density)));
  return light.rate + share * (heavy.rate - light.rate);
}

/**
 * A firebox chars wood faster than the standard fire does: estimate, spread 0.7-2.5; charring goes up with the heat
 * flux (Tran & White 1992).
 */
export const FIREBOX_CHARRING = 1.3;

/**
 * Mean time at which the flaming heat of a split leaves it. Burning on its whole surface, it is a cylinder whose radius
 * shrinks evenly; what it gives falls evenly to nothing when the front is through, so that the mean time is a third of
 * that.
 * @param thickness of the split [m]; above 0
 * @param rate of charring [m/s]
 * @returns [s]
 * @example meanFlame(0.0762, 8.333e-6) // 1524 s
 * Reference: geometry of a shrinking cylinder.
 */
export function meanFlame(thickness: number, rate: number): number {
  return thickness / 2 / rate / 3;
}

/**
 * Thickness of a split as a cylinder of its wood.
 * @param mass [kg]
 * @param density [kg/m3]
 * @param length [m]
 * @returns diameter [m]
 * @example cylinderThickness(1.134, 700, 0.3556) // 0.0762 m
 * Reference: geometry.
 */
export function cylinderThickness(mass: number, density: number, length: number): number {
  return 2 * Math.sqrt(mass / (Math.PI * density * length));
}

/**
 * Share of a cylinder that has charred.
 * @param depth of the front as a share of the radius [-]; held to 0-1
 * @returns [-]
 * @example charred(0.5) // 0.75
 * Reference: geometry.
 */
export function charred(depth: number): number {
  const core = 1 - Math.min(1, Math.max(0, depth));
  return 1 - core * core;
}

/**
 * How well a split burns some time after it was laid on: slowly at first, then all over, along 3 u^2 - 2 u^3.
 * @param age since then [s]
 * @param catching time until it burns all over [s]; above 0
 * @returns share of its surface that burns [-], and the time of burning all over that this has been worth [s]
 * @example alight(90, 180).burned // 16.875 s
 * Reference: ours, an estimate.
 */
export function alight(age: number, catching: number): { share: number; burned: number } {
  const u = Math.max(0, age / catching);
  if (u >= 1) return { share: 1, burned: age - catching / 2 };
  return { share: u * u * (3 - 2 * u), burned: catching * u * u * u * (1 - u / 2) };
}

/**
 * What a flaming bed can burn of what it would, by the air it gets: the smooth smaller of 1 and the air it has over the
 * air it wants.
 * @param ratio air had over air wanted [-]; 0 or more
 * @returns [-]; 0.84 where both are the same
 * @example airHolds(0.5) // 0.4925
 * Reference: ours; the fourth power rounds the corner.
 */
export function airHolds(ratio: number): number {
  return ratio <= 0 ? 0 : ratio / Math.pow(1 + Math.pow(ratio, 4), 0.25);
}

/**
 * Pace of charcoal against that in fresh air at the reference speed: power of the air speed (estimate, spread 0-0.8;
 * diffusion has 0.5).
 */
const AIR_POWER = 0.5;
/** That speed: air over the area of the bed [m/s], estimate. */
const REFERENCE_SPEED = 0.1;
/** Mass share of oxygen in air [-]. */
const FRESH = 0.232;

/**
 * How fast charcoal glows away, against fresh air at a speed of 0.1 m/s: oxygen comes to it by diffusion.
 * @param speed of the air through the bed [m/s]
 * @param oxygen mass share in the gas round it [-]
 * @returns [-]
 * @example glowPace(0.1, 0.232) // 1
 * Reference: film diffusion, Sherwood number as the root of the Reynolds number; fitted to nothing.
 */
export function glowPace(speed: number, oxygen: number): number {
  return Math.pow(Math.max(0, speed) / REFERENCE_SPEED, AIR_POWER) * Math.max(0, oxygen / FRESH);
}

/**
 * Charcoal left after a time in which it glows away and more is made, evenly.
 *   dE/dt = made - E pace / glow
 * @param store at the start [J]
 * @param made [W]
 * @param pace against the usual [-]; 0 or more
 * @param glow time in which it falls to 1/e at the usual pace [s]
 * @param time [s]
 * @returns [J]
 * @example charcoalLeft(1e6, 0, 1, 2400, 2400) // 367879 J
 * Reference: first-order decay.
 */
export function charcoalLeft(store: number, made: number, pace: number, glow: number, time: number): number {
  const rate = pace / glow;
  if (rate * time < 1e-9) return store + made * time;
  const kept = Math.exp(-rate * time);
  return store * kept + (made * (1 - kept)) / rate;
}
