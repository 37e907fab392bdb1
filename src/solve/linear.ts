import { eliminationOrder, fullFrom, type Order } from './eliminationOrder.js';

/** A pivot this far below what stands under it asks for another order; one of this size is none. */
const WORN = 1e-7;
const LEAST = 1e-297;
/** Entries that are looked at together. */
const LANE = 8;

/**
 * LU factorisation of a matrix that is stored densely but mostly zero.
 *
 * Rows and columns are eliminated in an order that fills in little (Markowitz, with a threshold on the pivots), found once and
 * kept with the places where the factors are not zero. A matrix with entries elsewhere, or whose pivots have grown small in that
 * order, gets another: in an order that was not made for them a few entries fill in ten times as much. What is left at the end
 * is so nearly full that it is factored as a full matrix, two pivots at a time.
 *
 * Reference: Duff, Erisman & Reid, Direct Methods for Sparse Matrices, 2nd ed. (2017), sections 7.2 and 9.2 (from memory).
 */
export class LuSolver {
  /** row by row; a few more places than it needs, which stay zero */
  readonly matrix: Float64Array;
  private readonly work: Float64Array;
  private readonly rhs: Float64Array;
  private order: Order | null = null;
  /** entries of the matrix that have ever not been zero */
  private readonly seen: Uint8Array;
  /** of row k in that order: its entries in the matrix and their columns, from entryStarts[k] on */
  private readonly entryStarts: Int32Array;
  private entries = new Int32Array(0);
  private entryColumns = new Int32Array(0);
  /**
   * Of row k: columns left of its pivot and right of it, rising, from starts[k] on; the factors there, and one over the pivots.
   * What lies below and right of `full` stands in `block`, row by row, and not in these.
   */
  private readonly leftStarts: Int32Array;
  private left = new Int32Array(0);
  private lower = new Float64Array(0);
  private readonly rightStarts: Int32Array;
  private right = new Int32Array(0);
  private upper = new Float64Array(0);
  private readonly inverses: Float64Array;
  private full = 0;
  private block = new Float64Array(0);
  /** how often it has factored a matrix: whoever comes back to its factors can tell whether they are still his */
  factored = 0;

  /** @param size number of unknowns */
  constructor(readonly size: number) {
    this.matrix = new Float64Array(LANE * Math.ceil((size * size) / LANE));
    this.work = new Float64Array(size);
    this.rhs = new Float64Array(size);
    this.seen = new Uint8Array(size * size);
    this.entryStarts = new Int32Array(size + 1);
    this.leftStarts = new Int32Array(size + 1);
    this.rightStarts = new Int32Array(size + 1);
    this.inverses = new Float64Array(size);
  }

  /**
   * Factor `matrix`, which is kept.
   *
   * @param known entries stand only where some have stood before: spares looking for others, a tenth of the work
   * @returns false when it is singular to working precision
   */
  factor(known = false): boolean {
    this.factored++;
    if (known && this.order && this.eliminate(this.order)) return true;
    const strays = this.look();
    if (strays === null) return false;
    if (!known && this.order && !strays && this.eliminate(this.order)) return true;
    // taken over only once it is whole: the factors that are there stay good
    const order = eliminationOrder(this.matrix, this.seen, this.size);
    if (!order) return false;
    this.order = order;
    this.compile(order);
    return this.eliminate(order);
  }

  /** Note where `matrix` has entries that later ones may have too: then one order does for all of them. */
  foresee(): void {
    this.look();
  }

  /** Note where the matrix has entries. @returns are there any where none have been before? null: not all are numbers */
  private look(): boolean | null {
    const { matrix, seen } = this;
    let sum = 0;
    let strays = false;
    for (let i = 0; i < matrix.length; i += LANE) {
      // mostly zero, and many: written out, it takes a third of the time
      const four = Math.abs(matrix[i]) + Math.abs(matrix[i + 1]) + Math.abs(matrix[i + 2]) + Math.abs(matrix[i + 3]);
      const more =
        Math.abs(matrix[i + 4]) + Math.abs(matrix[i + 5]) + Math.abs(matrix[i + 6]) + Math.abs(matrix[i + 7]);
      if (four + more === 0) continue;
      sum += four + more;
      for (let j = i; j < i + LANE; j++) {
        if (matrix[j] === 0 || seen[j] === 1) continue;
        seen[j] = 1;
        strays = true;
      }
    }
    return sum < Infinity ? strays : null;
  }

