import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity, UNITS, type Kind } from '../../src/units/index.js';

function si(kind: Kind, written: string | number): number {
  const read = parseQuantity(kind, written);
  if (!read.ok) throw new Error(`${written}: ${read.problem}`);
  return read.si;
}

function problem(kind: Kind, written: string | number): { problem: string; allowed: string; nearest?: string } {
  const read = parseQuantity(kind, written);
  if (read.ok) throw new Error(`${written} was read as ${read.si}`);
  return read;
}

// derived: inch 25.4 mm, foot 0.3048 m, pound 0.45359237 kg and BTU(IT) 1055.05585262 J are exact (NIST SP 811,
// Appendix B)
const READ: [Kind, string | number, number][] = [
  ['length', '24 in', 0.6096],
  ['length', '24in', 0.6096],
  ['length', '24"', 0.6096],
  ['length', '24″', 0.6096],
  ['length', "24''", 0.6096],
  ['length', '24 inches', 0.6096],
  ['length', '2 ft', 0.6096],
  ['length', "2'", 0.6096],
  ['length', '2 ft 6 in', 0.762],
  ['length', '2\' 6"', 0.762],
  ['length', '2\'-6 1/2"', 0.7747],
  ['length', '2′ 6½″', 0.7747],
  ['length', '1/4 in', 0.00635],
  ['length', '1/4-in', 0.00635],
  ['length', '1-1/4 in', 0.03175],
  ['length', '1 1/4 in', 0.03175],
  ['length', '1¼ in', 0.03175],
  ['length', '½ in', 0.0127],
  ['length', '.5 in', 0.0127],
  ['length', '610 mm', 0.61],
  ['length', '61 cm', 0.61],
  ['length', '0.61 m', 0.61],
  ['length', '5,000 ft', 1524],
  ['length', '-400 m', -400],
  ['length', '1e3 mm', 1],
  ['plate', '1/4 in', 0.00635],
  ['plate', '6 mm', 0.006],
  ['area', '90 in^2', 0.0580644],
  ['area', '90 sq in', 0.0580644],
  ['area', '90 in²', 0.0580644],
  ['area', '2 ft2', 0.18580608],
  ['volume', '1 ft^3', 0.028316846592],
  ['temperature', '250 °F', 394.261111111],
  ['temperature', '250F', 394.261111111],
  ['temperature', '250 deg F', 394.261111111],
  ['temperature', '121 °C', 394.15],
  ['temperature', '394.15 K', 394.15],
  ['temperature', '-40 °C', 233.15],
  ['temperature', '-40 °F', 233.15],
  ['temperatureDifference', '18 °F', 10],
  ['temperatureDifference', '10 °C', 10],
  ['temperatureDifference', '10 K', 10],
  ['power', '70,000 BTU/h', 20514.9749121],
  ['power', '20 kW', 20000],
  ['power', '500 W', 500],
  ['mass', '30 lb', 13.6077711],
  ['mass', '2 lb 8 oz', 1.133980925],
  ['massFlow', '36 kg/h', 0.01],
  ['energyPerMass', '6,300 BTU/lb', 14653800],
  ['energyPerMass', '14.7 MJ/kg', 14.7e6],
  ['energyPerMass', '4 kWh/kg', 14.4e6],
  ['pressure', '1 in H2O', 249.08891],
  ['pressure', '1 inches of water', 249.08891],
  ['pressure', '5 Pa', 5],
  ['speed', '5 mph', 2.2352],
  ['speed', '36 km/h', 10],
  ['speed', '600 ft/min', 3.048],
  ['time', '10 min', 600],
  ['time', '1 h 30 min', 5400],
  ['time', '45 s', 45],
  ['share', '20 %', 0.2],
  ['share', '20%', 0.2],
  ['share', 0.2, 0.2],
  ['share', '0.2', 0.2],
  ['perLength', '0.5 per m', 0.5],
  ['perLength', '0.5 1/m', 0.5],
  ['heatFlux', '600 W/m2', 600],
  ['number', 0.62, 0.62],
];

describe('a written quantity in SI', () => {
  it.each(READ)('%s: %s', (kind, written, expected) => {
    expect(si(kind, written)).toBe(expected);
  });

  it('reads gauges as US manufacturers standard gauge for sheet steel', () => {
    // published: 11 gauge 0.1196 in, 16 gauge 0.0598 in, 7 gauge 0.1793 in
    expect(si('plate', '11 ga')).toBeCloseTo(0.1196 * 0.0254, 9);
    expect(si('plate', '16 gauge')).toBeCloseTo(0.0598 * 0.0254, 9);
    expect(si('plate', '7 ga.')).toBeCloseTo(0.1793 * 0.0254, 9);
  });

  it('takes another table for stainless', () => {
    const read = parseQuantity('plate', '11 ga', { gauges: 'stainless' });
    // memory: 11 gauge stainless is 1/8 in
    expect(read.ok && read.si).toBeCloseTo(0.125 * 0.0254, 9);
  });

  it('reads pipe by its nominal size: outside diameter and wall', () => {
    // published: ASME B36.10M, NPS 24 outside 610 mm (24.000 in), standard wall 9.53 mm; NPS 6 168.3 mm, 7.11 mm
    expect(parseQuantity('length', '24 in pipe, standard wall')).toMatchObject({
      ok: true,
      si: 0.6096,
      pipe: { nominal: 24, wall: 0.009525 },
    });
    const six = parseQuantity('length', '6 in pipe, schedule 40');
    expect(six.ok && six.si).toBeCloseTo(0.1683, 4);
    expect(six.ok && six.pipe?.wall).toBeCloseTo(0.00711, 5);
    expect(parseQuantity('length', '20" pipe sch 10')).toMatchObject({ ok: true, si: 0.508, pipe: { wall: 0.00635 } });
    expect(parseQuantity('length', '20 in pipe, 1/4 in wall')).toMatchObject({ ok: true, pipe: { wall: 0.00635 } });
    expect(parseQuantity('length', '20 in pipe')).toEqual({ ok: true, si: 0.508, pipe: { nominal: 20 } });
  });

  it('keeps wood per hour apart, since its heat depends on the wood', () => {
    for (const written of ['10 lb wood/h', '10 lb wood per hour', '10 lb of wood an hour', '10 lb/h wood']) {
      const read = parseQuantity('power', written);
      expect(read).toMatchObject({ ok: true, wood: true });
      expect(read.ok && read.si).toBeCloseTo(4.5359237 / 3600, 12);
    }
  });
});

