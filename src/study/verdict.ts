import { format, type Kind, type UnitSystem } from '../units.js';
import type { ComparedOption, Comparison, Difference } from './compare.js';

/** Differences below this share, of temperatures below this many kelvins, are told as hardly any. */
const HARDLY = 0.05;
const HARDLY_KELVIN = 10;

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
    less: 'a quicker recovery after the door',
    more: 'a slower recovery after the door',
    same: 'recovery after the door',
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
  const told = moved.filter(({ row, difference }) => worthTelling(row, difference));
  const hardly = moved.filter((each) => !told.includes(each));
  const bySize = [...told].sort((a, b) => sizeOf(b) - sizeOf(a));
  const words = (sign: -1 | 1) =>
    bySize
      .filter(({ difference }) => Math.sign(difference.difference!) === sign)
      .map(({ row, difference }) => {
        const cost = row.key === 'steel_kg' ? costOf(option, settings.currency) : '';
        const digits = row.kind === 'temperatureDifference' ? { digits: 2 } : {};
        const [to, was] = [difference.value!, difference.baseline!].map((each) =>
          format(row.kind, each, system, Math.abs(each) * 1.8 >= 99.5 ? {} : digits),
        );
        return `${sign < 0 ? row.less : row.more} (${to} against ${was}${cost})`;
      });
  const [buys, costs] = [words(-1), words(1)];
  if (moved.length === 0) return `${head}: no difference in anything a builder weighs up.`;
  const small = hardly.map(({ row, difference }) => `${row.same} (${signed(row, difference, system)})`);
  const clauses = [
    ...(told.length > 0
      ? [
          buys.length > 0 ? `buys ${list(buys)}` : 'buys nothing that these numbers show',
          costs.length > 0 ? `costs ${list(costs)}` : 'costs nothing that they show',
        ]
      : []),
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

/** An amount of money: whole from a hundred on, else to the cent. */
export function money(amount: number, currency: string): string {
  const size = Math.abs(amount);
  const number = size >= 99.5 ? String(Math.round(size)).replace(/\B(?=(\d{3})+$)/g, ',') : size.toFixed(2);
  const sign = amount < 0 ? '-' : '';
  return /^[A-Za-z]/.test(currency) ? `${sign}${number} ${currency}` : `${sign}${currency}${number}`;
}

interface WeighedDifference {
  row: Weighed;
  difference: Difference;
}

function worthTelling({ kind }: Weighed, { share, difference }: Difference): boolean {
  if (kind === 'temperature') return Math.abs(difference!) >= HARDLY_KELVIN;
  return share === null || Math.abs(share) >= HARDLY;
}

/** For the order in which differences are told. A temperature counts against a hundred kelvins. */
function sizeOf({ row, difference: { share, difference } }: WeighedDifference): number {
  if (row.kind === 'temperature') return Math.abs(difference!) / 100;
  return share === null ? Infinity : Math.abs(share);
}

function signed({ kind }: Weighed, { share, difference }: Difference, system: UnitSystem): string {
  const sign = difference! > 0 ? '+' : '-';
  if (kind === 'temperature') {
    return sign + format('temperatureDifference', Math.abs(difference!), system, { digits: 2 });
  }
  return `${sign}${Number(Math.abs(100 * share!).toPrecision(2))} %`;
}

function list(items: string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}
