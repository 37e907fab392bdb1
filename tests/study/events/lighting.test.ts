import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { cooked } from '../../../src/study/events/cooked.js';
import type { Design } from '../../../src/design/design.js';
import { exampleDesign } from '../../support/examples.js';

const litOf = (design: Design) => estimate(design, { further: (solution) => cooked(solution) }).lit!;

describe('how long it takes from the match', () => {
  const design = exampleDesign('insulated-upright.yaml');
  const usual = litOf(design);

  // it had been told for twice the coals with quick flames and half with slow ones alone: 55 min, from 55 to 62
  it.each([
    [0.5, 0.55],
    [1, 0.55],
    [2, 1.8],
  ])('is ranged over %s times the coals with flames %s times as long', (coals, flame) => {
    const { fire } = design;
    const splits = { ...fire.splits, flame: flame * fire.splits.flame };
    const other = litOf({ ...design, fire: { ...fire, coals: coals * usual.coals_kg, splits } });
    expect(other.reads_s).toBeGreaterThanOrEqual(usual.soonest_s - 1);
    expect(other.reads_s).toBeLessThanOrEqual(usual.latest_s! + 1);
  });
});
