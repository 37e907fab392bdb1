import { GRAVITY } from './constants.js';

/**
 * Below this the square-root law is rounded off [Pa], so that its slope stays finite; at 0.01 Pa the flow is 1 % low.
 */
export const SMOOTHING_PRESSURE = 2e-3;

/**
 * Pressure of the unsteady air that trades places through any opening [Pa]: gives both directions a trickle, so that
 * where gas comes from does not switch at zero flow. At 0.1 Pa the trickle is a 4000th of the flow.
 */
const TRICKLE_PRESSURE = 1e-4;

/** What an opening carries and how that changes with the pressure difference at its two edges. */
export interface OpeningFlow {
  /** a -> b [kg/s], never negative */
  forward: number;
  /** b -> a [kg/s], never negative */
  backward: number;
  /** derivatives [kg/(s Pa)] with respect to the pressure difference at the lower and at the upper edge */
  forwardLow: number;
  forwardHigh: number;
  backwardLow: number;
  backwardHigh: number;
}

/**
 * Flow of an opening to be filled by `openingFlow`.
 * @returns no flow [kg/s], no slopes [kg/(s Pa)]
 * @example emptyOpeningFlow().forward // 0 kg/s
 * Reference: none needed.
 */
export function emptyOpeningFlow(): OpeningFlow {
  return { forward: 0, backward: 0, forwardLow: 0, forwardHigh: 0, backwardLow: 0, backwardHigh: 0 };
}

const D2 = SMOOTHING_PRESSURE * SMOOTHING_PRESSURE;
const D15 = Math.pow(SMOOTHING_PRESSURE, 1.5);

/** Smoothed square root: x / (x^2 + d^2)^(1/4) for x > 0, else 0. */
function root(x: number): number {
  return x > 0 ? x / Math.sqrt(Math.sqrt(x * x + D2)) : 0;
}

/** Its slope. */
function rootSlope(x: number): number {
  if (x < 0) return 0;
  const s = x * x + D2;
  const q = Math.sqrt(Math.sqrt(s));
  return (1 - (0.5 * x * x) / s) / q;
}

/** Its antiderivative: 2/3 [(x^2 + d^2)^(3/4) - d^(3/2)] for x > 0, else 0. */
function rootIntegral(x: number): number {
  if (x <= 0) return 0;
  const q = Math.sqrt(Math.sqrt(x * x + D2));
  return (2 / 3) * (q * q * q - D15);
}

/**
 * Mass flow both ways through an opening between two bodies of gas of uniform density.
 *
 * m = Cd A sqrt(2 rho dp), rho of the side it comes from; over a tall opening the pressure difference varies linearly
 * with height, and each direction is the integral over the part of the height where it runs (neutral plane included).
 *
 * @param out receives the flows and slopes; a hot loop brings its own
 * @param area [m2]
 * @param discharge discharge coefficient [-]
 * @param densityA density on side a [kg/m3]
 * @param densityB density on side b [kg/m3]
 * @param low pressure of a less that of b at the lower edge [Pa]
 * @param high the same at the upper edge; equal to `low` for a short opening
 * @returns out [kg/s]
 * @example openingFlow(emptyOpeningFlow(), 1, 0.65, 1.2, 1.2, 1, 1).forward // 1.007 kg/s
 * Validity: sharp-edged openings at high Reynolds number; rounded off below 0.01 Pa.
 * Reference: the orifice equation; its integral over a doorway as in Emmons (2002), SFPE Handbook of Fire Protection
 * Engineering, 3rd ed., section 2-3 (edition and section from memory).
 */
export function openingFlow(
  out: OpeningFlow,
  area: number,
  discharge: number,
  densityA: number,
  densityB: number,
  low: number,
  high: number,
): OpeningFlow {
  const a = discharge * area * Math.sqrt(2 * densityA);
  const b = discharge * area * Math.sqrt(2 * densityB);
  const middle = 0.5 * (low + high);
  if (Math.abs(high - low) <= 1e-3 * (Math.abs(middle) + SMOOTHING_PRESSURE)) alikeOverHeight(out, a, b, middle);
  else changingOverHeight(out, a, b, low, high);
  return addTrickle(out, discharge * area, 0.5 * (densityA + densityB));
}

/** Both flows where one pressure difference does for the whole height; `a` and `b`: flow per root of it, each way. */
function alikeOverHeight(out: OpeningFlow, a: number, b: number, middle: number): void {
  out.forward = a * root(middle);
  out.backward = b * root(-middle);
  const up = 0.5 * a * rootSlope(middle);
  const down = middle < 0 ? -0.5 * b * rootSlope(-middle) : 0;
  out.forwardLow = up;
  out.forwardHigh = up;
  out.backwardLow = down;
  out.backwardHigh = down;
}

