import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, format, formatBoth, formatPlate, parseQuantity, unitOf, type Kind } from '../../src/units/index.js';

describe('SI as text', () => {
  it.each([
    ['temperature', 394.261111, '250 °F', '121 °C'],
    ['temperature', 233.15, '-40 °F', '-40 °C'],
    ['temperatureDifference', 10, '18 °F', '10 K'],
    ['massFlow', 6.363e-4, '5.05 lb/h', '2.29 kg/h'],
    ['pressure', 0.8718, '0.00350 in H2O', '0.872 Pa'],
    ['power', 9350, '31,900 BTU/h', '9.35 kW'],
    ['power', 85, '290 BTU/h', '85 W'],
    ['length', 0.6096, '24 in', '610 mm'],
    ['length', 0.168275, '6 5/8 in', '168 mm'],
    ['length', 7.62, '25 ft', '7.62 m'],
    ['plate', 0.00635, '1/4 in', '6.35 mm'],
    ['plate', 0.1196 * 0.0254, '11 ga', '3.04 mm'],
    ['plate', 0.006, '0.236 in', '6 mm'],
    ['time', 29.3 * 60, '29 min', '29 min'],
    ['time', 100, '100 s', '100 s'],
    ['time', 6000, '1 h 40 min', '1 h 40 min'],
    ['mass', 255.9, '564 lb', '256 kg'],
    ['area', 0.0580644, '90 in²', '581 cm²'],
    ['volume', 0.4229, '14.9 ft³', '423 L'],
    ['speed', 2.2352, '5 mph', '2.24 m/s'],
    ['share', 0.2, '20 %', '20 %'],
    ['energyPerMass', 14.712e6, '6,330 BTU/lb', '14.7 MJ/kg'],
    ['number', 7.8123, '7.81', '7.81'],
    ['power', 0, '0 BTU/h', '0 W'],
    ['temperature', NaN, '–', '–'],
    ['power', Infinity, '–', '–'],
    ['time', null, '–', '–'],
  ] as [Kind, number | null, string, string][])('%s %s', (kind, si, shop, metric) => {
    expect(format(kind, si, 'shop')).toBe(shop);
    expect(format(kind, si, 'si')).toBe(metric);
  });

  it('puts SI in brackets, once where both read the same', () => {
    expect(formatBoth('temperature', 394.261)).toBe('250 °F (121 °C)');
    expect(formatBoth('time', 1758)).toBe('29 min');
  });

  it('takes a unit and a number of digits', () => {
    expect(format('massFlow', 0.0237, 'si', { unit: 'g/s' })).toBe('23.7 g/s');
    expect(format('length', 152.4, 'shop', { unit: 'ft' })).toBe('500 ft');
    expect(format('power', 9360, 'si', { digits: 2 })).toBe('9.4 kW');
    expect(() => format('power', 1, 'si', { unit: 'mph' })).toThrow(/no unit of power/);
  });

  it('names the unit and the plain number for an axis', () => {
    expect(unitOf('temperature', 'shop')).toBe('°F');
    expect(convert('temperature', 394.261111111, 'shop')).toBeCloseTo(250, 6);
    expect(convert('massFlow', 0.001, 'si', { unit: 'g/s' })).toBeCloseTo(1, 12);
  });

  it.each(['1/16 in', '1/8 in', '3/16 in', '1/4 in', '5/16 in', '3/8 in', '1/2 in', '1 in', '7 ga', '10 ga', '16 ga'])(
    'prints stock plate as it was written: %s',
    (written) => {
      const read = parseQuantity('plate', written);
      expect(read.ok && formatPlate(read.si)).toBe(written);
    },
  );

  it('can be read back, to the digits shown', () => {
    const kinds: Kind[] = [
      'length',
      'area',
      'power',
      'mass',
      'massFlow',
      'pressure',
      'speed',
      'energyPerMass',
      'volume',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
        fc.constantFrom('shop' as const, 'si' as const),
        (kind, si, system) => {
          const read = parseQuantity(kind, format(kind, si, system));
          if (!read.ok) throw new Error(`${format(kind, si, system)}: ${read.problem}`);
          // three figures: half a unit of the third; a length snaps to a sixteenth within 0.002 in
          expect(Math.abs(read.si - si)).toBeLessThanOrEqual(0.00501 * si + 5.1e-5);
        },
      ),
      { seed: 14, numRuns: 2000 },
    );
  });
});
