/**
 * Value at a point of a curve that is straight between its points, and held before the first and after the last.
 *
 * @param x ascending, one at least
 * @param y as many
 * @example interpolate([0, 10, 20], [10, 20, 40], 15) // 30
 */
export function interpolate(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = x.length - 1;
  if (at <= x[low]) return y[low];
  if (at >= x[high]) return y[high];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  return y[low] + ((at - x[low]) / (x[high] - x[low])) * (y[high] - y[low]);
}
