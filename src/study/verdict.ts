import { format, type Kind, type UnitSystem } from '../units.js';
import type { ComparedOption, Comparison, Difference } from './compare.js';

/** Differences below this share are told as hardly any. */
const HARDLY = 0.05;

/** A number that a buyer weighs up: less of it is what he wants. */
interface Weighed {
  key: string;
  kind: Kind;
  less: string;
  more: string;
  /** when it stays as it is */
  same: string;
}

const WEIGHED: readonly Weighed[] = [
  {
    key: 'swing.thermometer_K',
    kind: 'temperatureDifference',
    less: 'a smaller swing under splits',
    more: 'a larger swing under splits',
    same: 'swing under splits',
  },
  {
    key: 'door.dip_K',
    kind: 'temperatureDifference',
    less: 'a smaller dip when the door opens',
    more: 'a larger dip when the door opens',
    same: 'dip when the door opens',
  },
  {
    key: 'door.recovery_s',
    kind: 'time',
    less: 'a quicker recovery after it',
    more: 'a slower recovery after it',
    same: 'recovery after it',
  },
  {
    key: 'gust.dip_K',
    kind: 'temperatureDifference',
    less: 'a smaller dip in a gust',
    more: 'a larger dip in a gust',
    same: 'dip in a gust',
  },
  {
    key: 'hold.wood_kg_per_s',
    kind: 'massFlow',
    less: 'less wood to hold',
    more: 'more wood to hold',
    same: 'wood to hold',
  },
  {
    key: 'hold.endToEnd_K',
    kind: 'temperatureDifference',
    less: 'more even temperatures end to end',
    more: 'less even temperatures end to end',
    same: 'evenness end to end',
  },
  {
    key: 'hold.hottestOutside_K',
    kind: 'temperature',
    less: 'a cooler hottest outside',
    more: 'a hotter hottest outside',
    same: 'hottest outside',
  },
  { key: 'soaked_s', kind: 'time', less: 'a shorter soak', more: 'a longer soak', same: 'time to soak' },
  {
    key: 'woodToSoaked_kg',
    kind: 'mass',
    less: 'less wood to soak',
    more: 'more wood to soak',
    same: 'wood to soak',
  },
  { key: 'steel_kg', kind: 'mass', less: 'less steel', more: 'more steel', same: 'weight of steel' },
];

/**
 * What each option buys and costs against the baseline, a sentence each, from the numbers alone.
 *
 * @param system units of the numbers in it
 */
export function verdictOf(comparison: Comparison, system: UnitSystem = 'shop'): string {
  const { options, baseline } = comparison;
  const others = options.filter(({ label }) => label !== baseline);
  if (others.length === 0) return 'Nothing to compare: there is one option.';
  return others.map((option) => sentence(option, comparison, system)).join('\n');
}

function sentence(option: ComparedOption, { baseline, settings, options }: Comparison, system: UnitSystem): string {
  const head = `${option.label} instead of ${baseline}`;
  const from = options.find(({ label }) => label === baseline)!;
  const cannot = [from, option].filter(({ result }) => !result.steady).map(({ label }) => label);
  if (cannot.length > 0) return `${head}: no fire holds the target with ${cannot.join(' or ')}; the warnings say why.`;
  const weighed = WEIGHED.flatMap((row) => {
    const difference = option.differences.find(({ key }) => key === row.key);
    return difference && difference.baseline !== null && difference.value !== null ? [{ row, difference }] : [];
  });
  const same = weighed.filter(({ difference }) => difference.none);
  const moved = weighed.filter(({ difference }) => !difference.none);
  const told = moved.filter(({ difference }) => difference.share === null || Math.abs(difference.share) >= HARDLY);
  const hardly = moved.filter((each) => !told.includes(each));
  const bySize = [...told].sort((a, b) => sizeOf(b.difference) - sizeOf(a.difference));
  const words = (sign: -1 | 1) =>
    bySize
      .filter(({ difference }) => Math.sign(difference.difference!) === sign)
      .map(({ row, difference }) => {
        const cost = row.key === 'steel_kg' ? costOf(option, settings.currency) : '';
        const [to, was] = [difference.value!, difference.baseline!].map((value) => format(row.kind, value, system));
        return `${sign < 0 ? row.less : row.more} (${to} against ${was}${cost})`;
      });
  const [buys, costs] = [words(-1), words(1)];
  if (moved.length === 0) return `${head}: no difference in anything a builder weighs up.`;
  const small = hardly.map(({ row, difference }) => `${row.same} (${signed(difference.share!)})`);
  const clauses = [
    buys.length > 0 ? `buys ${list(buys)}` : 'buys nothing that these numbers show',
    costs.length > 0 ? `costs ${list(costs)}` : 'costs nothing that they show',
    ...(small.length > 0 ? [`makes hardly any difference to ${list(small)}`] : []),
    ...(same.length > 0 ? [`makes no difference to ${list(same.map(({ row }) => row.same))}`] : []),
  ];
  return `${head} ${clauses.join('; ')}.`;
}

function costOf({ differences }: ComparedOption, currency = ''): string {
  const cost = differences.find(({ key }) => key === 'steelCost')?.difference;
  if (cost == null) return '';
  return `, ${money(Math.abs(cost), currency)} ${cost < 0 ? 'less' : 'more'}`;
}

/** An amount to the nearest whole, or to three figures when small. */
export function money(amount: number, currency: string): string {
  const plain = Math.abs(amount) >= 100 ? Math.round(amount) : Number(amount.toPrecision(3));
  const number = String(Math.abs(plain)).replace(/\B(?=(\d{3})+$)/g, ',');
  const sign = plain < 0 ? '-' : '';
  return /^[A-Za-z]/.test(currency) ? `${sign}${number} ${currency}` : `${sign}${currency}${number}`;
}

function sizeOf({ share }: Difference): number {
  return share === null ? Infinity : Math.abs(share);
}

function signed(share: number): string {
  const percent = 100 * share;
  return `${percent > 0 ? '+' : '-'}${Number(Math.abs(percent).toPrecision(2))} %`;
}

function list(items: string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}
