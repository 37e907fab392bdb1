/** In which order the rows and columns of a matrix that is mostly zero are eliminated, so that little fills in. */

/** An entry this far below the largest of its column is no pivot while an order is sought. */
const PIVOT_SHARE = 0.01;
/**
 * Cost of a factor's step where both its row and its column are taken as full, in steps that look up where each entry
 * stands.
 */
const FULL_COST = 0.25;

/** In which order a matrix is eliminated, and where its factors stand then. */
export interface Order {
  /** row and column that are eliminated k-th */
  rows: Int32Array;
  columns: Int32Array;
  /** factors that bring rows to one size, by row */
  scales: Float64Array;
  /** where the factors are not zero: what is seen, and what elimination fills in; rows and columns in their order */
  filled: Uint8Array;
}

/**
 * An order for a matrix as it stands (Markowitz, with a threshold on the pivots).
 *
 * @param matrix row by row
 * @param seen where it may have entries
 * @param n number of rows
 * @param last index of a row and column that are eliminated last; -1: of none
 * @returns null: it is singular
 */
export function eliminationOrder(matrix: Float64Array, seen: Uint8Array, n: number, last: number): Order | null {
  const a = matrix.slice();
  const place = seen.slice();
  const scales = new Float64Array(n);
  const rows = new Int32Array(n);
  const columns = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    let most = 0;
    for (let j = 0; j < n; j++) most = Math.max(most, Math.abs(a[i * n + j]));
    if (most === 0) return null;
    scales[i] = 1 / most;
    for (let j = 0; j < n; j++) a[i * n + j] /= most;
  }
  // places of entries by row and by column, those of what is eliminated too; how many of the rest
  const inRow: number[][] = Array.from({ length: n }, () => []);
  const inColumn: number[][] = Array.from({ length: n }, () => []);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (place[i * n + j] === 0) continue;
      inRow[i].push(j);
      inColumn[j].push(i);
    }
  }
  const rowCount = Int32Array.from(inRow, (entries) => entries.length);
  const columnCount = Int32Array.from(inColumn, (entries) => entries.length);
  const rowLeft = new Uint8Array(n).fill(1);
  const columnLeft = new Uint8Array(n).fill(1);
  let waits = last;
  const enough = (column: number) => {
    let most = 0;
    for (const i of inColumn[column]) {
      if (rowLeft[i] === 1 && i !== waits) most = Math.max(most, Math.abs(a[i * n + column]));
    }
    return PIVOT_SHARE * most;
  };
  const cost = (i: number, j: number) => (rowCount[i] - 1) * (columnCount[j] - 1);
  for (let k = 0; k < n; k++) {
    let [row, column, least] = [-1, -1, Infinity];
    if (k === n - 1) waits = -1;
    for (let i = 0; i < n; i++) {
      if (rowLeft[i] === 0 || columnLeft[i] === 0 || i === waits || cost(i, i) >= least) continue;
      if (!(Math.abs(a[i * n + i]) > enough(i))) continue;
      [row, column, least] = [i, i, cost(i, i)];
    }
    if (row < 0) {
      // no diagonal entry will do: the best of all
      for (let j = 0; j < n; j++) {
        if (columnLeft[j] === 0 || j === waits) continue;
        const limit = enough(j);
        for (let i = 0; i < n; i++) {
          if (rowLeft[i] === 0 || i === waits || !(Math.abs(a[i * n + j]) > limit) || cost(i, j) >= least) continue;
          [row, column, least] = [i, j, cost(i, j)];
        }
      }
    }
    if (row < 0 && waits < 0) return null;
    if (row < 0) {
      // without it there is no way on
      waits = -1;
      k--;
      continue;
    }
    rows[k] = row;
    columns[k] = column;
    rowLeft[row] = 0;
    columnLeft[column] = 0;
    const right = inRow[row].filter((j) => columnLeft[j] === 1);
    for (const j of right) columnCount[j]--;
    const pivot = a[row * n + column];
    for (const i of inColumn[column]) {
      if (rowLeft[i] === 0) continue;
      rowCount[i]--;
      const factor = a[i * n + column] / pivot;
      for (const j of right) {
        if (place[i * n + j] === 0) {
          place[i * n + j] = 1;
          inRow[i].push(j);
          inColumn[j].push(i);
          rowCount[i]++;
          columnCount[j]++;
        }
        a[i * n + j] -= factor * a[row * n + j];
      }
    }
  }
  const filled = new Uint8Array(n * n);
  for (let k = 0; k < n; k++) for (let q = 0; q < n; q++) filled[k * n + q] = place[rows[k] * n + columns[q]];
  return { rows, columns, scales, filled };
}

/**
 * From which row on factoring all that is left as a full matrix costs less. `place`: where the factors are not zero.
 */
export function fullFrom(place: Uint8Array, n: number): number {
  let full = n;
  while (full > 0) {
    const k = full - 1;
    let below = 0;
    let right = 0;
    for (let i = full; i < n; i++) {
      below += place[i * n + k];
      right += place[k * n + i];
    }
    const rest = n - full;
    if (below * right < FULL_COST * rest * rest) break;
    full = k;
  }
  return full;
}
