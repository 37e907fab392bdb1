/** What a builder pays for what a pit is made of, and for wood. */
import { parseQuantity } from '../../units/index.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import { block, optional, readRows } from './blocks.js';
import { quantity } from './field.js';

/** Wide enough for any currency. */
const PER_MASS = range('pricePerMass', '$0.001/lb', '$100,000/lb');
const PER_AREA = range('pricePerArea', '$0.01/ft^2', '$1,000,000/ft^2');

const PRICES = {
  steel: optional(quantity(PER_MASS, 'Steel, by its weight.', { examples: ['$1.20/lb', '$1,900/ton', '2.50 €/kg'] })),
  insulation: optional(
    quantity(PER_AREA, 'Insulation as thick as it is laid on, by the area that it covers.', { examples: ['$4/ft^2'] }),
  ),
  lining: optional(
    quantity(PER_AREA, 'Brick or board as thick as it is laid, by the area of its hot face.', {
      examples: ['$12/ft^2'],
    }),
  ),
  wood: optional(quantity(PER_MASS, 'Wood as it is burned, by its weight.', { examples: ['$0.25/lb'] })),
};

/** What a price may be given of. */
export type PriceName = keyof typeof PRICES;

export const prices = block(
  'Prices, all in one currency: what an option costs to build, and what it saves in wood.',
  PRICES,
  (fields, around) => ({ ...readRows(PRICES, fields, around), currency: currencyOf(fields) }),
);

/** The one currency of all prices, as written. */
function currencyOf(fields: Fields): string {
  let first: { key: string; currency: string } | undefined;
  for (const [key, { row }] of Object.entries(PRICES)) {
    const written = fields.raw(key);
    const read = typeof written === 'string' ? parseQuantity(row!.range.kind, written) : undefined;
    if (!read?.ok || read.currency === undefined) continue;
    first ??= { key, currency: read.currency };
    if (read.currency !== first.currency) {
      fields.fault(key, {
        code: 'unknown-unit',
        message: `is in another currency than ${first.key}`,
        allowed: `one currency in all prices, here '${first.currency}'`,
      });
    }
  }
  return first?.currency ?? '';
}
