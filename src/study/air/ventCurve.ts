/**
 * The vents in use: where the thermometer settles against how far the intakes are open, with wood enough on the bed.
 */
import type { Design } from '../../design/design.js';
import { burnsItsAir } from './burnsItsAir.js';
import { CLEAN_FIRE } from './cleanFire.js';
import { withOpening } from './cleanHold.js';
import type { AirState, FullFire } from './states.js';

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

/** From nearly shut to wide open. */
const OPENINGS = [0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1];

/**
 * The vent curve a cook uses: where the thermometer settles against how far the intakes are open, with wood enough on
 * the bed. What burns is what the air allows at a given air over what the wood needs, up to the design's full fire.
 *
 * @param cleanAir likely air over what the wood needs; its spread is that of the estimate, in proportion
 */
export function ventCurve(design: Design, cleanAir: number): VentCurve {
  const scale = cleanAir / CLEAN_FIRE.ratio;
  const ratios = { likely: cleanAir, low: CLEAN_FIRE.low * scale, high: CLEAN_FIRE.high * scale };
  const [likely, low, high] = [ratios.likely, ratios.low, ratios.high].map((ratio) => statesAt(design, ratio));
  return {
    open: OPENINGS,
    thermometer_K: likely.map((state) => state && state.reading_K),
    fire_W: likely.map((state) => state && state.fire_W),
    leanest_K: high.map((state) => state && state.reading_K),
    richest_K: low.map((state) => state && state.reading_K),
    ratios,
  };
}

/** From wide open on, each from its neighbour; null where no draft settles. */
function statesAt(design: Design, ratio: number): (AirState | null)[] {
  let wider: FullFire | null = null;
  return [...OPENINGS]
    .reverse()
    .map((open) => {
      const burnt = burnsItsAir(withOpening(design, open), ratio, wider);
      wider = burnt ?? wider;
      return burnt?.state ?? null;
    })
    .reverse();
}
