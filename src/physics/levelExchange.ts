/**
 * Gas that trades places through a level opening, a turn under a reverse plate or a cut through a roof, by its weight
 * alone.
 */
import { GRAVITY } from './constants.js';

/** Density differences below this share are rounded off, so that the slope stays finite (0.5 K of 400 K). */
const ROUNDING = 1.2e-3;
/** Share of the free-fall scale that trades places at rest. */
const AT_REST = 0.1;
/** Flooding flow over A sqrt(2 g D drho/rho): from there on the net flow fills the opening. */
const FLOODING = 0.23;

/**
 * Mass flow each way that a level opening exchanges by itself when the gas above it is the denser: 0.1 sqrt(g
 * (drho/rho) A^(5/2)) rho, fading to nothing as a net flow fills the opening (flooding), by (1 - (V/Vf)^2)^2 with Vf =
 * 0.23 A sqrt(2 g D drho/rho). rho is the mean of both densities, D the diameter of a round opening of that area.
 * @param area [m2]; openings wider than deep
 * @param below, above densities on its two sides [kg/m3]
 * @param net mass flow through it besides, either way [kg/s]
 * @returns [kg/s] each way; 0 with the lighter gas on top
 * @example levelExchange(0.04, 0.85, 1.15, 0) // 0.00307 kg/s
 * Reference: at rest Cooper (1989), NISTIR 89-4052, as in the CFAST Technical Reference Guide, NIST TN 1889v1. The
 * flooding flow is from memory: Heskestad & Spaulding (1991); Cooper (1995), Fire Safety J. 27. Cooper's (1989) own
 * flow fades with the pressure difference instead, to nothing at 0.942^2 g drho D^5/(2 A^2) (square), with 0.754 for a
 * round opening: that is four to six times the pressure at which ours is flooded. The way it fades is our own smooth
 * join.
 */
export function levelExchange(area: number, below: number, above: number, net: number): number {
  const excess = above - below;
  if (excess <= 0 || area <= 0) return 0;
  const mean = 0.5 * (below + above);
  const relative = excess / mean;
  const diameter = Math.sqrt((4 * area) / Math.PI);
  const drive = relative / Math.sqrt(Math.sqrt(relative * relative + ROUNDING * ROUNDING));
  const flooding = FLOODING * area * Math.sqrt(2 * GRAVITY * diameter) * drive;
  const filled = net / mean / flooding;
  if (filled >= 1 || filled <= -1) return 0;
  const open = 1 - filled * filled;
  return AT_REST * Math.sqrt(GRAVITY * Math.pow(area, 2.5)) * drive * open * open * mean;
}
