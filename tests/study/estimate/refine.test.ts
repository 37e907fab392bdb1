import { describe, expect, it } from 'vitest';
import { DEFAULT_RESOLUTION } from '../../../src/network/build.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { exampleDesign } from '../../support/examples.js';

/** How far the usual cells may be from three times as many, and those from twice as many again (derived: none hangs on the count), as shares. */
const MOST = { hold: [0.04, 0.01], air: [0.01, 0.005] };

describe('more cells along the chamber', () => {
  // gas of a reverse-flow pit had run against a resistance a cell: a third less air with nine times the cells
  it.each(['plain-24.yaml', 'reverse-flow.yaml'])(
    '%s comes to one limit, in heat and in air',
    (name) => {
      const [usual, more, most] = [3, 9, 18].map((chamber) => {
        const resolution = { ...DEFAULT_RESOLUTION, chamber };
        const { steady, assumed } = estimate(exampleDesign(name), { resolution, steadyOnly: true });
        return { hold: steady!.fire_W, air: assumed!.air_kg_per_s };
      });
      for (const key of ['hold', 'air'] as const) {
        expect(Math.abs(usual[key] / more[key] - 1)).toBeLessThan(MOST[key][0]);
        expect(Math.abs(more[key] / most[key] - 1)).toBeLessThan(MOST[key][1]);
      }
    },
    120_000,
  );
});
