import { eliminationOrder, fullFrom, type Order } from './eliminationOrder.js';

/** A pivot this far below what stands under it asks for another order; one of this size is none. */
const WORN = 1e-7;
const LEAST = 1e-297;
/** Entries that are looked at together. */
const LANE = 8;
/** Pivots of the full block that are eliminated together. */
const PANEL = 4;

/**
 * LU factorisation of a matrix that is stored densely but mostly zero.
 *
 * Rows and columns are eliminated in an order that fills in little (Markowitz, with a threshold on the pivots), found
 * once and kept with the places where the factors are not zero. A matrix with entries elsewhere, or whose pivots have
 * grown small in that order, gets another: in an order that was not made for them a few entries fill in ten times as
 * much. What is left at the end is so nearly full that it is factored as a full matrix, four pivots at a time.
 *
 * Reference: Duff, Erisman & Reid, Direct Methods for Sparse Matrices, 2nd ed. (2017), sections 7.2 and 9.2 (from
 * memory).
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
   * Of row k: columns left of its pivot and right of it, rising, from starts[k] on; the factors there, and one over the
   * pivots. What lies below and right of `full` stands in `block`, row by row, and not in these.
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
  /** has it been shown where entries may stand? */
  foreseen = false;
  /** were there entries, when last looked for, where none had stood before? */
  private strays = false;

  /**
   * @param size number of unknowns
   * @param last index of one that is eliminated last, for its own entry comes and goes (default: none is)
   */
  constructor(
    readonly size: number,
    private readonly last = -1,
  ) {
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
   * Make ready for another matrix: all of `matrix` is zero.
   *
   * @param known entries stand only where some have stood before: as for `factor`
   */
  clear(known = false): void {
    const { matrix, entries } = this;
    if (known && this.order) for (let e = 0; e < entries.length; e++) matrix[entries[e]] = 0;
    else matrix.fill(0);
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
    if (!(this.look() < Infinity)) return false;
    if (!known && this.order && !this.strays && this.eliminate(this.order)) return true;
    // taken over only once it is whole: the factors that are there stay good
    const order = eliminationOrder(this.matrix, this.seen, this.size, this.last);
    if (!order) return false;
    this.order = order;
    this.compile(order);
    return this.eliminate(order);
  }

  /** Note where `matrix` has entries that later ones may have too: then one order does for all of them. */
  foresee(): void {
    this.look();
    this.foreseen = true;
  }

  /**
   * Note where the matrix has entries, and in `strays` whether any stand where none have before. @returns the sum of
   * their sizes: not finite where not all are numbers. Whoever calls compares it: after a loop that the engine enters
   * half way nothing may be compared for the first time, or it leaves the loop's fast code for good each time.
   */
  private look(): number {
    const { matrix, seen } = this;
    let sum = 0;
    this.strays = false;
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
        this.strays = true;
      }
    }
    return sum;
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

  /**
   * Factor `block` in place, four pivots at a time: what stands below is fetched and laid down again once for all of
   * them. Factors and rows stay where they are.
   */
  private eliminateBlock(): boolean {
    const m = this.size - this.full;
    for (let p = 0; p < m; p += PANEL) {
      const end = Math.min(p + PANEL, m);
      for (let k = p; k < end; k++) {
        for (let above = p; above < k; above++) if (!this.take(k, above)) return false;
        if (!this.invert(k)) return false;
      }
      if (end < m && !this.takeFour(p)) return false;
    }
    return true;
  }

  private invert(k: number): boolean {
    const { block, inverses, full } = this;
    const pivot = block[k * (this.size - full) + k];
    inverses[full + k] = 1 / pivot;
    return Math.abs(pivot) > LEAST;
  }

  /** Take from a row of `block` what stands in it of one above, right of that one's pivot. */
  private take(k: number, above: number): boolean {
    const { block, inverses, full } = this;
    const m = this.size - full;
    const row = k * m;
    const upper = above * m;
    const factor = block[row + above] * inverses[full + above];
    block[row + above] = factor;
    for (let q = above + 1; q < m; q++) block[row + q] -= factor * block[upper + q];
    return factor < 1 / WORN && factor > -1 / WORN;
  }

  /** The same of four rows from p on, from all rows below. */
  private takeFour(p: number): boolean {
    const { block, inverses, full } = this;
    const m = this.size - full;
    const [r0, r1, r2, r3] = [p * m, (p + 1) * m, (p + 2) * m, (p + 3) * m];
    const [i0, i1, i2, i3] = [full + p, full + p + 1, full + p + 2, full + p + 3].map((k) => inverses[k]);
    const [u01, u02, u03] = [block[r0 + p + 1], block[r0 + p + 2], block[r0 + p + 3]];
    const [u12, u13, u23] = [block[r1 + p + 2], block[r1 + p + 3], block[r2 + p + 3]];
    let most = 0;
    for (let row = r3 + m; row < block.length; row += m) {
      const f0 = block[row + p] * i0;
      const f1 = (block[row + p + 1] - f0 * u01) * i1;
      const f2 = (block[row + p + 2] - f0 * u02 - f1 * u12) * i2;
      const f3 = (block[row + p + 3] - f0 * u03 - f1 * u13 - f2 * u23) * i3;
      block[row + p] = f0;
      block[row + p + 1] = f1;
      block[row + p + 2] = f2;
      block[row + p + 3] = f3;
      most = Math.max(most, Math.abs(f0), Math.abs(f1), Math.abs(f2), Math.abs(f3));
      for (let q = p + PANEL; q < m; q++)
        block[row + q] -= f0 * block[r0 + q] + f1 * block[r1 + q] + (f2 * block[r2 + q] + f3 * block[r3 + q]);
    }
    return most < 1 / WORN;
  }

  /** Solve with the last factorisation; the right-hand side is replaced by the solution. */
  solve(b: Float64Array): void {
    const { rhs: y, size: n, left, leftStarts, lower, right, rightStarts, upper, inverses, full, block } = this;
    const { rows, columns, scales } = this.order!;
    const m = n - full;
    for (let k = 0; k < n; k++) {
      let sum = b[rows[k]] * scales[rows[k]];
      for (let e = leftStarts[k]; e < leftStarts[k + 1]; e++) sum -= lower[e] * y[left[e]];
      y[k] = k < full ? sum : sum - dot(block, (k - full) * m, y, full, k - full);
    }
    for (let k = n - 1; k >= 0; k--) {
      let sum = y[k];
      for (let e = rightStarts[k]; e < rightStarts[k + 1]; e++) sum -= upper[e] * y[right[e]];
      if (k >= full) sum -= dot(block, (k - full) * (m + 1) + 1, y, k + 1, n - 1 - k);
      y[k] = sum * inverses[k];
    }
    for (let k = 0; k < n; k++) b[columns[k]] = y[k];
  }
}

/** Product of two stretches of arrays; in two sums, for the next product need not wait for the last sum then. */
function dot(a: Float64Array, atA: number, b: Float64Array, atB: number, count: number): number {
  let even = 0;
  let odd = 0;
  let i = 0;
  for (; i < count - 1; i += 2) {
    even += a[atA + i] * b[atB + i];
    odd += a[atA + i + 1] * b[atB + i + 1];
  }
  if (i < count) even += a[atA + i] * b[atB + i];
  return even + odd;
}
