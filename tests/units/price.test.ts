import { describe, expect, it } from 'vitest';
import { parsePrice } from '../../src/units/index.js';

const POUND = 0.45359237;

describe('a price', () => {
  it.each([
    ['$1.20/lb', 1.2 / POUND, '$'],
    ['$ 1.20 / lb', 1.2 / POUND, '$'],
    ['1.20 $/lb', 1.2 / POUND, '$'],
    ['2.50 €/kg', 2.5, '€'],
    ['£900/tonne', 0.9, '£'],
    ['CAD 1.60/lb', 1.6 / POUND, 'CAD'],
    ['$1,900/ton', 1900 / (2000 * POUND), '$'],
    ['$1.20 per lb', 1.2 / POUND, '$'],
    ['$1.20 a pound', 1.2 / POUND, '$'],
    ['0.85/lb', 0.85 / POUND, ''],
  ])('%s', (text, perKilogram, currency) => {
    const price = parsePrice(text);
    if (!price.ok) throw new Error(price.problem);
    expect(price.perKilogram).toBeCloseTo(perKilogram, 10);
    expect(price.currency).toBe(currency);
  });

  it.each([
    ['Infinity $/lb', /is no price/],
    ['$Infinity/lb', /is no price/],
    ['$1e999/lb', /no price/],
    ['$-1/lb', /no price that steel can have/],
    ['$0/lb', /no price that steel can have/],
    ['$99999/lb', /no price that steel can have/],
    ['$1.20', /no unit of weight/],
    ['$1.20/ft', /no unit of weight/],
    ['$1.20/lb/ft', /no unit of weight/],
    ['dear', /is no price/],
    ['', /is no price/],
  ])('%s is refused', (text, problem) => {
    const price = parsePrice(text);
    expect(price.ok).toBe(false);
    expect((price as { problem: string }).problem).toMatch(problem);
  });
});