  /** Lists of the places of the factors, in the order of elimination. */
  private compile({ rows, columns, filled }: Order): void {
    const { size: n, seen } = this;
    const full = fullFrom(filled, n);
    const entries: number[] = [];
    const entryColumns: number[] = [];
    const left: number[] = [];
    const right: number[] = [];
    for (let k = 0; k < n; k++) {
      this.entryStarts[k] = entries.length;
      this.leftStarts[k] = left.length;
      this.rightStarts[k] = right.length;
      for (let q = 0; q < n; q++) {
        const at = rows[k] * n + columns[q];
        if (seen[at] === 1) {
          entries.push(at);
          entryColumns.push(q);
        }
        if (filled[k * n + q] === 0 || q === k || (k >= full && q >= full)) continue;
        (q < k ? left : right).push(q);
      }
    }
    this.entryStarts[n] = entries.length;
    this.leftStarts[n] = left.length;
    this.rightStarts[n] = right.length;
    this.entries = Int32Array.from(entries);
    this.entryColumns = Int32Array.from(entryColumns);
    this.left = Int32Array.from(left);
    this.right = Int32Array.from(right);
    this.lower = new Float64Array(left.length);
    this.upper = new Float64Array(right.length);
    this.full = full;
    this.block = new Float64Array((n - full) * (n - full));
  }

  /** Row by row, each in a dense row of work space. @returns false: a pivot is too small in this order */
  private eliminate({ rows, scales }: Order): boolean {
    const { matrix, work, size: n, entries, entryColumns, entryStarts } = this;
    const { left, leftStarts, lower, right, rightStarts, upper, inverses, full, block } = this;
    work.fill(0);
    for (let k = 0; k < n; k++) {
      const scale = scales[rows[k]];
      for (let e = entryStarts[k]; e < entryStarts[k + 1]; e++) work[entryColumns[e]] = matrix[entries[e]] * scale;
      const leftEnd = leftStarts[k + 1];
      for (let e = leftStarts[k]; e < leftEnd; e++) {
        const above = left[e];
        const factor = work[above] * inverses[above];
        work[above] = 0;
        lower[e] = factor;
        if (factor === 0) continue;
        if (!(factor < 1 / WORN && factor > -1 / WORN)) return false;
        const end = rightStarts[above + 1];
        for (let c = rightStarts[above]; c < end; c++) work[right[c]] -= factor * upper[c];
      }
      if (k < full) {
        if (!(Math.abs(work[k]) > LEAST)) return false;
        inverses[k] = 1 / work[k];
        work[k] = 0;
        for (let e = rightStarts[k]; e < rightStarts[k + 1]; e++) {
          upper[e] = work[right[e]];
          work[right[e]] = 0;
        }
      } else {
        const row = (k - full) * (n - full) - full;
        for (let q = full; q < n; q++) {
          block[row + q] = work[q];
          work[q] = 0;
        }
      }
    }
    return this.eliminateBlock();
  }

  /** Factor `block` in place, two pivots at a time; their factors and rows stay where they are. */
  private eliminateBlock(): boolean {
    const { block, inverses, full } = this;
    const m = this.size - full;
    for (let p = 0; p < m; p += 2) {
      const first = p * m;
      const second = first + m;
      if (!(Math.abs(block[first + p]) > LEAST)) return false;
      const inverse = 1 / block[first + p];
      inverses[full + p] = inverse;
      if (p + 1 === m) break;
      const between = block[second + p] * inverse;
      if (!(between < 1 / WORN && between > -1 / WORN)) return false;
      block[second + p] = between;
      for (let q = p + 1; q < m; q++) block[second + q] -= between * block[first + q];
      const corner = block[first + p + 1];
      if (!(Math.abs(block[second + p + 1]) > LEAST)) return false;
      const next = 1 / block[second + p + 1];
      inverses[full + p + 1] = next;
      for (let row = second + m; row < block.length; row += m) {
        const one = block[row + p] * inverse;
        const two = (block[row + p + 1] - one * corner) * next;
        if (!(one < 1 / WORN && one > -1 / WORN && two < 1 / WORN && two > -1 / WORN)) return false;
        block[row + p] = one;
        block[row + p + 1] = two;
        for (let q = p + 2; q < m; q++) block[row + q] -= one * block[first + q] + two * block[second + q];
      }
    }
    return true;
  }

  /** Solve with the last factorisation; the right-hand side is replaced by the solution. */
  solve(b: Float64Array): void {
    const { rhs: y, size: n, left, leftStarts, lower, right, rightStarts, upper, inverses, full, block } = this;
    const { rows, columns, scales } = this.order!;
    const m = n - full;
    for (let k = 0; k < n; k++) {
      let sum = b[rows[k]] * scales[rows[k]];
      for (let e = leftStarts[k]; e < leftStarts[k + 1]; e++) sum -= lower[e] * y[left[e]];
      const row = (k - full) * m - full;
      for (let q = full; q < k; q++) sum -= block[row + q] * y[q];
      y[k] = sum;
    }
    for (let k = n - 1; k >= 0; k--) {
      let sum = y[k];
      for (let e = rightStarts[k]; e < rightStarts[k + 1]; e++) sum -= upper[e] * y[right[e]];
      const row = (k - full) * m - full;
      if (k >= full) for (let q = k + 1; q < n; q++) sum -= block[row + q] * y[q];
      y[k] = sum * inverses[k];
    }
    for (let k = 0; k < n; k++) b[columns[k]] = y[k];
  }
}
