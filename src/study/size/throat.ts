/**
 * The throat of a size. A small one throws a jet along the roof, which takes more wood for what the dial reads; through
 * a large one the bed shines on the near end of the grate, and its gas rises there. Where the grate is evenest hardly
 * moves with the stack, so that the throat is settled first, in the pit as drawn.
 */
import type { Design } from '../../design/design.js';
import { gasSection, jointsOf } from '../../design/joints.js';
import { overlap, type Section } from '../../design/overlap.js';
import { fullFire } from '../air/states.js';
import { describeState } from '../estimate/describeState.js';
import { NO_DIFFERENCE } from '../quantities.js';
import { withAir } from './candidate.js';
import { foodIn, type Food } from './heights.js';
import { throatFor } from './judge.js';
import { ALIKE } from './rank.js';
import type { SizeSettings } from './limits.js';
import { stockThroat, type Sized } from './stock.js';
import { cleanArea, MIDDLE, mostOpen, openedBy } from './vents.js';

/** What one throat does while a clean fire holds the target. */
export interface ThroatTry extends Food {
  area_m2: number;
  wood_kg_per_s: number;
  /** the full fire's gas runs through it with a quarter of the greatest speed in hand */
  roomy: boolean;
}

/** Plate left all round a throat, to weld to and to keep fat in [m]: 1 in, common practice, no source. */
const RIM = 0.0254;

/** The largest throat that what it joins leaves room for [m2]. */
function roomFor(design: Design): number {
  const joint = jointsOf(design).find(({ opening }) => opening === design.throat)!;
  if (joint.orientation === 'up') {
    // a rectangle, whose area over its girth is the joint's length
    const area = Math.min(...joint.given);
    return area - RIM * (area / joint.length) + 4 * RIM ** 2;
  }
  const [a, b] = joint.parts.map((part) => within(gasSection(design[part]!)));
  return overlap(a, b).area;
}

function within(section: Section): Section {
  return { ...section, width: section.width - 2 * RIM, height: section.height - 2 * RIM };
}

/** A throat of whole tens that is at least this large [m2], or the largest that there is room for. */
export function fittingThroat(design: Design, least: number): Sized {
  const room = roomFor(design);
  const wanted = stockThroat(least);
  if (wanted.value <= room) return wanted;
  const ten = stockThroat(0).value;
  return stockThroat(Math.max(1, Math.floor(room / ten + 1e-9)) * ten);
}

/**
 * Throats of whole tens, each a tenth larger than the one before or more, that there is room for and a clean fire holds
 * with; of those without speed in hand the largest alone.
 */
export function throatTries(design: Design, settings: SizeSettings): ThroatTry[] {
  const most = mostOpen(design);
  const room = most > 0 ? roomFor(design) : 0;
  const sizes: number[] = [];
  for (let { value } = stockThroat(0); value <= room; { value } = stockThroat(ALIKE * value)) sizes.unshift(value);
  const tries: ThroatTry[] = [];
  for (const area_m2 of sizes) {
    const designAt = (area: number) => withAir(design, { vents: openedBy(design, area), throat: area_m2 });
    const clean = cleanArea(designAt, most, settings);
    const full = clean && fullFire(designAt(Math.min(most, clean.at / MIDDLE)));
    if (!full) continue;
    const { pit, solved, state } = clean.hold;
    const roomy = throatFor(full) <= area_m2;
    const wood_kg_per_s = state.fire_W / design.wood.heat;
    tries.unshift({ area_m2, wood_kg_per_s, roomy, ...foodIn(design, describeState(pit, solved)) });
    if (!roomy) break;
  }
  return tries;
}

/**
 * The throat that sizes begin with [m2]: of those with speed in hand the ones that leave the grate evenest; of these
 * the ones that take least wood; of these the smallest. A tenth more of either counts alike. Null: there is none in the
 * pit as drawn.
 */
export function bestThroat(tries: readonly ThroatTry[]): number | null {
  const roomy = tries.filter((each) => each.roomy);
  const even = least(roomy, ({ apart_K }) => apart_K ?? 0, NO_DIFFERENCE.temperature);
  const frugal = least(even, ({ wood_kg_per_s }) => wood_kg_per_s, 0);
  return frugal.length > 0 ? Math.min(...frugal.map(({ area_m2 }) => area_m2)) : null;
}

/** Those that have least of something, a tenth more of it counting alike, or what is too little to be told. */
function least(tries: readonly ThroatTry[], of: (each: ThroatTry) => number, untold: number): ThroatTry[] {
  const best = Math.min(...tries.map(of));
  return tries.filter((each) => of(each) <= Math.max(ALIKE * best, best + untold));
}
