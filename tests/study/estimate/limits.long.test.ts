import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { exampleDesign } from '../../support/examples.js';

const plain = (change?: (d: Design) => void): Design => {
  const design = exampleDesign('plain-24.yaml');
  change?.(design);
  return design;
};
const gauge = (r: EstimateResult, which: 'assumed' | 'steady' = 'assumed') =>
  r[which]!.stations.find((s) => s.name === r.design.gauge)!;

describe('direction of change (fast-check over the plain pit)', () => {
  it('more fire is never colder, more plate never warms up faster', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8e3, max: 4e4, noNaN: true }),
        fc.double({ min: 1.05, max: 1.5, noNaN: true }),
        (heat, factor) => {
          const at = (h: number, plate: number) => {
            const design = plain((d) => {
              d.fire.heat = h;
              d.firebox.plate = plate;
              d.chamber!.plate = plate;
            });
            return estimate(design);
          };
          const base = at(heat, 0.00635);
          expect(gauge(at(heat * factor, 0.00635)).thermometer_K).toBeGreaterThan(gauge(base).thermometer_K);
          const thick = at(heat, 0.00635 * factor);
          if (base.warmUp!.gauge_s !== null && thick.warmUp!.gauge_s !== null) {
            expect(thick.warmUp!.gauge_s).toBeGreaterThan(base.warmUp!.gauge_s);
          }
        },
      ),
      { numRuns: 12, seed: 11 },
    );
  });
});
