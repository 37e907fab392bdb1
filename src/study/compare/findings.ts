/** What each option does against the baseline, as numbers that a buyer weighs up. */
import { held, ofResult, type Quantity } from '../quantities.js';
import type { ComparedOption, Comparison, Difference } from './compare.js';

/** Differences below this share, of temperatures below this many kelvins, are told as hardly any. */
const HARDLY = 0.05;
const HARDLY_KELVIN = 10;

/** A number that a buyer weighs up: less of it is what he wants, where not said otherwise. */
export interface Weighed {
  quantity: Quantity;
  wants?: 'more';
  less: string;
  more: string;
  /** when it stays as it is */
  same: string;
  /** what it is about: of several numbers on one matter the first that differs speaks */
  matter: string;
  /** below this, in SI, no one minds how much of it there is */
  from?: number;
  /** how much it counts beside others of the same size: an estimate of what buyers go by */
  counts: number;
}

/** Every such number, the order that of telling where they count alike. */
export const WEIGHED: readonly Weighed[] = [
  {
    quantity: ofResult('swing.thermometer_K'),
    less: 'a smaller swing under splits',
    more: 'a larger swing under splits',
    same: 'swing under splits',
    matter: 'swing',
    counts: 2,
  },
  {
    quantity: ofResult('door.dip_K'),
    less: 'a smaller dip when the door opens',
    more: 'a larger dip when the door opens',
    same: 'dip when the door opens',
    matter: 'door',
    counts: 0.5,
  },
  {
    quantity: ofResult('door.recovery_s'),
    less: 'a quicker recovery after the door',
    more: 'a slower recovery after the door',
    same: 'recovery after the door',
    matter: 'door',
    counts: 0.5,
  },
  {
    quantity: ofResult('gust.dip_K'),
    less: 'a smaller dip in a gust',
    more: 'a larger dip in a gust',
    same: 'dip in a gust',
    matter: 'gust',
    counts: 0.5,
  },
  {
    quantity: held('wood_kg_per_s'),
    less: 'less wood to hold',
    more: 'more wood to hold',
    same: 'wood to hold',
    matter: 'wood',
    counts: 3,
  },
  {
    quantity: held('endToEnd_K'),
    less: 'more even temperatures end to end',
    more: 'less even temperatures end to end',
    same: 'evenness end to end',
    matter: 'evenness',
    counts: 1,
  },
  {
    quantity: held('hottestOutside_K'),
    less: 'a cooler hottest outside',
    more: 'a hotter hottest outside',
    same: 'hottest outside',
    matter: 'outside',
    counts: 0.5,
  },
  {
    quantity: ofResult('soaked_s'),
    less: 'a shorter soak',
    more: 'a longer soak',
    same: 'time to soak',
    matter: 'soak',
    counts: 1,
  },
  {
    quantity: ofResult('woodToSoaked_kg'),
    less: 'less wood to soak',
    more: 'more wood to soak',
    same: 'wood to soak',
    matter: 'soak',
    counts: 0.5,
  },
  {
    quantity: ofResult('steel_kg'),
    less: 'less steel',
    more: 'more steel',
    same: 'weight of steel',
    matter: 'steel',
    counts: 1,
  },
  {
    quantity: ofResult('lining_kg'),
    less: 'less brick to carry',
    more: 'more brick to carry',
    same: 'weight of brick',
    matter: 'steel',
    counts: 0.5,
  },
  {
    quantity: ofResult('plate.buckling'),
    less: 'flat panels heated to a smaller share of what may buckle them',
    more: 'flat panels heated to a larger share of what may buckle them',
    same: 'how near flat panels are to buckling',
    matter: 'flat',
    // a panel may oil-can from there on
    from: 1,
    counts: 0.3,
  },
  {
    quantity: ofResult('plate.push_m'),
    less: 'stiffer flat panels',
    more: 'softer flat panels',
    same: 'stiffness of flat panels',
    matter: 'stiff',
    // 1/32 in under a push of the hand: what one feels, common practice, no source
    from: 0.0008,
    counts: 0.1,
  },
  {
    quantity: ofResult('plate.halfGone_years'),
    wants: 'more',
    less: 'fewer years of scale under the coals',
    more: 'more years of scale under the coals',
    same: 'years of scale under the coals',
    matter: 'scale',
    counts: 0.3,
  },
];

/** What an option does against the baseline, as keys of its differences, those that matter most first. */
export interface Finding {
  label: string;
  /** has less of it, which is what a buyer wants; or more of it */
  buys: string[];
  costs: string[];
  /** differs by too little to decide by, or by nothing that could be told */
  hardly: string[];
  same: string[];
  /** one of the two has no such number: this option, or the baseline */
  lacks: string[];
  gains: string[];
  /** neither has one, though others of the comparison do */
  neither: string[];
}

/** A finding for each option but the baseline. */
export function findingsOf({ options, baseline }: Comparison): Finding[] {
  return options.filter(({ label }) => label !== baseline).map(findingOf);
}

function findingOf({ label, differences }: ComparedOption): Finding {
  const finding: Finding = { label, buys: [], costs: [], hardly: [], same: [], lacks: [], gains: [], neither: [] };
  const weighed = WEIGHED.flatMap((row) => {
    const difference = differences.find(({ key }) => key === row.quantity.key);
    return difference ? [{ row, difference }] : [];
  });
  for (const { row, difference } of weighed.filter(minded).sort((a, b) => sizeOf(b) - sizeOf(a))) {
    finding[whereOf(row, difference)].push(row.quantity.key);
  }
  return finding;
}

/** Is there enough of it, here or there, for anyone to mind? */
function minded({ row: { from }, difference: { baseline, value } }: { row: Weighed; difference: Difference }): boolean {
  return from === undefined || baseline === null || value === null || Math.max(baseline, value) >= from;
}

function whereOf(row: Weighed, difference: Difference): Exclude<keyof Finding, 'label'> {
  const { baseline, value, none } = difference;
  if (baseline === null) return value === null ? 'neither' : 'gains';
  if (value === null) return 'lacks';
  if (none) return 'same';
  if (!worthTelling(row, difference)) return 'hardly';
  return value < baseline === (row.wants === undefined) ? 'buys' : 'costs';
}

function worthTelling({ quantity: { kind } }: Weighed, { share, difference }: Difference): boolean {
  if (kind === 'temperature') return Math.abs(difference!) >= HARDLY_KELVIN;
  return share === null || Math.abs(share) >= HARDLY;
}

/** For the order in which differences are told. A temperature counts against a hundred kelvins. */
export function sizeOf({ row, difference: { share, difference } }: { row: Weighed; difference: Difference }): number {
  if (difference === null) return 0;
  if (row.quantity.kind === 'temperature') return Math.abs(difference) / 100;
  return share === null ? Number.MAX_VALUE : Math.abs(share);
}
