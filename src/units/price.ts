import { findUnit } from './kinds.js';
import { readNumber, tidyText } from './numbers.js';

export type Price = { ok: true; perKilogram: number; currency: string } | { ok: false; problem: string };

/** Above this per kilogram it is no steel: a slipped unit or digit. */
const MOST = 10_000;
const FORM = "write it as an amount per weight: '$1.20/lb', '2.50 €/kg'";

/**
 * A price per weight: an amount, a currency's sign or letters before or behind it, and a unit of weight.
 *
 * @example parsePrice('$1.20/lb') gives 2.6455 per kilogram, in '$'
 */
export function parsePrice(written: string): Price {
  const parts = tidyText(written).split(/\s*(?:\/|\bper\b|\ban?\b)\s*/);
  const match = /^([^\d\s.,+-]{0,4})\s*([^a-z$€£¥]*?)\s*([^\d\s.,]{0,4})$/i.exec(parts[0] ?? '');
  const number = match && readNumber(match[2]);
  const unit = parts.length === 2 ? findUnit('mass', parts[1]) : undefined;
  if (!match || !number || number.rest !== '' || (match[1] !== '' && match[3] !== '')) {
    return { ok: false, problem: `is no price; ${FORM}` };
  }
  if (!unit) return { ok: false, problem: `has no unit of weight after its '/'; ${FORM}` };
  const perKilogram = number.value / unit.factor;
  if (!(perKilogram > 0) || !(perKilogram <= MOST)) return { ok: false, problem: 'is no price that steel can have' };
  return { ok: true, perKilogram, currency: match[1] || match[3] };
}
