/** What sizes cost to build, and a cook in them, at the prices of their design. */
import type { Design } from '../../design/design.js';
import { cookLength, costsOf, paybackOf, type Payback } from '../costs.js';
import type { Found } from '../quantities.js';
import type { FullJudgement } from './judge.js';

/** Null: a price is lacking, or a fire that holds; what was not estimated has neither number. */
export interface Money {
  build: number | null;
  cook: number | null;
}

const NONE: Money = { build: null, cook: null };

/** A size as costs are found in it: it holds with the vents of a clean fire, whose wood a size is told by. */
function foundIn({ estimated, weighed }: FullJudgement): Found | null {
  const wood = weighed.wood_kg_per_s;
  const steady = wood === null ? null : estimated?.steady && { ...estimated.steady, wood_kg_per_s: wood };
  return estimated && { result: { ...estimated, steady: steady ?? null } };
}

/** What a size costs to build, and the wood of a cook with it, where the design has prices. */
export function moneyOf(design: Design, judgement: FullJudgement): Money {
  const found = foundIn(judgement);
  if (!design.prices || !found) return NONE;
  const { build, cook } = costsOf([found], cookLength(design));
  return { build: build.of(found), cook: cook.of(found) };
}

/** What one size costs and saves against another. */
export function paidBack(design: Design, size: FullJudgement, other: FullJudgement): Payback | null {
  const [here, there] = [foundIn(size), foundIn(other)];
  if (!design.prices || !here || !there) return null;
  return paybackOf(costsOf([here, there], cookLength(design)), here, there);
}
