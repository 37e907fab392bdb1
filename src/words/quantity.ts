import type { Quantity } from '../study/quantities.js';
import { format, type FormatOptions, type Kind, type UnitSystem } from '../units/index.js';

/** Prints a quantity for the reader of this report. */
export type Say = (
  kind: Kind,
  si: number | null,
  options?: { digits?: number; shop?: string; si?: string; currency?: string },
) => string;

/** A number of the table of quantities, in its units and to its figures. */
export function sayQuantity(say: Say, { kind, unit, digits }: Omit<Quantity, 'of'>, value: number | null): string {
  return say(kind as Kind, value, { ...unit, ...(digits === undefined ? {} : { digits }) });
}

/**
 * Shop units with SI in brackets, or SI alone.
 *
 * @example sayIn('shop')('temperature', 394.26) gives '250 °F (121 °C)'
 */
export function sayIn(system: UnitSystem): Say {
  return (kind, value, { digits, shop, si, currency } = {}) => {
    const inUnit = (each: UnitSystem, unit?: string) => {
      const options: FormatOptions = {};
      if (digits !== undefined) options.digits = digits;
      if (currency !== undefined) options.currency = currency;
      if (unit !== undefined) options.unit = unit;
      return format(kind, value, each, options);
    };
    if (system === 'si') return inUnit('si', si);
    const [first, second] = [inUnit('shop', shop), inUnit('si', si)];
    return first === second ? first : `${first} (${second})`;
  };
}
