/**
 * Contact burns on bare hot metal: thresholds, not predictions. Skin, pressure and age move them.
 *
 * Marks for uncoated metal of ISO 13732-1:2006. The one for contact up to 0.5 s is quoted in print (4.2.1.2,
 * secondary); the others are from memory. Where the standard gives a band, the lower edge is the safe one.
 */
import { ZERO_CELSIUS } from './constants.js';

interface BurnMark {
  /** contact [s] */
  contact: number;
  /** lower and upper edge of the band [K] */
  low: number;
  high: number;
  known: 'published' | 'memory';
}

const mark = (contact: number, low: number, high: number, known: BurnMark['known']): BurnMark => ({
  contact,
  low: low + ZERO_CELSIUS,
  high: high + ZERO_CELSIUS,
  known,
});

/** Contact times [s], each with the band of temperatures [K] from which bare metal burns. */
export const BURN_MARKS: readonly BurnMark[] = [
  mark(0.5, 65, 65, 'published'),
  mark(1, 65, 70, 'memory'),
  mark(10, 55, 57, 'memory'),
  mark(60, 51, 51, 'memory'),
  mark(600, 48, 48, 'memory'),
  mark(8 * 3600, 43, 43, 'memory'),
];

/** Surface limit and the longest contact taken as safe on it. ASTM C1055 (secondary). */
export const TOUCH_LIMIT = { temperature: 60 + ZERO_CELSIUS, contact: 5 } as const;

/**
 * Temperature of bare metal below which contact of a given length does not burn: the lower edge, linear in the
 * logarithm of time between the marks, held at the first and last.
 * @param contact [s]; 0.5 s to 8 h
 * @returns [K]
 * @example burnThreshold(10) // 328.15 K
 * Reference: ISO 13732-1:2006 (file head).
 */
export function burnThreshold(contact: number): number {
  const first = BURN_MARKS[0];
  if (!(contact > first.contact)) return first.low;
  for (let n = 1; n < BURN_MARKS.length; n++) {
    const before = BURN_MARKS[n - 1];
    const after = BURN_MARKS[n];
    if (contact <= after.contact) {
      const share = Math.log(contact / before.contact) / Math.log(after.contact / before.contact);
      return before.low + share * (after.low - before.low);
    }
  }
  return BURN_MARKS[BURN_MARKS.length - 1].low;
}

/**
 * Longest contact that stays below the threshold at a surface temperature, the inverse of `burnThreshold`.
 * @param surface [K]
 * @returns [s]; 0 above the mark of 0.5 s (no contact is taken as safe), Infinity below that of 8 h
 * @example longestContact(324.15) // 60 s
 * Reference: ISO 13732-1:2006 (file head).
 */
export function longestContact(surface: number): number {
  const last = BURN_MARKS[BURN_MARKS.length - 1];
  if (surface > BURN_MARKS[0].low) return 0;
  if (surface < last.low) return Infinity;
  for (let n = BURN_MARKS.length - 1; n > 0; n--) {
    const before = BURN_MARKS[n - 1];
    const after = BURN_MARKS[n];
    if (surface < before.low) {
      const share = (surface - before.low) / (after.low - before.low);
      return before.contact * Math.pow(after.contact / before.contact, share);
    }
  }
  return BURN_MARKS[1].contact;
}
