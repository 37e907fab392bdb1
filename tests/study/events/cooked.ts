import { expect } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { coldSmoke } from '../../../src/study/events/coldSmoke.js';
import { followCook } from '../../../src/study/events/cook.js';
import { exampleDesign } from '../../support/examples.js';

export const COOK = `
cook:
  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]
  tend: 4 h
  dieDown: 1 h
`;
export const withCook = (cook: string): Design => exampleDesign('plain-24.yaml', (text) => text + cook);

export const upright = (change?: (d: Design) => void): Design => {
  const design = exampleDesign('offset-with-upright.yaml');
  change?.(design);
  return design;
};
export const coldSmokeOnADayOf = (air: number) =>
  coldSmoke(upright((d) => void (d.site.air = d.site.surroundings = air)));

/** A cook with such splits burns down after the last wood, and no heat is lost. */
export function expectBurntDown(splits: Partial<Design['fire']['splits']>): void {
  const design = withCook(COOK.replace('tend: 4 h', 'tend: 1 h').replace('dieDown: 1 h', 'dieDown: 5 h'));
  Object.assign(design.fire.splits, splits);
  const { curve, lastWood_s: last, ...end } = followCook(design)!;
  // a split just laid on has to catch
  const from = curve.time_s.findIndex((t) => t >= last + 600);
  for (let i = from + 1; i < curve.time_s.length; i++) {
    expect(curve.fire_W[i]).toBeLessThanOrEqual(curve.fire_W[i - 1] * (1 + 1e-3));
  }
  expect(end.woodError).toBeLessThan(1e-9);
  expect(end.energyError).toBeLessThan(1e-3);
  expect(end.outOfBand_s).not.toBeNull();
}
