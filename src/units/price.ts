import { readNumber, tidyText } from './numbers.js';

/** A written price: the amount, its currency's sign or letters, and what it is for; empty where that is missing. */
interface WrittenPrice {
  amount: number;
  currency: string;
  unit: string;
}

/**
 * Takes a price apart: an amount with a currency before or behind it, and behind a slash what it is for.
 *
 * @example splitPrice('$1.20/lb') gives { amount: 1.2, currency: '$', unit: '/lb' }
 */
export function splitPrice(written: string): WrittenPrice | undefined {
  const [money, what, ...more] = tidyText(written).split(/\s*(?:\/|\bper\b|\ban?\b)\s*/);
  const match = /^([^\d\s.,+-]{0,4})\s*([^a-z$€£¥]*?)\s*([^\d\s.,]{0,4})$/i.exec(money);
  const number = match && readNumber(match[2]);
  if (!number || number.rest !== '' || more.length > 0 || (match[1] !== '' && match[3] !== '')) return undefined;
  return { amount: number.value, currency: match[1] || match[3], unit: what ? `/${what}` : '' };
}

/** A printed amount with its currency: a sign before it, letters behind it. */
export function withCurrency(amount: string, currency: string): string {
  const sign = amount.startsWith('-') ? '-' : '';
  const size = amount.slice(sign.length);
  return /^[A-Za-z]/.test(currency) ? `${sign}${size} ${currency}` : `${sign}${currency}${size}`;
}
