/** How much cooler a panel's edge is than its middle. */

/** Two plates that meet in a corner: what each would be far from it [K], and how thick it is [m]. */
interface Corner {
  panel: { temperature: number; thickness: number };
  neighbour: { temperature: number; thickness: number };
}

/**
 * Middle of a panel over its edge, where the edge runs along a plate of another temperature.
 *
 * Each plate is a fin that the gas on its two faces pulls towards a temperature of its own: k t T'' = h (T - own). Long
 * plates of one conductivity and coefficient meet at (own1 sqrt(t1) + own2 sqrt(t2))/(sqrt(t1) + sqrt(t2)); towards the
 * middle of the panel the difference dies away as cosh(m x), m = sqrt(h/(k t)).
 *
 * @param corner temperatures [K] and thicknesses [m]
 * @param across the panel's shorter side [m]
 * @param coefficient of both faces together [W/(m2 K)]
 * @param conductivity [W/(m K)]
 * @returns [K]; negative where the edge is the hotter
 * @example middleOverEdge({ panel: { temperature: 600, thickness: 0.006 }, neighbour: { temperature: 500, thickness: 0.006 } }, 0.6, 60, 42) // 49.0 K
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.66 and 3.80, fins of uniform section.
 */
export function middleOverEdge(
  { panel, neighbour }: Corner,
  across: number,
  coefficient: number,
  conductivity: number,
): number {
  const [own, other] = [Math.sqrt(panel.thickness), Math.sqrt(neighbour.thickness)];
  const corner = (own * panel.temperature + other * neighbour.temperature) / (own + other);
  const m = Math.sqrt(coefficient / (conductivity * panel.thickness));
  return (panel.temperature - corner) * (1 - 1 / Math.cosh(0.5 * m * across));
}

/** A leaf over its frame: a rim that laps over, with no gas inside it. */
interface Rim {
  /** of the leaf [K], and outdoors [K] */
  leaf: number;
  outdoors: number;
  /** [m] */
  thickness: number;
  lap: number;
  /** of the inside face and of the outside face [W/(m2 K)] */
  inside: number;
  outside: number;
  /** [W/(m K)] */
  conductivity: number;
}

/**
 * A door's leaf over the outer edge of its rim. The rim is a fin with a dry tip that only loses heat; the leaf is one
 * that gas pulls towards its own temperature. What the frame under the lap gives the rim is left out, so that it is the
 * most it can be.
 *
 * @param rim temperatures [K], sizes [m], coefficients [W/(m2 K)]
 * @returns [K]
 * @example leafOverRim({ leaf: 400, outdoors: 294, thickness: 0.006, lap: 0.0127, inside: 15, outside: 15, conductivity: 47 }) // 6.92 K
 * Reference: Incropera et al. (2007), 6th ed., eq. 3.75, 3.76 and 3.80, fins of uniform section.
 */
export function leafOverRim({ leaf, outdoors, thickness, lap, inside, outside, conductivity }: Rim): number {
  const m = Math.sqrt(outside / (conductivity * thickness));
  const [rim, own] = [Math.sqrt(outside) * Math.tanh(m * lap), Math.sqrt(inside + outside)];
  const joint = (own * leaf + rim * outdoors) / (own + rim);
  return leaf - (outdoors + (joint - outdoors) / Math.cosh(m * lap));
}
