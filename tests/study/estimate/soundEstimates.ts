import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { gaugeReading } from '../../../src/study/estimate/gauge.js';
import { exampleDesign } from '../../support/examples.js';

/** The estimates of some examples are whole, closed, steady against finer steps, and the same each time. */
export function estimatesAreSound(names: readonly string[]): void {
  describe.each(names)('%s', (name) => {
    const result = estimate(exampleDesign(name));

    it('has all its parts, and every number is one', () => {
      expect(result.assumed).not.toBeNull();
      expect(result.steady).not.toBeNull();
      expect(result.warmUp!.gauge_s).not.toBeNull();
      expect(result.warmUp!.soaked_s!).toBeGreaterThanOrEqual(result.warmUp!.gauge_s!);
      const visit = (value: unknown, path: string): void => {
        if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
        else if (value && typeof value === 'object')
          for (const [k, v] of Object.entries(value)) visit(v, `${path}.${k}`);
      };
      visit(result, 'result');
    });

    it('closes heat within 0.1 % at every step and mass within 1e-9 kg/s', () => {
      const { fire_J, lost_J, stored_J } = result.warmUp!.series;
      for (let i = 0; i < fire_J.length; i++) {
        if (fire_J[i] > 0) expect(Math.abs(fire_J[i] - lost_J[i] - stored_J[i]) / fire_J[i]).toBeLessThan(1e-3);
      }
      expect(result.balance.energyError).toBeLessThan(1e-3);
      expect(result.balance.massError_kg_per_s).toBeLessThan(1e-9);
      for (const state of [result.steady!, result.assumed!]) {
        const { total, ...parts } = state.heatLoss_W;
        expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBeCloseTo(total, 6);
        expect(Math.abs(total / state.fire_W - 1)).toBeLessThan(1e-6);
      }
    });

    it('holds the target on its gauge', () => {
      const { gauge, fire } = result.design;
      expect(gaugeReading(result.steady!, gauge)).toBeCloseTo(fire.target, 4);
    });

    it('moves by less than 0.5 % when the time-step tolerance is halved', () => {
      const finer = estimate(exampleDesign(name), { tolerance: 0.5 }).warmUp!;
      expect(Math.abs(finer.gauge_s! / result.warmUp!.gauge_s! - 1)).toBeLessThan(5e-3);
      expect(Math.abs(finer.soaked_s! / result.warmUp!.soaked_s! - 1)).toBeLessThan(5e-3);
    });

    it('is the same bytes on a second run', () => {
      expect(JSON.stringify(estimate(exampleDesign(name)))).toBe(JSON.stringify(result));
    });
  });
}
