/**
 * When a flat panel that is hotter in the middle than at its edges buckles (oil-cans). Poisson's ratio 0.3, of steel.
 *
 * A critical temperature difference is told as the thermal strain of middle over edge, alpha dT, in which the modulus
 * drops out.
 */

/** Of steel, hot or cold [-]. EN 1993-1-1:2005, 3.2.6. */
export const POISSON = 0.3;

/** A rectangle by its sides, or a disc by its diameter [m]. */
export type PanelSize = { a: number; b: number } | { diameter: number };

/** How its edges are kept from tilting: not at all, or wholly. */
export type PanelEdges = 'supported' | 'clamped';

/** Radial compression N at which a disc buckles, N R2/D. Timoshenko & Gere (1961), art. 9.1 (from memory). */
const DISC_HELD = { supported: 4.2, clamped: 14.68 } as const;

/**
 * Thermal strain at which a panel buckles whose edges can't move outwards at all: one in a cold frame that does not
 * give.
 *
 * Restrained expansion gives N = E h alpha dT/(1 - nu) all round. A supported rectangle buckles at N = pi2 D (1/a2 +
 * 1/b2), exact; a clamped one at N = (4/3) pi2 D (3/a4 + 3/b4 + 2/(a2 b2))/(1/a2 + 1/b2), one term of an energy method,
 * 0.6 % high for a square and 5 to 9 % high from 2:1 on; a disc at 4.20 and 14.68 D/R2.
 *
 * @param size sides or diameter [m]
 * @param thickness [m]; thin against the sides
 * @returns alpha dT [-]
 * @example 1e6 * heldPanelStrain({ a: 0.6, b: 0.6 }, 0.006, 'supported') // 126.5 parts a million
 * Reference: Timoshenko & Gere (1961), Theory of Elastic Stability, art. 9.1, 9.2 and 9.3 (from memory).
 */
export function heldPanelStrain(size: PanelSize, thickness: number, edges: PanelEdges): number {
  const perD = 12 * (1 + POISSON);
  if ('diameter' in size) return (DISC_HELD[edges] * (2 * thickness) ** 2) / (perD * size.diameter ** 2);
  const [p, q] = [1 / size.a ** 2, 1 / size.b ** 2];
  const supported = p + q;
  const compression = edges === 'supported' ? supported : ((4 / 3) * (3 * p * p + 3 * q * q + 2 * p * q)) / supported;
  return (Math.PI ** 2 * compression * thickness ** 2) / perD;
}

/**
 * Least of alpha dT (r/h)2 for a panel whose edges are free to grow, r half its shorter side, by long over short side.
 */
const FREE: readonly (readonly [ratio: number, supported: number, clamped: number])[] = [
  [1, 4.277, 7.116],
  [1.25, 3.749, 6.361],
  [1.5, 3.8, 6.606],
  [2, 4.43, 7.046],
  [3, 4.799, 6.898],
  [4, 4.754, 6.898],
];

/**
 * The same of a disc, r its radius: 9.829 and 21.38 over 3 (1 - nu2), from the axisymmetric equation of the buckled
 * disc.
 */
const DISC_FREE = { supported: 3.6, clamped: 7.832 } as const;

/**
 * Thermal strain at which a panel buckles whose edges are free to grow with it, so that only its own cooler rim holds
 * its middle back: ends in a shell, walls of a box, doors. The temperature falls from the middle to the edge as a
 * parabola, of a rectangle one along each side. An end's shell holds it by less than a twentieth of what a rigid frame
 * would.
 *
 * Stress of the panel by its rim, then buckling under that stress, both by Ritz's method: polynomials, 49 terms for the
 * stress and 64 for the deflection, where more of them move the answer by less than 0.3 %. A disc is solved exactly.
 * Between the ratios of the table linear; longer than 4:1 as 4:1.
 *
 * @param size sides or diameter [m]
 * @param thickness [m]
 * @returns alpha dT of middle over edge [-]
 * @example 1e6 * freePanelStrain({ diameter: 0.6 }, 0.006, 'clamped') // 3133 parts a million
 * Reference: energy method of Timoshenko & Gere (1961), Theory of Elastic Stability, art. 9.1; Timoshenko & Goodier
 * (1970), Theory of Elasticity, ch. 13 (thermal stress of a disc).
 */
export function freePanelStrain(size: PanelSize, thickness: number, edges: PanelEdges): number {
  if ('diameter' in size) return DISC_FREE[edges] * ((2 * thickness) / size.diameter) ** 2;
  const [short, long] = [Math.min(size.a, size.b), Math.max(size.a, size.b)];
  const ratio = Math.min(long / short, FREE[FREE.length - 1][0]);
  const above = Math.max(
    1,
    FREE.findIndex(([each]) => each >= ratio),
  );
  const [low, high] = [FREE[above - 1], FREE[above]];
  const column = edges === 'supported' ? 1 : 2;
  const part = (ratio - low[0]) / (high[0] - low[0]);
  return (low[column] + part * (high[column] - low[column])) * ((2 * thickness) / short) ** 2;
}
