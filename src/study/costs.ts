/** What a pit costs to build and a cook in it, at the prices that its design gives. */
import type { Design, Prices } from '../design/design.js';
import type { PriceName } from '../design/fields/prices.js';
import { insulatedArea, linedArea } from '../design/geometryOf.js';
import { formatTime } from '../units/index.js';
import { held, made, NO_DIFFERENCE, ofResult, type Found, type Quantity } from './quantities.js';

/** How long a cook is where the design has none of its own [s]: common practice, no source. */
const USUAL_COOK = 8 * 3600;

/** How long the fire is tended in a cook, once the steel has soaked [s]. */
export function cookLength({ cook }: Design): number {
  return cook?.tend || USUAL_COOK;
}

/** What a pit is made of that has a price, and how much of it a design takes, in the price's own measure. */
const MATERIALS: Readonly<Record<Exclude<PriceName, 'wood'>, (found: Found) => number>> = {
  steel: ({ result }) => result.geometry.totalSteelMass_kg,
  insulation: ({ result }) => insulatedArea(result.design),
  lining: ({ result }) => linedArea(result.design),
};

type Material = keyof typeof MATERIALS;
const NAMES = Object.keys(MATERIALS) as Material[];

/** Materials that a pit has and its design no price for: without that nothing is known of what it costs to build. */
export function unpriced(found: Found): Material[] {
  return NAMES.filter((name) => MATERIALS[name](found) > 0 && found.result.design.prices?.[name] === undefined);
}

function costOf(name: Material, found: Found): number | null {
  const amount = MATERIALS[name](found);
  const price = found.result.design.prices?.[name];
  if (price !== undefined) return amount * price;
  return amount === 0 && found.result.design.prices ? 0 : null;
}

/** What can be told of the costs of some pits. */
interface Costs {
  /** what they are made of, each with its cost, where any of them has it and a price for it */
  materials: Quantity[];
  /** all of that */
  build: Quantity;
  /** wood for a cook, and what it costs */
  cookWood: Quantity;
  cook: Quantity;
}

/**
 * Costs of pits that stand beside each other.
 *
 * @param cook_s how long a cook is
 */
export function costsOf(pits: readonly Found[], cook_s: number): Costs {
  const used = NAMES.filter((name) => pits.some((pit) => MATERIALS[name](pit) > 0));
  const build = made('buildCost', 'buildCost', {
    kind: 'money',
    of: (found) => (unpriced(found).length > 0 ? null : sum(used.map((name) => costOf(name, found) ?? 0))),
  });
  const wood = (found: Found) => {
    const [soaked, hold] = [ofResult('woodToSoaked_kg').of(found), held('wood_kg_per_s').of(found)];
    return soaked === null || hold === null ? null : soaked + hold * cook_s;
  };
  const row = { missing: 'never', none: (value: number) => NO_DIFFERENCE.share * Math.abs(value) } as const;
  const at = formatTime(cook_s);
  const price = ({ result }: Found) => result.design.prices?.wood;
  return {
    materials: used.map((name) =>
      made(`${name}Cost`, `${name}Cost`, { kind: 'money', of: (found) => costOf(name, found) }),
    ),
    build,
    cookWood: made(
      'cookWood_kg',
      'cookWood_kg',
      { kind: 'mass', ...row, of: (found) => (price(found) === undefined ? null : wood(found)) },
      { at },
    ),
    cook: made(
      'cookCost',
      'cookCost',
      {
        kind: 'money',
        ...row,
        of: (found) => {
          const [each, kilograms] = [price(found), wood(found)];
          return each === undefined || kilograms === null ? null : each * kilograms;
        },
      },
      { at },
    ),
  };
}

/** Rows of a table of costs. What is of steel alone has no sum. */
export function costRows({ materials, build, cookWood, cook }: Costs): Quantity[] {
  return [...materials, ...(materials.length > 1 ? [build] : []), cookWood, cook];
}

/** What an option costs and saves against another one, and when the one has paid for the other. */
export interface Payback {
  /** more to build; negative: less; 0 where it is too little to be told from none */
  extra: number;
  /** less for the wood of a cook; negative: more */
  saved: number;
  /** cooks after which the saving has paid for what it costs more; 0: it costs no more; null: never */
  cooks: number | null;
  /** where it costs less to build and more a cook: cooks after which that saving is used up; else null */
  usedUp: number | null;
}

/** @returns null where one of the costs isn't known */
export function paybackOf(costs: Costs, option: Found, baseline: Found): Payback | null {
  const extra = differenceOf(costs.build, option, baseline);
  const more = differenceOf(costs.cook, option, baseline);
  if (extra === null || more === null) return null;
  const saved = more === 0 ? 0 : -more;
  const cooks = Math.ceil(extra / saved);
  if (extra < 0 && saved < 0) return { extra, saved, cooks: null, usedUp: cooks };
  return { extra, saved, cooks: extra <= 0 && saved >= 0 ? 0 : saved > 0 ? cooks : null, usedUp: null };
}

function differenceOf(cost: Quantity, option: Found, baseline: Found): number | null {
  const [value, from] = [cost.of(option), cost.of(baseline)];
  if (value === null || from === null) return null;
  return Math.abs(value - from) <= cost.none(from) ? 0 : value - from;
}

/**
 * A payback as one number of a row of kind 'cooks': cooks; infinite: never; negative: cooks after which what it saves
 * at the build is used up; null: nothing to pay back, or not known.
 */
export function paybackNumber(payback: Payback | null): number | null {
  if (!payback || (payback.extra === 0 && payback.saved === 0)) return null;
  return payback.usedUp === null ? (payback.cooks ?? Infinity) : -payback.usedUp;
}

/** The row that says after how many cooks an option is paid back. */
export const PAYBACK = made('payback', 'payback', { kind: 'cooks', of: () => null });

function sum(values: number[]): number {
  return values.reduce((a, b) => a + b, 0);
}

/** The currency that pits are priced in; undefined where none has prices. */
export function currencyOf(designs: readonly Design[]): string | undefined {
  return designs
    .map(({ prices }): Prices['currency'] | undefined => prices?.currency)
    .find((each) => each !== undefined);
}
