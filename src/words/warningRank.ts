/** Which warnings stand first, and which of them a buyer has to see. */
import type { Warning } from '../study/estimate/result.js';
import { writtenWhere } from './warningPlace.js';

/**
 * - stops: the pit does not do what it is for
 * - harm: something burns, smokes, breaks or is overloaded
 * - mind: it works, and the cook has to know
 * - shop: for who builds it or judges the numbers
 */
export type WarningRank = 'stops' | 'harm' | 'mind' | 'shop';

const ORDER: readonly WarningRank[] = ['stops', 'harm', 'mind', 'shop'];

/** A code that is not in here counts as harm, so that a new warning is shown until someone decides otherwise. */
const RANKS: Readonly<Record<string, WarningRank>> = {
  'no-air-path': 'stops',
  'no-steady-draft': 'stops',
  'draft-tips-over': 'stops',
  'draft-swings': 'harm',
  'chokes-at-first': 'harm',
  'full-fire-falls-off': 'harm',
  'target-not-reached': 'stops',
  'back-draft': 'stops',
  'not-soaked-in-a-day': 'stops',
  'steel-above-scaling-limit': 'harm',
  'steel-above-creep-limit': 'harm',
  'fire-limited-by-air': 'harm',
  'door-gap-smoke': 'harm',
  'paint-above-limit': 'harm',
  'insulation-above-limit': 'harm',
  'lining-above-limit': 'harm',
  'axle-overloaded': 'harm',
  'hitch-overloaded': 'harm',
  'tongue-load-out-of-band': 'harm',
  'another-state': 'mind',
  'event-not-followed': 'mind',
  'little-air': 'mind',
  'short-stem-reads-low': 'mind',
  'plates-stirred': 'shop',
  'tank-by-name': 'shop',
  'splits-limited-by-air': 'mind',
  'fire-beyond-bed': 'mind',
  'heavier-part-thinned': 'shop',
  'biot-above-limit': 'shop',
  'relation-outside-range': 'shop',
  'insulation-hot-values-estimated': 'shop',
  'lining-figures-estimated': 'shop',
  'fitted-not-used': 'shop',
  'fitted-out-of-range': 'shop',
};

/**
 * A door gap that lets out more than this share of the stack's gas is the buyer's business: common practice, no source.
 */
const MUCH_SMOKE = 0.05;
/** The share from which a door gap is warned of at all, which its warning's limit is. */
const SOME_SMOKE = 1e-3;

/** Orders ranks, gravest first. */
export function byRank(a: WarningRank, b: WarningRank): number {
  return ORDER.indexOf(a) - ORDER.indexOf(b);
}

/** How grave a warning is; one that no row has is. */
export function rankOf({ code, value, limits }: Warning): WarningRank {
  if (code === 'door-gap-smoke' && value !== null && limits?.high !== undefined && limits.high > 0) {
    return value * SOME_SMOKE > MUCH_SMOKE * limits.high ? 'harm' : 'shop';
  }
  return RANKS[code] ?? 'harm';
}

/** A warning that one or several options have. */
export interface SharedWarning extends Warning {
  rank: WarningRank;
  /** of the options that have it; words and numbers are those of the first */
  labels: string[];
}

/**
 * The warnings of all options, gravest first, those of one code and place once.
 *
 * @param placeOf what counts as one place (default: place and fire)
 */
export function gatherWarnings(
  options: readonly { label: string; result: { warnings: readonly Warning[] } }[],
  placeOf: (warning: Warning) => string = writtenWhere,
): SharedWarning[] {
  const kinds = new Map<string, SharedWarning>();
  for (const { label, result } of options) {
    for (const warning of result.warnings) {
      const key = `${warning.code} ${placeOf(warning)}`;
      const rank = rankOf(warning);
      const known = kinds.get(key);
      if (!known) kinds.set(key, { ...warning, rank, labels: [label] });
      else {
        const labels = known.labels.includes(label) ? known.labels : [...known.labels, label];
        // in the words of the gravest
        const graver = byRank(rank, known.rank) < 0;
        kinds.set(
          key,
          graver
            ? { ...warning, rank, labels: [label, ...labels.filter((each) => each !== label)] }
            : { ...known, labels },
        );
      }
    }
  }
  return [...kinds.values()].sort((a, b) => byRank(a.rank, b.rank));
}

/** Those that belong on a buyer's first page. */
export function gravest(warnings: readonly SharedWarning[]): SharedWarning[] {
  return warnings.filter(({ rank }) => rank !== 'shop');
}
