import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dischargeFromLosses, expansionLoss, haaland } from '../../src/physics/friction.js';
import { emptyOpeningFlow, openingFlow } from '../../src/physics/opening.js';
import { draftAsGasColumn, draftOfAir, draftOfFlueGas, heightForDraft } from '../../src/verify/relations/draft.js';
import { colebrook } from '../../src/verify/relations/friction.js';
import { twoWayDischarge } from '../../src/verify/relations/ventilation.js';
import { expectJoin, RUNS } from './joins.js';

const roughness = fc.double({ min: 0, max: 0.05, noNaN: true });

describe('friction', () => {
  test('is continuous through transition for any roughness', () => {
    fc.assert(
      fc.property(roughness, (e) => {
        for (const Re of [2300, 4000]) expectJoin((x) => haaland(x, e), Re, 1e-8);
      }),
      RUNS,
    );
  });

  test('is finite for every Reynolds number and laminar at 64/Re', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e8, max: 1e8, noNaN: true }), roughness, (Re, e) => {
        expect(Number.isFinite(haaland(Re, e))).toBe(true);
        expect(haaland(Re, e)).toBeGreaterThan(0);
      }),
      RUNS,
    );
    expect(Number.isFinite(haaland(0, 0.001))).toBe(true);
    expect(haaland(1000, 0.001)).toBeCloseTo(0.064, 12);
  });

  test('stays within 2.1 % of Colebrook, the spread its author gives', () => {
    // published: Haaland (1983), J. Fluids Eng. 105, 89
    fc.assert(
      fc.property(
        fc.double({ min: 3.61, max: 8, noNaN: true }),
        fc.double({ min: -6, max: -1.31, noNaN: true }),
        (logRe, logE) => {
          const [Re, e] = [10 ** logRe, 10 ** logE];
          expect(Math.abs(haaland(Re, e) / colebrook(Re, e) - 1)).toBeLessThan(0.021);
        },
      ),
      RUNS,
    );
  });

  test('Colebrook meets its own equation', () => {
    const [Re, e] = [1e5, 1e-3];
    const f = colebrook(Re, e);
    expect(1 / Math.sqrt(f)).toBeCloseTo(-2 * Math.log10(e / 3.7 + 2.51 / (Re * Math.sqrt(f))), 9);
  });

  test('losses: no step no loss, into the open the whole head, four heads halve the flow', () => {
    expect(expansionLoss(1)).toBe(0);
    expect(expansionLoss(0)).toBe(1);
    expect(dischargeFromLosses(4)).toBe(0.5);
  });
});

describe('draft', () => {
  const column = { height: 2, outdoorTemperature: 290, gasTemperature: 420, pressure: 98000 };

  test('vanishes with equal temperatures, turns over with cold gas, grows with height and pressure', () => {
    expect(draftOfAir({ ...column, gasTemperature: 290 })).toBe(0);
    expect(draftOfAir({ ...column, gasTemperature: 270 })).toBeLessThan(0);
    expect(draftOfAir({ ...column, height: 4 })).toBeCloseTo(2 * draftOfAir(column), 12);
    expect(draftOfAir({ ...column, pressure: 49000 })).toBeCloseTo(draftOfAir(column) / 2, 12);
  });

  test('height for a draft takes the way back', () => {
    expect(heightForDraft({ ...column, draft: draftOfAir(column) })).toBeCloseTo(2, 12);
  });

  test('the fuel its mass makes the draft smaller, less so with more air', () => {
    const flue = { height: 2, outdoorTemperature: 290, gasTemperature: 420 };
    const lean = draftOfFlueGas({ ...flue, airPerFuel: 40 });
    const rich = draftOfFlueGas({ ...flue, airPerFuel: 10 });
    expect(rich).toBeLessThan(lean);
    expect(lean).toBeLessThan(draftOfAir({ ...flue, pressure: 101325 }));
    expect(draftAsGasColumn({ ...flue, airPerFuel: 1e9 })).toBeCloseTo(2 * (420 / 290 - 1), 6);
  });
});

describe('net flow through an opening', () => {
  const net = (low: number, high: number) => {
    const out = emptyOpeningFlow();
    openingFlow(out, 0.05, 0.62, 1.2, 0.7, low, high);
    return out.forward - out.backward;
  };
  const pressure = fc.double({ min: -20, max: 20, noNaN: true });

  test('is nothing without a difference, turns with it, and never falls as it grows', () => {
    expect(net(0, 0)).toBe(0);
    fc.assert(
      fc.property(pressure, pressure, fc.double({ min: 0, max: 5, noNaN: true }), (low, high, more) => {
        expect(net(low + more, high + more)).toBeGreaterThanOrEqual(net(low, high) - 1e-12);
      }),
      RUNS,
    );
  });

  test('follows the orifice law with the density it comes from', () => {
    // derived: Cd A sqrt(2 rho dp)
    expect(net(5, 5)).toBeCloseTo(0.62 * 0.05 * Math.sqrt(2 * 1.2 * 5), 6);
    expect(net(-5, -5)).toBeCloseTo(-0.62 * 0.05 * Math.sqrt(2 * 0.7 * 5), 6);
  });

  test('over a tall opening is the integral over its height', () => {
    // derived: midpoint rule over 20000 strips of a pressure that runs straight from -3 to 7 Pa
    let sum = 0;
    const strips = 20000;
    for (let n = 0; n < strips; n++) {
      const dp = -3 + (10 * (n + 0.5)) / strips;
      sum += (Math.sign(dp) * 0.62 * 0.05 * Math.sqrt(2 * (dp > 0 ? 1.2 : 0.7) * Math.abs(dp))) / strips;
    }
    expect(net(-3, 7)).toBeCloseTo(sum, 4);
  });
});

test('the least coefficient of an opening with two-way flow', () => {
  expect(twoWayDischarge(0)).toBe(0.4);
});
