/**
 * Round numbers from at or below `low` to at or above `high`, about `count` of them: steps of 1, 2 or 5 times a power
 * of ten.
 */
export function roundTicks(low: number, high: number, count: number): number[] {
  const raw = (high - low) / Math.max(1, count) || 1;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= raw * 0.999) ?? 10);
  const [first, last] = [Math.floor(low / step + 1e-9), Math.ceil(high / step - 1e-9)];
  return Array.from({ length: Math.max(2, last - first + 1) }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}
