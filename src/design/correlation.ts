/**
 * Lower triangular factor L of a correlation, L Lᵀ = C (Cholesky).
 *
 * Written out here, since the reader of a design needs it, which every command and the page start with: a library of
 * matrices would weigh more than all the rest of the reader.
 *
 * @param matrix symmetric; only its lower half is read
 * @returns null when it is not positive definite, by more than rounding
 */
export function choleskyFactor(matrix: readonly (readonly number[])[]): number[][] | null {
  const factor = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i][j];
      for (let k = 0; k < j; k++) rest -= factor[i][k] * factor[j][k];
      if (i === j && !(rest > SINGULAR * matrix[i][i])) return null;
      factor[i][j] = i === j ? Math.sqrt(rest) : rest / factor[j][j];
    }
  }
  return factor;
}

/** Below this share of its variance, what is left of a value beside the others is rounding. */
const SINGULAR = 1e-9;