function changingOverHeight(out: OpeningFlow, a: number, b: number, low: number, high: number): void {
  const span = high - low;
  const meanUp = (rootIntegral(high) - rootIntegral(low)) / span;
  const meanDown = (rootIntegral(-low) - rootIntegral(-high)) / span;
  out.forward = a * meanUp;
  out.backward = b * meanDown;
  out.forwardHigh = (a * (root(high) - meanUp)) / span;
  out.forwardLow = (a * (meanUp - root(low))) / span;
  out.backwardHigh = (b * (root(-high) - meanDown)) / span;
  out.backwardLow = (b * (meanDown - root(-low))) / span;
}

/**
 * Round off the traffic T = forward + backward as sqrt(T^2 + t^2), t = A sqrt(2 rho 0.0001 Pa), the net flow kept.
 * @param out flows to be rounded off
 * @param area free or effective area [m2]
 * @param density mean of both sides [kg/m3]
 * @returns out [kg/s]
 * @example addTrickle(emptyOpeningFlow(), 1, 1.2).forward // 0.00775 kg/s
 * Reference: ours, a rounding for the solver.
 */
export function addTrickle(out: OpeningFlow, area: number, density: number): OpeningFlow {
  const square = area * area * 2 * density * TRICKLE_PRESSURE;
  const traffic = out.forward + out.backward;
  const rounded = Math.sqrt(traffic * traffic + square);
  const extra = 0.5 * (rounded - traffic);
  const share = 0.5 * (traffic / rounded - 1);
  const low = share * (out.forwardLow + out.backwardLow);
  const high = share * (out.forwardHigh + out.backwardHigh);
  out.forward += extra;
  out.backward += extra;
  out.forwardLow += low;
  out.backwardLow += low;
  out.forwardHigh += high;
  out.backwardHigh += high;
  return out;
}

/**
 * Below this the flow between two cells of a part follows the pressure in proportion [Pa]: a hundredth of a throat's.
 */
const INNER_PRESSURE = 0.01;

/**
 * Mass flow through a slice of the full section between two cells of one part, one way:
 * m = Cd A sqrt(2 rho) dp / (dp^2 + d^2)^(1/4), rho the mean of both sides, d 0.01 Pa.
 * @param out receives the flow and its slopes
 * @param area [m2]
 * @param discharge discharge coefficient [-]
 * @param density mean of both sides [kg/m3]
 * @param dp pressure difference at the slice's middle [Pa]
 * @returns out [kg/s]
 * @example innerFlow(emptyOpeningFlow(), 1, 0.62, 1, 1).forward // 0.877 kg/s
 * Reference: the orifice equation, made straight below d. The loss itself is an estimate, spread over all sections of a
 * part.
 */
export function innerFlow(out: OpeningFlow, area: number, discharge: number, density: number, dp: number): OpeningFlow {
  const a = discharge * area * Math.sqrt(2 * density);
  const s = dp * dp + INNER_PRESSURE * INNER_PRESSURE;
  const q = Math.sqrt(Math.sqrt(s));
  const flow = (a * dp) / q;
  const slope = (0.5 * a * (1 - (0.5 * dp * dp) / s)) / q;
  out.forward = flow > 0 ? flow : 0;
  out.backward = flow > 0 ? 0 : -flow;
  out.forwardLow = out.forwardHigh = flow > 0 ? slope : 0;
  out.backwardLow = out.backwardHigh = flow > 0 ? 0 : -slope;
  return out;
}

/** Gas that stands under denser gas trades places with it as over a temperature difference of at least so much [1]. */
const OVERTURN_ROUNDING = 5e-3;

/**
 * Gas that two layers of one part trade when the upper is the denser: 0.1 rho sqrt(g (drho/rho) A^(5/2)), made straight
 * for small differences.
 * @param above density of the upper layer [kg/m3]
 * @param below density of the lower layer [kg/m3]
 * @param area of the level section between them [m2]
 * @returns [kg/s] each way; 0 with the lighter gas on top
 * @example overturn(1.15, 0.85, 0.04) // 0.00307 kg/s
 * Reference: at rest Cooper (1989), NISTIR 89-4052, as in NIST TN 1889v1, taken for a full section.
 */
export function overturn(above: number, below: number, area: number): number {
  const mean = 0.5 * (above + below);
  const relative = (above - below) / mean;
  if (relative <= 0) return 0;
  const drive = (relative * relative) / Math.pow(relative * relative + OVERTURN_ROUNDING * OVERTURN_ROUNDING, 0.75);
  return 0.1 * mean * Math.sqrt(GRAVITY * Math.pow(area, 2.5)) * drive;
}
