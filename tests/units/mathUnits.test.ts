import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { loadOtherUnits, parseQuantity, UNITS, type Kind } from '../../src/units/index.js';

/** mathjs's name for each of ours that it knows, and the SI unit of the kind there. Source: mathjs's own unit table. */
const NAMES: Partial<Record<Kind, { si: string; units: Record<string, string> }>> = {
  length: { si: 'm', units: { in: 'inch', ft: 'foot', mm: 'mm', cm: 'cm', m: 'm', yd: 'yard' } },
  area: { si: 'm^2', units: { 'in²': 'inch^2', 'ft²': 'ft^2', 'mm²': 'mm^2', 'cm²': 'cm^2', 'm²': 'm^2' } },
  volume: { si: 'm^3', units: { 'ft³': 'ft^3', 'in³': 'inch^3', gal: 'gallon', L: 'litre', 'm³': 'm^3' } },
  temperature: { si: 'K', units: { '°F': 'degF', '°C': 'degC', K: 'K' } },
  power: { si: 'W', units: { 'BTU/h': 'BTU/h', kW: 'kW', W: 'W' } },
  energy: { si: 'J', units: { BTU: 'BTU', MJ: 'MJ', kJ: 'kJ', kWh: 'kWh', J: 'J' } },
  mass: {
    si: 'kg',
    units: { lb: 'lbm', oz: 'ounce', kg: 'kg', g: 'g', 'US ton': 'ton', tonne: 'tonne' },
  },
  massFlow: { si: 'kg/s', units: { 'lb/h': 'lbm/h', 'kg/h': 'kg/h', 'g/s': 'g/s', 'kg/s': 'kg/s' } },
  volumeFlow: { si: 'm^3/s', units: { CFM: 'ft^3/minute', 'm³/h': 'm^3/h', 'm³/s': 'm^3/s' } },
  energyPerMass: {
    si: 'J/kg',
    units: { 'BTU/lb': 'BTU/lbm', 'MJ/kg': 'MJ/kg', 'kWh/kg': 'kWh/kg', 'kJ/kg': 'kJ/kg', 'J/kg': 'J/kg' },
  },
  density: { si: 'kg/m^3', units: { 'lb/ft³': 'lbm/ft^3', 'kg/m³': 'kg/m^3' } },
  pressure: { si: 'Pa', units: { Pa: 'Pa', hPa: 'hPa', kPa: 'kPa', mbar: 'mbar' } },
  speed: { si: 'm/s', units: { mph: 'mile/h', 'ft/min': 'ft/minute', 'ft/s': 'ft/s', 'm/s': 'm/s', 'km/h': 'km/h' } },
  time: { si: 's', units: { min: 'minute', h: 'hour', s: 's', d: 'day' } },
  heatFlux: { si: 'W/m^2', units: { 'W/m²': 'W/m^2', 'kW/m²': 'kW/m^2', 'BTU/(h ft²)': 'BTU/(h ft^2)' } },
};

/** Ours that mathjs lacks or has in another sense; derived in kinds.ts. */
const OWN = new Set(['in H2O', 'mm H2O', 'kBTU/h', 'kn']);

describe('the table of units against mathjs', () => {
  for (const [kind, { si, units }] of Object.entries(NAMES)) {
    for (const row of UNITS[kind as Kind]) {
      if (OWN.has(row.name)) continue;
      it(`${kind}: ${row.name}`, () => {
        expect(units, `${row.name} has no counterpart listed`).toHaveProperty([row.name]);
        for (const value of [1, 70, 1234.5]) {
          const expected = unit(value, units[row.name]).toNumber(si);
          // mathjs carries the pound, the gallon and the BTU to nine digits or so
          expect(Math.abs((value * row.factor + (row.offset ?? 0)) / expected - 1)).toBeLessThan(2e-6);
        }
      });
    }
  }

  it('reads every unit by every spelling it lists, as one and the same', () => {
    for (const kind of Object.keys(UNITS) as Kind[]) {
      for (const row of UNITS[kind]) {
        for (const spelling of row.also) {
          const [a, b] = [parseQuantity(kind, `7 ${row.name}`), parseQuantity(kind, `7 ${spelling}`)];
          expect(b, `7 ${spelling}`).toEqual(a);
          expect(a.ok).toBe(true);
        }
      }
    }
  });
});

describe('legal units outside the table', () => {
  it.each([
    // derived: 1 kJ/h = 1/3.6 W; furlong 201.168 m; 1 hp(mechanical) 745.69987 W; 1 psi 6894.757 Pa
    ['power', '36000 kJ/h', 10000, 1e-9],
    ['power', '10 hp', 7456.9987, 1e-6],
    ['length', '1 furlongs', undefined, 0],
    ['length', '1 furlong', undefined, 0],
    ['length', '1 rod', 5.0292, 1e-5],
    ['pressure', '1 psi', 6894.757, 1e-6],
    ['area', '1 ft*in', 0.3048 * 0.0254, 1e-9],
    ['speed', '1 cm/s', 0.01, 1e-9],
    ['massFlow', '1 lbm/minute', 0.45359237 / 60, 1e-9],
    ['power', '3 m', undefined, 0],
    ['temperature', '3 degR', undefined, 0],
    ['length', '3 constructor', undefined, 0],
    ['length', '3 in; cm', undefined, 0],
  ] as [Kind, string, number | undefined, number][])('%s: %s', async (kind, written, expected, tolerance) => {
    const read = parseQuantity(kind, written, { otherUnits: await loadOtherUnits() });
    if (expected === undefined) expect(read.ok).toBe(false);
    else {
      if (!read.ok) throw new Error(read.problem);
      expect(Math.abs(read.si / expected - 1)).toBeLessThanOrEqual(tolerance);
    }
  });
});
