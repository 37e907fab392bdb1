/** Numbers as a shop writes them: 1/4, 1-1/4, 1 1/4, 1¼, 70,000, .5, 2.5e3. */

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
};

/** Typographic marks to plain ones: primes, vulgar fractions, minus signs, odd spaces. */
export function tidyText(text: string): string {
  return text
    .replace(
      /(\d?)\s*([½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚])/g,
      (_, whole: string, mark: string) => `${whole}${whole ? ' ' : ''}${VULGAR[mark]}`,
    )
    .replace(/[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/[−–—‐‑]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/[º˚]/g, '°')
    .replace(/\s+/g, ' ')
    .trim();
}

// A group of thousands follows a number, and no number begins with 0: 0,640 is somebody's 0.640.
const DECIMAL = String.raw`(?:[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?|\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?`;
const NUMBER = new RegExp(
  String.raw`^([-+]?)\s*(?:(\d+)(?: - | |-))?(\d+)\s*/\s*(\d+)(?![\d.,])|^([-+]?)\s*(${DECIMAL})(?![\d.,])`,
);

/** The number at the head of a text and what follows it, or undefined. A zero denominator is no number. */
export function readNumber(text: string): { value: number; rest: string } | undefined {
  const match = NUMBER.exec(text);
  if (!match) return undefined;
  const rest = text.slice(match[0].length);
  if (match[4] !== undefined) {
    const denominator = Number(match[4]);
    if (denominator === 0) return undefined;
    const magnitude = Number(match[2] ?? 0) + Number(match[3]) / denominator;
    return { value: match[1] === '-' ? -magnitude : magnitude, rest };
  }
  const magnitude = Number(match[6].replace(/,/g, ''));
  return { value: match[5] === '-' ? -magnitude : magnitude, rest };
}

/**
 * The same text with a decimal point, where its number has a comma that parts no thousands: `0.640 kg` for `0,640 kg`,
 * `1,234.5 kg` for `1.234,5 kg`. Undefined where that makes no number either.
 */
export function withDecimalPoint(text: string): string | undefined {
  const match = /^([-+]?)(\d*|\d{1,3}(?:\.\d{3})+),(\d+)(?![\d.,])/.exec(text);
  if (!match) return undefined;
  const mended = `${match[1]}${match[2].replace(/\./g, ',') || '0'}.${match[3]}${text.slice(match[0].length)}`;
  return readNumber(mended) && mended;
}

/** Twelve digits: 1/4 in, 6.35 mm and 0.635 cm are then one and the same double, and so give the same bytes. */
export function settle(si: number): number {
  return Number(si.toPrecision(12));
}
