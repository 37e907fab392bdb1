import type { Design } from '../../design/design.js';
import { withAir } from './candidate.js';
import { fullFire } from '../air/states.js';
import { drawnStack, stackOf, stockHeights, stockStacks, type StockStack } from './stock.js';

/** Draft and air under the full fire against the height of one tube; null where no draft settles. */
export interface StackCurve {
  stack: string;
  height_m: number[];
  draft_Pa: (number | null)[];
  air_kg_per_s: (number | null)[];
  letInRatio: (number | null)[];
  velocity_m_per_s: (number | null)[];
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
      letInRatio: states.map((state) => state && state.letInRatio),
      velocity_m_per_s: states.map((state) => state && state.stackVelocity_m_per_s),
    };
  });
}

/**
 * The tube that was chosen among others of its shape: what is on hand, or tube from stock; alone where it stays as
 * drawn.
 */
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
