/** Sentences with quantities in them, which stay numbers until someone reads them. */
import { format, formatBoth, type UnitSystem } from './format.js';
import type { Kind } from './kinds.js';

/** A quantity in a sentence. */
export interface Amount {
  kind: Kind;
  /** in SI of its kind */
  si: number;
  /** significant figures */
  digits?: number;
  /** the shop's, instead of the usual one */
  unit?: string;
}

/** A sentence: text, and the quantities between. */
export type Told = string | readonly (string | Amount)[];

type Part = string | number | Amount | readonly Part[];

/** @example inWords(told`it reads ${amount('temperature', 394.26)}`) gives 'it reads 250 °F (121 °C)' */
export function told(texts: TemplateStringsArray, ...values: Part[]): Told {
  return texts.flatMap((text, i) => [text, ...partsOf(values[i] ?? '')]);
}

function partsOf(part: Part): (string | Amount)[] {
  if (typeof part !== 'object') return [String(part)];
  return 'kind' in part ? [part] : part.flatMap(partsOf);
}

/** A quantity for a sentence. @param si in SI of the kind */
export function amount(kind: Kind, si: number, options: Pick<Amount, 'digits' | 'unit'> = {}): Amount {
  return { kind, si, ...options };
}

/** A sentence for a reader of these units; 'both': the shop's with SI in brackets. */
export function inWords(sentence: Told, units: UnitSystem | 'both' = 'both'): string {
  if (typeof sentence === 'string') return sentence;
  return sentence.map((part) => (typeof part === 'string' ? part : say(part, units))).join('');
}

function say({ kind, si, digits, unit }: Amount, units: UnitSystem | 'both'): string {
  if (units === 'both') return formatBoth(kind, si, { digits, unit });
  return format(kind, si, units, units === 'shop' ? { digits, unit } : { digits });
}
