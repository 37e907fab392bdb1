import { STEFAN_BOLTZMANN } from '../../physics/constants.js';

/** Surfaces of an enclosure, by index. */
interface Enclosure {
  /** [m2] */
  areas: readonly number[];
  /** 0..1; 1 for an opening to surroundings */
  emissivities: readonly number[];
  /** [K] */
  temperatures: readonly number[];
  /** F[i][j], share of what leaves i that reaches j; every row adds up to 1 */
  viewFactors: readonly (readonly number[])[];
}

/**
 * Net heat that each surface of a grey, diffuse enclosure gives off: radiosities J_i = eps_i Eb_i + (1 - eps_i) sum
 * F_ij J_j, q_i = A_i sum F_ij (J_i - J_j). Solved by elimination.
 * @returns [W] per surface, positive when it loses; they add up to zero when the view factors are reciprocal
 * @throws RangeError when lists differ in length or a row of view factors does not add up to 1 within 0.01
 * Reference: Incropera et al. (2007), 6th ed., section 13.3.
 */
export function enclosureHeat({ areas, emissivities, temperatures, viewFactors }: Enclosure): number[] {
  const n = areas.length;
  if (emissivities.length !== n || temperatures.length !== n || viewFactors.length !== n) {
    throw new RangeError(`enclosureHeat: ${n} areas need as many emissivities, temperatures and rows of view factors`);
  }
  viewFactors.forEach((row, i) => {
    const sum = row.reduce((total, f) => total + f, 0);
    if (row.length !== n || Math.abs(sum - 1) > 0.01) {
      throw new RangeError(`enclosureHeat: view factors of surface ${i + 1} must be ${n} and add up to 1, not ${sum}`);
    }
  });
  const matrix = areas.map((_, i) =>
    areas.map((__, j) => (i === j ? 1 : 0) - (1 - emissivities[i]) * viewFactors[i][j]),
  );
  const J = temperatures.map((T, i) => emissivities[i] * STEFAN_BOLTZMANN * T ** 4);
  eliminate(matrix, J);
  return areas.map((area, i) => area * viewFactors[i].reduce((sum, F, j) => sum + F * (J[i] - J[j]), 0));
}

/** Gauss elimination in place; the matrix is diagonally dominant, so that no pivoting is needed. */
function eliminate(a: number[][], b: number[]): void {
  const n = b.length;
  for (let k = 0; k < n; k++) {
    for (let i = k + 1; i < n; i++) {
      const factor = a[i][k] / a[k][k];
      for (let j = k; j < n; j++) a[i][j] -= factor * a[k][j];
      b[i] -= factor * b[k];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) b[i] -= a[i][j] * b[j];
    b[i] /= a[i][i];
  }
}
