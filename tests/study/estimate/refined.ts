import { expect } from 'vitest';
import { DEFAULT_RESOLUTION } from '../../../src/network/build.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { exampleDesign } from '../../support/examples.js';

/**
 * How far the usual cells may be from three times as many, and those from twice as many again (derived: none hangs on
 * the count), as shares.
 */
const MOST = { hold: [0.04, 0.01], air: [0.01, 0.005] };

/** More cells along the chamber bring an example to one limit, in heat and in air. */
export function expectOneLimit(name: string): void {
  const [usual, more, most] = [3, 9, 18].map((chamber) => {
    const resolution = { ...DEFAULT_RESOLUTION, chamber };
    const { steady, assumed } = estimate(exampleDesign(name), { resolution, steadyOnly: true });
    return { hold: steady!.fire_W, air: assumed!.air_kg_per_s };
  });
  for (const key of ['hold', 'air'] as const) {
    expect(Math.abs(usual[key] / more[key] - 1)).toBeLessThan(MOST[key][0]);
    expect(Math.abs(more[key] / most[key] - 1)).toBeLessThan(MOST[key][1]);
  }
}
