import type { Quantity } from '../study/quantities.js';
import { format, type FormatOptions, type Kind, type UnitSystem } from '../units/index.js';

/** Prints a quantity for the reader of this report. */
export type Say = (
  kind: Kind,
  si: number | null,
  options?: { digits?: number; shop?: string; si?: string; currency?: string },
) => string;

/** Less than this is no draft to anyone who would measure it [Pa]: a ten-thousandth of an inch of water. */
export const NEXT_TO_NONE = 0.025;

/** A number of the table of quantities, in its units and to its figures. */
export function sayQuantity(say: Say, { kind, unit, digits }: Omit<Quantity, 'of'>, value: number | null): string {
  if (kind === 'pressure' && value !== null && Math.abs(value) < NEXT_TO_NONE) {
    return say(kind, Math.abs(value) < 0.1 * NEXT_TO_NONE ? 0 : value, { ...unit, digits: 1 });
  }
  return say(kind as Kind, value, { ...unit, ...(digits === undefined ? {} : { digits }) });
}

/**
 * In the units of the system alone, for running text.
 *
 * @example sayAlone('shop')('temperature', 394.26) gives '250 °F'
 */
export function sayAlone(system: UnitSystem): Say {
  return (kind, value, { digits, currency, ...units } = {}) => {
    const options: FormatOptions = {};
    if (digits !== undefined) options.digits = digits;
    if (currency !== undefined) options.currency = currency;
    if (units[system] !== undefined) options.unit = units[system];
    return format(kind, value, system, options);
  };
}

/**
 * Shop units with SI in brackets, for tables, or SI alone.
 *
 * @example sayIn('shop')('temperature', 394.26) gives '250 °F (121 °C)'
 */
export function sayIn(system: UnitSystem): Say {
  if (system === 'si') return sayAlone('si');
  return (...asked) => {
    const [first, second] = [sayAlone('shop')(...asked), sayAlone('si')(...asked)];
    return first === second ? first : `${first} (${second})`;
  };
}
