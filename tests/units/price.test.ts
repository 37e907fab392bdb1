import { describe, expect, it } from 'vitest';
import { format, formatBoth, parseQuantity, type Kind } from '../../src/units/index.js';

const POUND = 0.45359237;
const SQUARE_FOOT = 0.3048 ** 2;

describe('a price', () => {
  it.each([
    ['pricePerMass', '$1.20/lb', 1.2 / POUND, '$'],
    ['pricePerMass', '$ 1.20 / lb', 1.2 / POUND, '$'],
    ['pricePerMass', '1.20 $/lb', 1.2 / POUND, '$'],
    ['pricePerMass', '2.50 €/kg', 2.5, '€'],
    ['pricePerMass', '£900/tonne', 0.9, '£'],
    ['pricePerMass', 'CAD 1.60/lb', 1.6 / POUND, 'CAD'],
    ['pricePerMass', '$1,900/ton', 1900 / (2000 * POUND), '$'],
    ['pricePerMass', '$1.20 per lb', 1.2 / POUND, '$'],
    ['pricePerMass', '$1.20 a pound', 1.2 / POUND, '$'],
    ['pricePerMass', '0.85/lb', 0.85 / POUND, ''],
    ['pricePerArea', '$4/ft^2', 4 / SQUARE_FOOT, '$'],
    ['pricePerArea', '$4 per square foot', 4 / SQUARE_FOOT, '$'],
    ['pricePerArea', '38 €/m2', 38, '€'],
  ] as [Kind, string, number, string][])('%s: %s', (kind, text, si, currency) => {
    const price = parseQuantity(kind, text);
    if (!price.ok) throw new Error(price.problem);
    expect(price.si).toBeCloseTo(si, 9);
    expect(price.currency).toBe(currency);
  });

  it.each([
    ['pricePerMass', 'Infinity $/lb', 'not-a-quantity', undefined],
    ['pricePerMass', '$Infinity/lb', 'not-a-quantity', undefined],
    ['pricePerMass', '$1e999/lb', 'not-a-quantity', undefined],
    ['pricePerMass', '$1.20', 'no-unit', '$1.20/lb'],
    ['pricePerMass', 1.2, 'no-unit', '$1.2/lb'],
    ['pricePerMass', '$1.20/ft', 'unknown-unit', '$1.20/lb'],
    ['pricePerArea', '$4/lb', 'unknown-unit', '$4/ft²'],
    ['pricePerMass', '$1.20/lb/ft', 'not-a-quantity', undefined],
    ['pricePerMass', 'dear', 'not-a-quantity', undefined],
    ['pricePerMass', '', 'not-a-quantity', undefined],
  ] as [Kind, string | number, string, string | undefined][])('%s: %s is refused', (kind, text, code, nearest) => {
    const price = parseQuantity(kind, text);
    expect(price).toMatchObject({ ok: false, code });
    expect((price as { nearest?: string }).nearest).toBe(nearest);
  });

  it.each([
    ['pricePerMass', '$1.20/lb', '$', '$1.20/lb ($2.65/kg)'],
    ['pricePerMass', '2.50 €/kg', '€', '€1.13/lb (€2.50/kg)'],
    ['pricePerMass', '1.60 CAD/lb', 'CAD', '1.60 CAD/lb (3.53 CAD/kg)'],
    ['pricePerArea', '$4/ft²', '$', '$4/ft² ($43.06/m²)'],
  ] as [Kind, string, string, string][])('%s: %s is told to the cent', (kind, text, currency, told) => {
    const price = parseQuantity(kind, text);
    if (!price.ok) throw new Error(price.problem);
    expect(formatBoth(kind, price.si, { currency })).toBe(told);
    expect(format(kind, price.si, 'shop', { currency })).toBe(told.split(' (')[0]);
  });
});
