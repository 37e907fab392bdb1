import type { Design } from '../../design/design.js';
import { burnsItsAir } from '../air/burnsItsAir.js';
import { withAir } from './candidate.js';
import { withOpening } from '../air/cleanHold.js';

import { CLEAN_FIRE } from '../air/cleanFire.js';
import { fullFire, type FullFire } from '../air/states.js';
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

/** What a bed that burns all the air it gets makes of an opening of the intakes. */
export interface VentCurve {
  open: number[];
  /** settled reading of the gauge, and the fire, with the likely air for what burns; null where no draft settles */
  thermometer_K: (number | null)[];
  fire_W: (number | null)[];
  /** the same reading where the fire takes the least, and the most, air for what burns */
  leanest_K: (number | null)[];
  richest_K: (number | null)[];
  ratios: { likely: number; low: number; high: number };
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

/** From nearly shut to wide open. */
const OPENINGS = [0.02, ...Array.from({ length: 20 }, (_, i) => (5 * (i + 1)) / 100)];

/**
 * The vent curve a cook uses: where the thermometer settles against how far the intakes are open, with wood enough on the
 * bed. What burns is what the air allows at a given air over what the wood needs, up to the design's full fire.
 *
 * @param cleanAir likely air over what the wood needs; its spread is that of the estimate, in proportion
 */
export function ventCurve(design: Design, cleanAir: number): VentCurve {
  const scale = cleanAir / CLEAN_FIRE.ratio;
  const ratios = { likely: cleanAir, low: CLEAN_FIRE.low * scale, high: CLEAN_FIRE.high * scale };
  const at = (ratio: number) => {
    let start: FullFire | null = null;
    return [...OPENINGS]
      .reverse()
      .map((open) => {
        const burnt = burnsItsAir(withOpening(design, open), ratio, start);
        start = burnt ?? start;
        return burnt?.state ?? null;
      })
      .reverse();
  };
  const [likely, low, high] = [at(ratios.likely), at(ratios.low), at(ratios.high)];
  return {
    open: OPENINGS,
    thermometer_K: likely.map((state) => state && state.reading_K),
    fire_W: likely.map((state) => state && state.fire_W),
    leanest_K: high.map((state) => state && state.reading_K),
    richest_K: low.map((state) => state && state.reading_K),
    ratios,
  };
}