describe('what is refused', () => {
  it.each([
    ['length', 24, /no unit/, /in, ft, mm/, '24 in'],
    ['length', '24', /no unit/, /in, ft, mm/, '24 in'],
    ['temperature', 250, /no unit/, /°F, °C, K/, '250 °F'],
    ['plate', 0.25, /no unit/, /ga/, '0.25 in'],
    ['length', '24 inn', /does not fit/, /in, ft/, 'in'],
    ['speed', '5 mphh', /does not fit/, /mph/, 'mph'],
    ['power', '250 °F', /does not fit/, /BTU\/h/, undefined],
    ['length', '0,25 in', /comma/, /in, ft/, undefined],
    ['length', '7,00 in', /comma/, /in, ft/, undefined],
    ['length', '1/0 in', /number/, /in, ft/, undefined],
    ['length', 'about two feet', /number/, /in, ft/, undefined],
    ['length', '', /empty/, /in, ft/, undefined],
    ['length', Infinity, /finite/, /in, ft/, undefined],
    ['length', NaN, /finite/, /in, ft/, undefined],
    ['length', '1e999 in', /finite/, /in, ft/, undefined],
    ['plate', '15.5 ga', /gauge/, /11, 12/, '15 ga'],
    ['plate', '40 ga', /gauge/, /11, 12/, '24 ga'],
    ['plate', '24 in pipe', /pipe/, /1\/4 in/, undefined],
    ['length', '25 in pipe', /pipe size/, /24, 26/, undefined],
    ['length', '24 in pipe, schedule 99', /no wall/, /standard wall/, undefined],
    ['number', '3 in', /plain number/, /plain number/, undefined],
    ['share', '20 in', /does not fit/, /%/, undefined],
  ] as [Kind, string | number, RegExp, RegExp, string | undefined][])(
    '%s: %s',
    (kind, written, what, allowed, nearest) => {
      const fault = problem(kind, written);
      expect(fault.problem).toMatch(what);
      expect(fault.allowed).toMatch(allowed);
      if (nearest !== undefined) expect(fault.nearest).toBe(nearest);
    },
  );

  it('never throws, and never gives a number that is not finite, whatever is written', () => {
    const kinds = Object.keys(UNITS) as Kind[];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 100 }),
          fc.double(),
          fc.stringMatching(/^[-+]?[0-9.,/ ]{1,9} ?(in|ft|"|'|mm|ga|pipe|°F|%|BTU\/h|lb wood\/h)?[0-9 "'/]{0,6}$/),
        ),
        (kind, written) => {
          const read = parseQuantity(kind, written);
          expect(read.ok ? Number.isFinite(read.si) : read.problem.length > 0 && read.allowed.length > 0).toBe(true);
        },
      ),
      { seed: 11, numRuns: 1500 },
    );
  });
});

describe('the same quantity in another unit', () => {
  it('gives the same double: lengths', () => {
    fc.assert(
      // sixteenths of an inch: n / 16 in = n x 1.5875 mm, exact in decimals
      fc.property(fc.integer({ min: 1, max: 5000 }), (n) => {
        const micrometres = (n * 15875) / 10;
        const inches = si('length', `${n}/16 in`);
        expect(si('length', `${n / 16} in`)).toBe(inches);
        expect(si('length', `${micrometres / 1000} mm`)).toBe(inches);
        expect(si('length', `${micrometres / 10000} cm`)).toBe(inches);
        expect(si('length', `${micrometres / 1e6} m`)).toBe(inches);
        expect(si('length', `${Math.floor(n / 192)} ft ${(n % 192) / 16} in`)).toBe(inches);
        if (n > 16 && n % 16 > 0) expect(si('length', `${Math.floor(n / 16)}-${n % 16}/16 in`)).toBe(inches);
      }),
      { seed: 12 },
    );
  });

  it('gives the same double: areas, heat, weights, temperatures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (n) => {
        expect(si('area', `${(n * 64516) / 1e4} mm^2`)).toBe(si('area', `${n / 100} in^2`));
        expect(si('area', `${n} ft^2`)).toBe(si('area', `${n * 144} in²`));
        expect(si('mass', `${n * 16} oz`)).toBe(si('mass', `${n} lb`));
        expect(si('power', `${n} W`)).toBe(si('power', `${n / 1000} kW`));
        expect(si('temperature', `${n / 10} °C`)).toBe(si('temperature', `${(n * 9 + 1600) / 50} °F`));
        expect(si('share', `${n / 100} %`)).toBe(si('share', n / 1e4));
        expect(si('time', `${n} min`)).toBe(si('time', `${n * 60} s`));
        expect(si('energyPerMass', `${n * 2.326} kJ/kg`)).toBe(si('energyPerMass', `${n} BTU/lb`));
      }),
      { seed: 13 },
    );
  });
});
