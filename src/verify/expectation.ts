/**
 * What a case expects and how near the computed value must come.
 *
 * Expected: a number, a range `a..b`, or a bound `> a` or `< a`, in the case's unit. Tolerance: `2 %` of expected; `3
 * K`, `0.005 m`, `1 pt`: an amount in the case's unit (or K, or percentage points); `data`: equal to the printed
 * figure; `range`: inside the range; `information: why`: shown, neither passed nor failed.
 */
export interface Expected {
  low: number;
  high: number;
  /** as written */
  text: string;
}

/** How far a computed value may be off, as a case writes it. */
export type Tolerance =
  | { type: 'relative'; share: number; text: string }
  | { type: 'amount'; amount: number; text: string }
  | { type: 'equal'; text: string }
  | { type: 'inside'; text: string }
  | { type: 'information'; reason: string; text: string };

const NUMBER = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?`;
const RANGE = new RegExp(`^(${NUMBER})\\s*\\.\\.\\s*(${NUMBER})$`, 'i');
const BOUND = new RegExp(`^([<>])\\s*(${NUMBER})$`, 'i');
const PLAIN = new RegExp(`^${NUMBER}$`, 'i');

/** @returns undefined when the text is no number, range or bound */
export function readExpected(written: string): Expected | undefined {
  const text = written.trim();
  if (PLAIN.test(text)) return { low: Number(text), high: Number(text), text };
  const range = RANGE.exec(text);
  if (range) {
    const [low, high] = [Number(range[1]), Number(range[2])];
    return low <= high ? { low, high, text } : undefined;
  }
  const bound = BOUND.exec(text);
  if (!bound) return undefined;
  const limit = Number(bound[2]);
  return bound[1] === '>' ? { low: limit, high: Infinity, text } : { low: -Infinity, high: limit, text };
}

/** How a tolerance may be written, for messages. */
export const TOLERANCE_FORMS = 'N %, N K, N pt, N in the unit of the case, data, range, or information: reason';

/**
 * @param unit of the case, as written
 * @param kelvin size of 1 K in that unit; undefined when it is no temperature
 * @returns undefined when the text is none of `TOLERANCE_FORMS`
 */
export function readTolerance(written: string, unit: string, kelvin?: number): Tolerance | undefined {
  const text = written.trim();
  if (text === 'data') return { type: 'equal', text };
  if (text === 'range') return { type: 'inside', text };
  const information = /^information:\s*(.+)$/is.exec(text);
  if (information) return { type: 'information', reason: information[1], text: 'information' };
  const amount = new RegExp(`^(${NUMBER})\\s*(.*)$`, 'i').exec(text);
  if (!amount || !(Number(amount[1]) >= 0)) return undefined;
  const size = Number(amount[1]);
  const name = amount[2].trim();
  if (name === '%') return { type: 'relative', share: size / 100, text };
  if (name === 'K' && kelvin !== undefined) return { type: 'amount', amount: size * kelvin, text };
  if (name === 'pt' && /%/.test(unit)) return { type: 'amount', amount: size, text };
  if (name === unit.trim()) return { type: 'amount', amount: size, text };
  return undefined;
}

/** A figure counts as equal within this share: conversions between units cost digits. */
const EQUAL = 1e-6;
/** A value right on the edge of its tolerance is inside whatever the last bits say. */
const EDGE = 1e-9;

interface Judgement {
  /** computed less the nearest expected value, in the unit of the case; 0 inside a range */
  error: number;
  within: boolean;
}

/** Error of a computed value, and whether it is within the tolerance. */
export function judge(computed: number, expected: Expected, tolerance: Tolerance): Judgement {
  const nearest = Math.min(Math.max(computed, expected.low), expected.high);
  const error = computed - nearest;
  const size = Math.abs(error);
  switch (tolerance.type) {
    case 'relative':
      return { error, within: size <= (tolerance.share + EDGE) * Math.abs(nearest) };
    case 'amount':
      return { error, within: size <= tolerance.amount + EDGE * Math.abs(nearest) };
    case 'equal':
      return { error, within: size <= EQUAL * Math.abs(nearest) };
    case 'inside':
      return { error, within: size === 0 };
    case 'information':
      return { error, within: false };
  }
}
