import type { Design } from '../../design/design.js';
import { burnsItsAir } from '../air/burnsItsAir.js';
import { withAir } from './candidate.js';
import { withOpening } from '../air/cleanHold.js';

import { CLEAN_FIRE } from '../air/cleanFire.js';
import { fullFire, type FullFire } from '../air/states.js';
import { drawnStack, stackOf, stockHeights, stockStacks, type StockStack } from './stock.js';

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

/** Tubes of a chart, at most: more lines can't be told apart. */
const MOST_TUBES = 7;
const FOOT = 0.3048;

/**
 * How the choice of tube moves draft and air, all else as in the design.
 *
 * @param chosen the tube that the design has, and its length [m]
 */
export function stackCurves(design: Design, chosen: { stack: StockStack; height: number }): StackCurve[] {
  const most = Math.max(6, Math.ceil(chosen.height / FOOT - 1e-9)) * FOOT;
  const heights = stockHeights({ least: 0, most }).map(({ value }) => value);
  return tubesBeside(design, chosen.stack).map((stack) => {
    const states = heights.map(
      (height) => fullFire(withAir(design, { vents: 1, stack: { ...stack.section, height } }))?.state ?? null,
    );
    return {
      stack: stack.name,
      height_m: heights,
      draft_Pa: states.map((state) => state && state.stackBase_Pa),
      air_kg_per_s: states.map((state) => state && state.air_kg_per_s),
      excessAirRatio: states.map((state) => state && state.excessAirRatio),
      velocity_m_per_s: states.map((state) => state && state.stackVelocity_m_per_s),
    };
  });
}

/** The tube that was chosen among others of its shape: what is on hand, or tube from stock; alone where it stays as drawn. */
function tubesBeside({ stacks: [drawn], size }: Design, chosen: StockStack): StockStack[] {
  if (size?.keep.includes('stack')) return [drawnStack(drawn)];
  const shape = chosen.section.shape ?? 'round';
  const shelf = size?.onHand?.map(stackOf) ?? stockStacks(drawn.steel, [shape]).filter(({ written }) => written.wall);
  const others = shelf.filter(({ name }) => name !== chosen.name);
  const near = others
    .sort((a, b) => Math.abs(a.outside - chosen.outside) - Math.abs(b.outside - chosen.outside))
    .slice(0, MOST_TUBES - 1);
  return [chosen, ...near].sort((a, b) => a.outside - b.outside);
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
