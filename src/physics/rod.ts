/** Temperature along a rod that is hot at one end and loses heat from its surface in any way. */

interface Rod {
  /** along which heat runs, base to tip [m]; an open tip is met by a corrected length, L + D/4 for a pin */
  length: number;
  /** [m2] */
  section: number;
  /** that loses heat [m] */
  perimeter: number;
  /** base temperature [K] */
  base: number;
  /** conductivity at a temperature [W/(m K)] */
  conductivity: (temperature: number) => number;
  /** heat lost per surface at a temperature, rising with it [W/m2] */
  loss: (temperature: number) => number;
}

interface RodProfile {
  /** places from base to tip [m] and temperatures there [K] */
  at: Float64Array;
  temperature: Float64Array;
  /** heat that the base gives [W] */
  heat: number;
  iterations: number;
}

const CELLS = 200;
const SLOPE_STEP = 0.01; // K
const FOUND = 1e-8; // K
const MOST_TURNS = 60;
/** Most that a temperature may move in one turn [K]. */
const STRIDE = 100;

/**
 * Steady conduction along a rod, d/ds(k A dT/ds) = P q(T), T(0) = base, no heat through the tip.
 *
 * Finite differences of second order on even cells, by Newton with a tridiagonal matrix; loss and conductivity may
 * depend on temperature in any smooth way.
 *
 * @param rod its sizes, its hot end, and what conductivity [W/(m K)] and loss [W/m2] are at a temperature [K]
 * @returns temperatures [K] at CELLS + 1 places, and the heat into the rod [W]
 * @example rodProfile({ length: 1, section: 1e-4, perimeter: 0.04, base: 373.15, conductivity: () => 50, loss: (T) => 10 * (T - 293.15) }).heat // 3.58 W
 * @throws RangeError when it does not converge
 * Reference: the equation is Incropera et al. (2007), 6th ed., eq. 3.61; with a constant coefficient the answer is
 * their eq. 3.75.
 */
export function rodProfile({ length, section, perimeter, base, conductivity, loss }: Rod): RodProfile {
  const step = length / CELLS;
  const n = CELLS;
  const temperature = new Float64Array(n + 1).fill(base);
  const [lower, middle, upper, right] = Array.from({ length: 4 }, () => new Float64Array(n + 1));
  for (let turn = 1; turn <= MOST_TURNS; turn++) {
    for (let i = 1; i <= n; i++) {
      const before = (conductivity(0.5 * (temperature[i - 1] + temperature[i])) * section) / step;
      const after = i < n ? (conductivity(0.5 * (temperature[i] + temperature[i + 1])) * section) / step : 0;
      // the last place stands for half a cell
      const surface = perimeter * step * (i < n ? 1 : 0.5);
      const lost = loss(temperature[i]);
      const slope = (loss(temperature[i] + SLOPE_STEP) - lost) / SLOPE_STEP;
      lower[i] = i > 1 ? -before : 0;
      upper[i] = -after;
      middle[i] = before + after + surface * slope;
      const in_ = before * (temperature[i - 1] - temperature[i]);
      const out = i < n ? after * (temperature[i] - temperature[i + 1]) : 0;
      right[i] = in_ - out - surface * lost;
    }
    const move = solveTridiagonal(lower, middle, upper, right, n);
    for (let i = 1; i <= n; i++) temperature[i] += Math.max(-STRIDE, Math.min(STRIDE, right[i]));
    if (move < FOUND) {
      const k = conductivity(0.5 * (temperature[0] + temperature[1]));
      // the first half cell loses heat that never reaches the first face
      const heat = (k * section * (temperature[0] - temperature[1])) / step + 0.5 * perimeter * step * loss(base);
      const at = Float64Array.from({ length: n + 1 }, (_, i) => i * step);
      return { at, temperature, heat, iterations: turn };
    }
  }
  throw new RangeError('the temperature along the rod does not settle');
}

/** Thomas's elimination for rows 1 to n; the answer replaces the right side. @returns its largest entry by size */
function solveTridiagonal(
  lower: Float64Array,
  middle: Float64Array,
  upper: Float64Array,
  right: Float64Array,
  n: number,
): number {
  for (let i = 2; i <= n; i++) {
    const factor = lower[i] / middle[i - 1];
    middle[i] -= factor * upper[i - 1];
    right[i] -= factor * right[i - 1];
  }
  let largest = 0;
  for (let i = n; i >= 1; i--) {
    right[i] = (right[i] - (i < n ? upper[i] * right[i + 1] : 0)) / middle[i];
    largest = Math.max(largest, Math.abs(right[i]));
  }
  return largest;
}

/**
 * Temperature at a place of a rod, straight between the points of its profile.
 * @param profile as `rodProfile` gives it
 * @param place from the base [m]; held at both ends
 * @returns [K]
 * @example rodTemperature({ at: Float64Array.of(0, 1), temperature: Float64Array.of(400, 300), heat: 0, iterations: 1 }, 0.25) // 375 K
 * Reference: linear interpolation.
 */
export function rodTemperature({ at, temperature }: RodProfile, place: number): number {
  const last = at.length - 1;
  const i = Math.min(last - 1, Math.max(0, Math.floor((place / at[last]) * last)));
  const share = Math.min(1, Math.max(0, (place - at[i]) / (at[i + 1] - at[i])));
  return temperature[i] + share * (temperature[i + 1] - temperature[i]);
}
