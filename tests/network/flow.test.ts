import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveFlows } from '../../src/network/flow.js';
import { Model } from '../../src/network/model.js';
import { OUTDOORS, type Network, type NetworkOpening } from '../../src/network/types.js';
import { dryAir } from '../../src/physics/gasMixture.js';
import { emptyOpeningFlow, openingFlow, SMOOTHING_PRESSURE } from '../../src/physics/opening.js';
import { ductFlow } from '../../src/physics/ductFlow.js';
import { LuSolver } from '../../src/solve/linear.js';

/** Hot rooms one beside the other with given openings; no walls, no fire: flows alone. */
function rooms(temperatures: number[], openings: Partial<NetworkOpening>[]): { model: Model; x: Float64Array } {
  const network: Network = {
    zones: temperatures.map((_, i) => ({
      name: `room ${i + 1}`,
      part: 'room',
      floor: 0,
      centre: 1,
      roof: 2,
      volume: 1,
      section: 1,
      length: 1,
      hydraulicDiameter: 1,
      beamLength: 1,
      soot: 0,
    })),
    openings: openings.map((o, i) => ({
      name: `opening ${i + 1}`,
      role: 'passage' as const,
      from: 0,
      to: OUTDOORS,
      area: 0.01,
      discharge: 0.62,
      centre: 1,
      extent: 0,
      windPressure: 0,
      ...o,
    })),
    nodes: [],
    faces: [],
    links: [],
    gaps: [],
    fire: {
      zone: 0,
      radiantShare: 0,
      throatArea: 0,
      outArea: 0,
      seen: [],
      heatValue: 15e6,
      gasPerFuel: 1,
      gasComposition: dryAir,
      heatPerOxygen: 13.1e6,
      oxygenUse: 0.9,
      airPerFuel: 5,
    },
    outdoors: {
      temperature: 293.15,
      pressure: 101325,
      wind: 0,
      surroundings: 293.15,
      sun: 0,
      rain: 0,
      air: dryAir,
      humidityRatio: 0,
    },
    columns: [],
    windows: [],
    levelConvection: 1,
    outsideConvection: 1,
    entrainment: 1,
    downflow: 1,
    innerConvection: 1,
    stems: [{ parts: [{ zone: 0, share: 1 }], station: 'room', height: 1 }],
    gauge: 0,
    stem: { diameter: 0.006, emissivity: 0.9, fill: 0.4 },
  };
  const model = new Model(network);
  const x = new Float64Array(model.size);
  x.fill(293.15, 0, model.gas);
  temperatures.forEach((T, i) => (x[model.gas + i] = T));
  model.gasState(x);
  const { residual } = solveFlows(model, x, new LuSolver(model.zoneCount), 1e-12);
  expect(residual).toBeLessThan(1e-11);
  return { model, x };
}

const net = (model: Model, i: number) => model.flows[i].forward - model.flows[i].backward;

describe('flow of a heated room through two openings', () => {
  const through = (apart: number, area: number, T = 400): number =>
    net(
      rooms(
        [T],
        [
          { centre: 0.1, area },
          { centre: 0.1 + apart, area },
        ],
      ).model,
      1,
    );

  it('scales with the square root of the height between them and with their area (derived: Bernoulli)', () => {
    expect(through(8, 0.02) / through(2, 0.02)).toBeCloseTo(2, 2);
    expect(through(2, 0.06) / through(2, 0.02)).toBeCloseTo(3, 6);
  });

  it('equals Cd A sqrt(2 rho dp) on both (derived)', () => {
    const { model, x } = rooms([400], [{ centre: 0 }, { centre: 3 }]);
    const [outside, inside] = [model.outdoorDensity, model.density[0]];
    const draft = (outside - inside) * 9.80665 * 3;
    // series of two equal openings, cold gas in and hot gas out
    const expected = 0.62 * 0.01 * Math.sqrt((2 * draft) / (1 / outside + 1 / inside));
    expect(net(model, 1)).toBeCloseTo(expected, 5);
    expect(net(model, 0)).toBeCloseTo(-expected, 5);
    expect(x[model.pressure]).toBeLessThan(0);
  });

  it('stands still where the room is as cold as outdoors', () => {
    expect(Math.abs(through(3, 0.02, 293.15))).toBeLessThan(1e-12);
  });

  it('runs backwards in a room that is colder', () => {
    expect(through(3, 0.02, 270)).toBeLessThan(0);
  });

  it('lets one opening alone only breathe: no net flow', () => {
    expect(Math.abs(net(rooms([400], [{ centre: 1 }]).model, 0))).toBeLessThan(1e-11);
  });
});

