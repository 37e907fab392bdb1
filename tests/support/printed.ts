/** Numbers read back from how they are printed. */

const SECONDS: Record<string, number> = { s: 1, min: 60, h: 3600 };

/** A number with its commas, or a time in seconds: `13,550`, `-0.4`, `7 min 40 s`. */
export function readPrinted(text: string): number {
  const time = /^([+-]?)((?:[\d.]+ (?:h|min|s) ?)+)$/.exec(text);
  if (!time) return Number(text.replace(/,/g, ''));
  const seconds = [...time[2].matchAll(/([\d.]+) (h|min|s)/g)].reduce(
    (sum, [, n, unit]) => sum + Number(n) * SECONDS[unit],
    0,
  );
  return time[1] === '-' ? -seconds : seconds;
}
