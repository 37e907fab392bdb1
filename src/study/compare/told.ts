/**
 * How the numbers of a comparison are told: all numbers of a row, and their differences, to one and the same last
 * digit.
 *
 * A difference is computed from full precision; printed, it is that of the two numbers beside it, so that whoever
 * subtracts them finds it right. The last digit is chosen so fine that the two ways differ by less than a fifth of any
 * difference worth telling.
 */
import {
  convert,
  formatPlate,
  formatTime,
  timeStep,
  unitOf,
  withCurrency,
  type Kind,
  type UnitSystem,
} from '../../units/index.js';
import type { Quantity } from '../quantities.js';
import type { Difference } from './compare.js';

/** What of a row decides how it is told. */
export interface Row {
  kind: Kind | 'money' | 'cooks';
  /** in place of the usual unit of the kind, by system */
  unit?: Partial<Record<UnitSystem, string>>;
  missing?: Quantity['missing'];
  /** good to no more than two figures, however large the differences */
  rough?: boolean;
  /** where counting ends */
  most?: number;
}

type Pair = Pick<Difference, 'baseline' | 'value' | 'none'>;

/** How the numbers of one row are printed. */
export interface Telling {
  /** of the numbers; empty where they bear it themselves */
  unit: string;
  /** a value as it stands in a table whose row names the unit */
  number(value: number | null): string;
  /** the same with its unit */
  quantity(value: number | null): string;
  /**
   * a difference with its sign, `same`, or a dash where one of two numbers is missing or beyond counting; empty where
   * both are
   */
  difference(pair: Pair): string;
  /** the difference as a percentage of the printed baseline; empty where it is none, or no percentage of anything */
  percent(pair: Pair): string;
  /** are two values one as they are printed? */
  alike(a: number, b: number): boolean;
  /** a difference alone, without the numbers it is of */
  signed(difference: number): string;
}

/** Stands where there is no number. */
export const MISSING = '–';

/** Significant figures of the smallest number of a row, and of the largest, which may not get more. */
const FIGURES = { usual: 3, rough: 2, most: 4 };
const ROUGH: ReadonlySet<string> = new Set(['temperatureDifference', 'pressure']);
/** Last digits that a difference worth telling takes at least. */
const STEPS_APART = 5;
/** No thermometer is told finer than this [°F or K]. */
const FINEST_DEGREE = 0.1;
/** Kinds that can't be a percentage of themselves. */
const NO_SHARE: ReadonlySet<string> = new Set(['temperature', 'share', 'plate']);

/**
 * @param pairs every option's value beside the baseline's, the baseline's own among them
 * @param words in place of a number that isn't there
 */
export function tellingOf(
  row: Row,
  pairs: readonly Pair[],
  system: UnitSystem,
  currency = '',
  words?: string,
): Telling {
  const { kind } = row;
  const missing = words ?? (row.missing === 'never' ? 'never' : MISSING);
  if (kind === 'plate') return plates(missing, system);
  if (kind === 'cooks') return COOKS;
  const unit = unitFor(row, system);
  const step = stepOf(row, pairs, system);
  const inUnit = (si: number) => (kind === 'time' ? si : valueIn(row, si, system));
  const steps = (value: number) => whole(inUnit(value) / step);
  const apart = ({ baseline, value }: Pair) => steps(value!) - steps(baseline!);
  const printed = (count: number) => (kind === 'time' ? formatTime(count * step, step) : decimal(count * step, step));
  const withUnit = (text: string) => {
    if (kind === 'money') return withCurrency(text, currency);
    return unit === '' ? text : `${text} ${unit}`;
  };
  const counted = (value: number) => value < (row.most ?? Infinity);
  const number = (value: number | null) =>
    value === null ? missing : `${printed(steps(value))}${counted(value) ? '' : '+'}`;
  const bothThere = ({ baseline, value }: Pair) => baseline !== null && value !== null;
  const same = (pair: Pair) => pair.none || apart(pair) === 0;
  const signedSteps = (count: number) => (count === 0 ? '0' : `${count > 0 ? '+' : '-'}${printed(Math.abs(count))}`);
  return {
    unit: kind === 'money' ? currency : unit,
    number,
    quantity: (value) => (value === null ? missing : withUnit(number(value))),
    difference(pair) {
      if (!bothThere(pair)) return pair.baseline === null && pair.value === null ? '' : MISSING;
      if (counted(pair.baseline!) !== counted(pair.value!)) return MISSING;
      return same(pair) ? 'same' : signedSteps(apart(pair));
    },
    percent(pair) {
      if (!bothThere(pair) || same(pair) || NO_SHARE.has(kind)) return '';
      if (counted(pair.baseline!) !== counted(pair.value!)) return '';
      const from = Math.abs(steps(pair.baseline!));
      return from === 0 ? '' : percentOf(apart(pair) / from);
    },
    alike: (a, b) => steps(a) === steps(b),
    signed: (difference) =>
      signedSteps(
        whole(
          (kind === 'time' ? difference : valueIn({ ...row, kind: asDifference(kind) }, difference, system)) / step,
        ),
      ),
  };
}

