/**
 * LU factorisation of a matrix that is stored densely but mostly zero.
 *
 * Rows 0 .. pivotFrom-1 belong to unknowns whose diagonal dominates (heat balances of plates) and are eliminated in
 * order, without pivoting: ordered leaves first they fill in little, and zero multipliers are skipped. The rest is
 * pivoted by rows. Work is about that of a sparse solver without its bookkeeping.
 */
export class LuSolver {
  readonly matrix: Float64Array;
  private readonly swap: Int32Array;
  private readonly columns: Int32Array;

  /**
   * @param size number of unknowns
   * @param pivotFrom first row that may be exchanged with a later one
   */
  constructor(
    readonly size: number,
    private readonly pivotFrom: number,
  ) {
    this.matrix = new Float64Array(size * size);
    this.swap = new Int32Array(size);
    this.columns = new Int32Array(size);
  }

  /** Factor `matrix` in place. @returns false when it is singular to working precision */
  factor(): boolean {
    const { matrix: a, size: n, swap, columns } = this;
    for (let k = 0; k < n; k++) {
      let pivotRow = k;
      if (k >= this.pivotFrom) {
        let largest = Math.abs(a[k * n + k]);
        for (let i = k + 1; i < n; i++) {
          const candidate = Math.abs(a[i * n + k]);
          if (candidate > largest) {
            largest = candidate;
            pivotRow = i;
          }
        }
        if (pivotRow !== k) {
          for (let j = 0, p = k * n, q = pivotRow * n; j < n; j++, p++, q++) {
            const t = a[p];
            a[p] = a[q];
            a[q] = t;
          }
        }
      }
      swap[k] = pivotRow;
      const rowK = k * n;
      const pivot = a[rowK + k];
      if (!(Math.abs(pivot) > 1e-300)) return false;
      let count = 0;
      for (let j = k + 1; j < n; j++) if (a[rowK + j] !== 0) columns[count++] = j;
      for (let i = k + 1; i < n; i++) {
        const rowI = i * n;
        const below = a[rowI + k];
        if (below === 0) continue;
        const factor = below / pivot;
        a[rowI + k] = factor;
        for (let c = 0; c < count; c++) {
          const j = columns[c];
          a[rowI + j] -= factor * a[rowK + j];
        }
      }
    }
    return true;
  }

  /** Solve with the last factorisation; the right-hand side is replaced by the solution. */
  solve(b: Float64Array): void {
    const { matrix: a, size: n, swap } = this;
    for (let k = 0; k < n; k++) {
      const other = swap[k];
      if (other !== k) {
        const t = b[k];
        b[k] = b[other];
        b[other] = t;
      }
    }
    for (let i = 1; i < n; i++) {
      const row = i * n;
      let sum = b[i];
      for (let j = 0; j < i; j++) sum -= a[row + j] * b[j];
      b[i] = sum;
    }
    for (let i = n - 1; i >= 0; i--) {
      const row = i * n;
      let sum = b[i];
      for (let j = i + 1; j < n; j++) sum -= a[row + j] * b[j];
      b[i] = sum / a[row + i];
    }
  }
}
