import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../../src/design/geometryOf.js';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { makePit } from '../../../src/network/pit.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { solveUnderFire } from '../../../src/study/estimate/steady.js';
import { exampleDesign, exampleNames } from '../../support/examples.js';

const plain = (change?: (d: Design) => void): Design => {
  const design = exampleDesign('plain-24.yaml');
  change?.(design);
  return design;
};
const steady = (design: Design): EstimateResult => estimate(design, { steadyOnly: true });
const gauge = (r: EstimateResult, which: 'assumed' | 'steady' = 'assumed') =>
  r[which]!.stations.find((s) => s.name === r.design.gauge)!;

describe('no fire', () => {
  it.each(exampleNames)('%s: everything at outdoor temperature, nothing flows', (name) => {
    const design = exampleDesign(name);
    design.site.windPressure = { intake: 0, stack: 0 };
    design.site.surroundings = design.site.air;
    design.site.sun = 0;
    // rain, water and food cool themselves by drying
    design.site.rain = 0;
    for (const part of [design.firebox, design.chamber, design.upright]) if (part) part.contents = [];
    const pit = makePit(design, geometryOf(design));
    const { x, outcome } = solveUnderFire(pit, 0);
    expect(outcome.converged).toBe(true);
    for (let i = 0; i < pit.model.fuel; i++) expect(x[i]).toBeCloseTo(design.site.air, 3);
    for (const o of pit.model.flows) expect(Math.abs(o.forward - o.backward)).toBeLessThan(1e-6);
  });
});

describe('limits', () => {
  it('more wind never warms the shell', () => {
    let last = Infinity;
    for (const wind of [0, 1, 2, 4, 8, 16]) {
      const steel = gauge(steady(plain((d) => void (d.site.wind = wind)))).steel_K;
      expect(steel).toBeLessThan(last);
      last = steel;
    }
  });

  it('colder surroundings never warm it either', () => {
    const at = (K: number) => gauge(steady(plain((d) => void (d.site.surroundings = K)))).steel_K;
    expect(at(260)).toBeLessThan(at(294));
  });

  it('insulation of no thickness is no insulation, to the last digit', () => {
    const none = steady(plain());
    const zero = steady(
      plain((d) => void (d.chamber!.insulation = { material: 'ceramic fibre', thickness: 0, skin: 0.0015 })),
    );
    expect(zero.steady!.fire_W).toBe(none.steady!.fire_W);
    expect(zero.assumed).toEqual(none.assumed);
  });

  it('thicker insulation loses less, down to what gas carries off', () => {
    let last = Infinity;
    for (const inches of [0, 0.5, 1, 2, 4, 8]) {
      const insulation = { material: 'ceramic fibre', thickness: inches * 0.0254, skin: 0.0015 };
      const result = steady(
        plain((d) => {
          d.firebox.insulation = insulation;
          d.chamber!.insulation = insulation;
        }),
      );
      const { firebox, chamber } = result.steady!.heatLoss_W;
      expect(firebox + chamber).toBeLessThan(last);
      last = firebox + chamber;
    }
    expect(last).toBeGreaterThan(0);
  });

  it('a sealed pit cannot burn, and says so', () => {
    const sealed = steady(
      plain((d) => {
        d.firebox.intakes[0].open = 0;
        d.firebox.doorGap = 0;
        d.chamber!.doorGap = 0;
        d.stacks[0].damper = 0;
      }),
    );
    expect(sealed.warnings.map((w) => w.code)).toContain('no-air-path');
    expect(sealed.assumed).toBeNull();
    expect(sealed.warmUp).toBeNull();
  });

  it('a pit with next to no opening hardly burns, and says so', () => {
    const tight = steady(
      plain((d) => {
        d.firebox.intakes[0].open = 0;
        d.firebox.doorGap = 1e-7;
        d.chamber!.doorGap = 0;
      }),
    );
    expect(tight.warnings.map((w) => w.code)).toContain('no-air-path');
  });

  it('a closed intake starves the fire to what the door gap lets in', () => {
    const closed = steady(plain((d) => void ((d.firebox.intakes[0].open = 0), (d.chamber!.doorGap = 0))));
    const { assumed } = closed;
    expect(assumed!.limitedByAir).toBe(true);
    // 13.1 MJ per kg of oxygen, nine tenths of it usable (published: Huggett 1980; model input)
    const most = 13.1e6 * 0.9 * 0.2314 * assumed!.air_kg_per_s;
    expect(assumed!.fire_W / most).toBeGreaterThan(0.8);
    expect(assumed!.fire_W / most).toBeLessThan(1.25);
  });

  it('a taller stack draws more, the theoretical draft with its height', () => {
    const at = (m: number) => steady(plain((d) => void (d.stacks[0].height = m))).assumed!;
    const [low, tall, huge] = [at(0.5), at(2), at(12)];
    expect(tall.air_kg_per_s).toBeGreaterThan(low.air_kg_per_s);
    expect(huge.air_kg_per_s).toBeGreaterThan(tall.air_kg_per_s);
    expect(huge.draft.theoretical_Pa).toBeGreaterThan(3 * tall.draft.theoretical_Pa);
  });

  it('plate thickness hardly changes the steady loss', () => {
    const at = (plate: number) =>
      steady(plain((d) => void ((d.firebox.plate = plate), (d.chamber!.plate = plate)))).steady!.fire_W;
    expect(Math.abs(at(0.0127) / at(0.003175) - 1)).toBeLessThan(0.05);
  });

  it('no station is colder than outdoors or hotter than the flame', () => {
    for (const name of exampleNames) {
      const design = exampleDesign(name);
      for (const s of steady(design).assumed!.stations) {
        expect(s.gas_K).toBeGreaterThan(design.site.air);
        expect(s.gas_K).toBeLessThan(1500);
        const [low, high] = [Math.min(s.gas_K, s.steel_K), Math.max(s.gas_K, s.steel_K)];
        expect(s.thermometer_K).toBeGreaterThan(low - 60);
        expect(s.thermometer_K).toBeLessThan(high + 60);
      }
    }
  });
});

describe('the same design in other units', () => {
  it('gives the same bytes', () => {
    const metric = (text: string) =>
      text
        .replace('air: 70 °F', `air: ${(70 - 32) / 1.8} °C`)
        .replace('wind: 5 mph', 'wind: 8.04672 km/h')
        .replace('altitude: 500 ft', 'altitude: 152.4 m')
        .replace('rise: 10 min', 'rise: 600 s')
        .replace('length: 60 in', 'length: 5 ft')
        .replace(/diameter: 24 in/g, 'diameter: 60.96 cm')
        .replace('area: 90 in^2', 'area: 0.625 ft^2')
        .replace(/plate: 1\/4 in/g, 'plate: 6.35 mm');
    const a = estimate(exampleDesign('plain-24.yaml'));
    const b = estimate(exampleDesign('plain-24.yaml', metric));
    expect(JSON.stringify(b)).toBe(JSON.stringify(a));
  });
});