/** When something is paid back: as it is, never held against another. */
const COOKS: Telling = {
  unit: 'cooks',
  number: cooksText,
  quantity: (value) =>
    value !== null && /^\d/.test(cooksText(value)) ? `${cooksText(value)} cooks` : cooksText(value),
  difference: () => '',
  percent: () => '',
  alike: (a, b) => cooksText(a) === cooksText(b),
  signed: String,
};

/** Cooks to two figures: what is saved in one is not known better. */
export function cooksText(value: number | null): string {
  if (value === null) return MISSING;
  if (value === Infinity) return 'never';
  if (value === 0) return 'at once';
  return value < 0 ? `gone after ${roughly(-value)}` : roughly(value);
}

function roughly(cooks: number): string {
  return decimal(Number(cooks.toPrecision(2)), 1);
}

/** `+17 %`, `-1.5 %`; a hundredth of one is none. */
function percentOf(share: number): string {
  const size = Math.abs(100 * share);
  const text = size >= 9.95 ? decimal(Math.round(size), 1) : size.toFixed(1);
  return Number(text) === 0 ? '' : `${share > 0 ? '+' : '-'}${text} %`;
}

/** The last digit that times are told to where they stand side by side [s]. */
export function timesStep(times: readonly number[]): number {
  const there = times.map(Math.abs).filter((time) => time > 0 && Number.isFinite(time));
  if (there.length === 0) return 1;
  const [least, most] = [Math.min(...there), Math.max(...there)];
  // beside long times, seconds count for what would vanish without them alone
  return most < 900 || least < 120 || (least < 300 && most < 5400) ? 1 : Math.max(60, timeStep(least));
}

/** Do two times read the same where they stand side by side with others? */
export function sameTime(a: number, b: number, times: readonly number[]): boolean {
  const step = timesStep(times);
  return whole(a / step) === whole(b / step);
}

function plates(missing: string, system: UnitSystem): Telling {
  const number = (value: number | null) => (value === null ? missing : formatPlate(value, system));
  return {
    unit: '',
    number,
    quantity: number,
    difference({ baseline, value, none }) {
      if (baseline === null || value === null) return baseline === value ? '' : MISSING;
      if (none || number(baseline) === number(value)) return 'same';
      return value > baseline ? 'thicker' : 'thinner';
    },
    percent: () => '',
    alike: (a, b) => number(a) === number(b),
    signed: (difference) => `${difference < 0 ? '-' : '+'}${number(Math.abs(difference))}`,
  };
}

function unitFor({ kind, unit }: Row, system: UnitSystem): string {
  if (kind === 'money' || kind === 'cooks' || kind === 'time') return '';
  return unit?.[system] ?? unitOf(kind, system);
}

function valueIn(row: Row, si: number, system: UnitSystem): number {
  const { kind } = row;
  if (kind === 'money' || kind === 'cooks') return si;
  const unit = row.unit?.[system];
  return convert(kind, si, system, unit === undefined ? {} : { unit });
}

/** Differences of temperatures take no offset. */
function asDifference(kind: Row['kind']): Row['kind'] {
  return kind === 'temperature' ? 'temperatureDifference' : kind;
}

function stepOf(row: Row, pairs: readonly Pair[], system: UnitSystem): number {
  const { kind } = row;
  const values = pairs.flatMap(({ baseline, value }) => [baseline, value].filter((each) => each !== null));
  if (kind === 'time') return timesStep(values);
  if (kind === 'temperature' || kind === 'share') return 1;
  const sizes = values.map((value) => Math.abs(valueIn(row, value, system))).filter((size) => size > 0);
  if (sizes.length === 0) return 1;
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  if (kind === 'money') return least >= 99.5 ? 1 : 0.01;
  const apart = pairs.flatMap(({ baseline, value, none }) =>
    baseline === null || value === null || none || value === baseline
      ? []
      : [Math.abs(valueIn(row, value, system) - valueIn(row, baseline, system))],
  );
  // of the largest, so long as the smallest keeps one
  if (row.rough) return Math.min(digit(most, FIGURES.rough), digit(least, 1));
  const wanted = Math.min(
    digit(least, ROUGH.has(kind) ? FIGURES.rough : FIGURES.usual),
    ...apart.map((each) => digit(each / STEPS_APART, 1)),
  );
  const step = Math.min(Math.max(wanted, digit(most, FIGURES.most)), digit(least, FIGURES.rough));
  return kind === 'temperatureDifference' ? Math.max(step, FINEST_DEGREE) : step;
}

/** The place of the last of so many figures. */
function digit(size: number, figures: number): number {
  return 10 ** (Math.floor(Math.log10(size)) - figures + 1);
}

/** Rounded half away from zero, and never to a negative nothing. */
function whole(count: number): number {
  // a hair, so that what lies on the edge in decimals does not fall off it in binary
  return Math.sign(count) * Math.floor(Math.abs(count) + 0.5 + 1e-9) + 0;
}

/** A multiple of a step in figures, with commas for its thousands. */
function decimal(value: number, step: number): string {
  const [head, tail] = Math.abs(value)
    .toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)))
    .split('.');
  return `${value < 0 ? '-' : ''}${head.replace(/\B(?=(\d{3})+$)/g, ',')}${tail === undefined ? '' : `.${tail}`}`;
}
