import type { Design } from '../../design/design.js';
import { withAir } from './candidate.js';
import { fullFire } from '../air/states.js';
import { STOCK_HEIGHTS, stockStacks } from './stock.js';

/** Draft and air under the full fire against the height of one tube; null where no draft settles. */
export interface StackCurve {
  stack: string;
  height_m: number[];
  draft_Pa: (number | null)[];
  air_kg_per_s: (number | null)[];
  excessAirRatio: (number | null)[];
  velocity_m_per_s: (number | null)[];
}

/** How the choice of tube moves draft and air, all else as in the design. */
export function stackCurves(design: Design): StackCurve[] {
  const { intakes } = design.firebox;
  const area = intakes.reduce((sum, { count, area: each }) => sum + count * each, 0);
  return stockStacks(design.stacks[0].steel)
    .filter(({ wall }) => wall)
    .map((stack) => {
      const states = STOCK_HEIGHTS.map(
        ({ value: height }) =>
          fullFire(
            withAir(design, { count: 1, area, open: 1 }, design.throat.area, {
              diameter: stack.outside,
              wall: stack.thickness,
              height,
            }),
          )?.state ?? null,
      );
      return {
        stack: stack.name,
        height_m: STOCK_HEIGHTS.map(({ value }) => value),
        draft_Pa: states.map((state) => state && state.stackBase_Pa),
        air_kg_per_s: states.map((state) => state && state.air_kg_per_s),
        excessAirRatio: states.map((state) => state && state.excessAirRatio),
        velocity_m_per_s: states.map((state) => state && state.stackVelocity_m_per_s),
      };
    });
}