describe('random networks', () => {
  it('close their mass whatever the temperatures, areas and heights', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 250, max: 1200, noNaN: true }), { minLength: 2, maxLength: 6 }),
        fc.array(
          fc.record({
            from: fc.nat(5),
            to: fc.integer({ min: -1, max: 5 }),
            area: fc.double({ min: 1e-6, max: 2, noNaN: true }),
            centre: fc.double({ min: 0, max: 6, noNaN: true }),
            extent: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 2, noNaN: true })),
          }),
          { minLength: 2, maxLength: 12 },
        ),
        (temperatures, list) => {
          const n = temperatures.length;
          const openings = [
            ...temperatures.map((_, i) => ({ from: i, to: OUTDOORS, centre: 0.5 * i })),
            ...list
              .map((o) => ({ ...o, from: o.from % n, to: o.to < 0 ? OUTDOORS : o.to % n }))
              .filter((o) => o.from !== o.to),
          ];
          rooms(temperatures, openings);
        },
      ),
      { numRuns: 300, seed: 7 },
    );
  });
});

describe('one opening', () => {
  const flow = (low: number, high: number, a = 1.2, b = 0.6) => {
    const out = emptyOpeningFlow();
    openingFlow(out, 0.5, 0.62, a, b, low, high);
    return out;
  };

  it('passes both ways about a neutral plane in the middle (derived: integral of sqrt over each half)', () => {
    const { forward, backward } = flow(-1, 1);
    // each half: area/2, mean of sqrt(|dp|) = 2/3
    expect(forward).toBeCloseTo(0.62 * 0.25 * Math.sqrt(2 * 1.2) * (2 / 3), 3);
    expect(backward).toBeCloseTo(0.62 * 0.25 * Math.sqrt(2 * 0.6) * (2 / 3), 3);
  });

  it('is continuous from tall to short and through zero, and its slopes are its slopes (derived)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (low, span) => {
          const high = low + span;
          // at zero itself the slope changes with the side the gas comes from
          fc.pre(Math.min(Math.abs(low), Math.abs(high), Math.abs(low + high)) > 1e-4);
          const at = flow(low, high);
          const step = 1e-7;
          for (const [key, slope] of [
            ['forward', [at.forwardLow, at.forwardHigh]],
            ['backward', [at.backwardLow, at.backwardHigh]],
          ] as const) {
            const byLow = (flow(low + step, high)[key] - flow(low - step, high)[key]) / (2 * step);
            const byHigh = (flow(low, high + step)[key] - flow(low, high - step)[key]) / (2 * step);
            // together they are exact; a short opening splits its one slope evenly between the edges
            expect(Math.abs(byLow + byHigh - slope[0] - slope[1])).toBeLessThan(0.02 + 1e-3 * Math.abs(byLow + byHigh));
          }
        },
      ),
      { numRuns: 500, seed: 3 },
    );
  });

  it('is within 1 % of the square root from 0.01 Pa up', () => {
    const exact = (dp: number) => 0.62 * 0.5 * Math.sqrt(2 * 1.2 * dp);
    for (const dp of [0.01, 0.1, 1, 50]) expect(Math.abs(flow(dp, dp).forward / exact(dp) - 1)).toBeLessThan(0.0101);
    expect(SMOOTHING_PRESSURE).toBeLessThan(0.01);
  });
});

describe('a duct', () => {
  const duct = { loss: 1.5, length: 1, bore: 0.15, roughness: 1e-4 };

  it('gives back the pressure it was asked for (derived: Darcy-Weisbach), and its slope', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 100, noNaN: true }), (dp) => {
        const out = { velocity: 0, slope: 0 };
        ductFlow(out, dp, 0.8, 420, duct);
        const more = { velocity: 0, slope: 0 };
        ductFlow(more, dp * 1.0001, 0.8, 420, duct);
        expect(out.velocity).toBeGreaterThan(0);
        // K alone bounds it from above
        expect(out.velocity).toBeLessThan(Math.sqrt((2 * dp) / (0.8 * 1.5)));
        expect((more.velocity - out.velocity) / (dp * 1e-4) / out.slope).toBeCloseTo(1, 1);
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  it('carries nothing without a pressure', () => {
    const out = { velocity: 1, slope: 0 };
    ductFlow(out, 0, 0.8, 420, duct);
    expect(out.velocity).toBe(0);
    expect(out.slope).toBeGreaterThan(0);
  });
});
