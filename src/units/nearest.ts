/**
 * The nearest right name to a mistyped one, by edit distance with swaps of neighbours (Damerau 1964, restricted form).
 */

export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? rows[i - 2][j - 2] + 1 : Infinity;
      row.push(
        Math.min(row[j - 1] + 1, rows[i - 1][j] + 1, rows[i - 1][j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1), swap),
      );
    }
    rows.push(row);
  }
  return rows[a.length][b.length];
}

/**
 * Nearest of the names within about a third of the word, and so many slips at most, or undefined; case does not count.
 */
export function nearestName(written: string, names: readonly string[], slips = Infinity): string | undefined {
  if (written.length > 60) return undefined;
  const word = written.toLowerCase();
  let best: string | undefined;
  let least = Infinity;
  for (const name of names) {
    const distance = editDistance(word, name.toLowerCase());
    if (distance < least) [least, best] = [distance, name];
  }
  return best !== undefined && least <= Math.min(slips, Math.max(1, Math.ceil(Math.max(word.length, best.length) / 3)))
    ? best
    : undefined;
}
