import { stationLabel } from '../charts/labels.js';
import type { ComparedOption, Comparison, Difference } from '../study/compare.js';
import { measuresOf, type Measure, type MeasureGroup } from '../study/measures.js';
import { convert, format, unitOf, type UnitSystem } from '../units.js';

/** Heads of the table's groups. */
export const GROUP_WORDS: Record<MeasureGroup, string> = {
  steel: 'Steel',
  'warm-up': 'Warm-up',
  holding: 'Holding',
  losses: 'Where the heat goes',
  temperatures: 'Thermometers while holding',
  events: 'Events',
  outside: 'Hottest outside while holding',
  air: 'Air while holding',
  cook: 'The cook of the design',
};

export interface CompareRow {
  measure: Measure;
  words: string;
  /** one an option, in their order; the baseline's own has no difference */
  cells: Difference[];
}

/** The rows of a comparison's table: what is measured, and every option's number beside the baseline's. */
export function compareRows(comparison: Comparison): CompareRow[] {
  return measuresOf(comparison.options, comparison.settings).map((measure) => ({
    measure,
    words:
      measure.group === 'temperatures' || measure.group === 'outside' ? stationLabel(measure.words) : measure.words,
    cells: comparison.options.map((option) => differenceOf(option, measure.key)),
  }));
}

function differenceOf({ differences }: ComparedOption, key: string): Difference {
  return differences.find((each) => each.key === key)!;
}

/** Unit of a measure's column where the usual one would not do for all options alike. */
function unitFor({ kind, key }: Measure, system: UnitSystem): string {
  if (kind === 'money') return '';
  if (key === 'hold.air_kg_per_s') return system === 'shop' ? 'lb/h' : 'g/s';
  if (key === 'door.recovery_s') return 's';
  return unitOf(kind, system);
}

/** What a row is called, its unit with it. */
export function rowHead({ measure, words }: CompareRow, system: UnitSystem, currency = ''): string {
  const unit = measure.kind === 'money' ? currency : unitFor(measure, system);
  return unit === '' ? words : `${words} [${unit}]`;
}

/** A value as it stands in the table, in its row's unit. */
export function valueText(measure: Measure, value: number | null, system: UnitSystem): string {
  if (value === null) return '–';
  const number = inUnit(measure, value, system);
  if (measure.kind === 'temperature') return round(number, 0);
  return figures(number, measure.kind === 'temperatureDifference' || measure.kind === 'pressure' ? 2 : 3);
}

/** A difference as it stands there: with its sign, or `same`. */
export function differenceText(measure: Measure, { difference, none }: Difference, system: UnitSystem): string {
  if (difference === null) return none ? '' : '–';
  if (none) return 'same';
  return (difference > 0 ? '+' : '-') + figures(Math.abs(inUnit(differenceOfKind(measure), difference, system)), 2);
}

export function percentText({ share, none }: Difference): string {
  if (share === null || none) return '';
  const size = Math.abs(100 * share);
  return `${share > 0 ? '+' : '-'}${size >= 10 ? round(size, 0) : size.toFixed(1)} %`;
}

/** Differences of temperatures take no offset. */
function differenceOfKind(measure: Measure): Measure {
  return measure.kind === 'temperature' ? { ...measure, kind: 'temperatureDifference' } : measure;
}

function inUnit(measure: Measure, value: number, system: UnitSystem): number {
  if (measure.kind === 'money') return value;
  const unit = unitFor(measure, system);
  return convert(measure.kind, value, system, unit === '' ? {} : { unit });
}

/** So many significant figures, but whole numbers whole up to three more. */
function figures(number: number, digits: number): string {
  const whole = Math.abs(number) >= 10 ** digits;
  return whole && Math.abs(number) < 10 ** (digits + 1)
    ? round(number, 0)
    : format('number', number, 'si', { digits: Math.max(digits, whole ? 3 : digits) });
}

function round(number: number, decimals: number): string {
  return Number(number.toFixed(decimals)).toLocaleString('en-US', { maximumFractionDigits: decimals });
}

/** A value as a plain number in its row's unit, for a spreadsheet. */
export function plainValue(measure: Measure, value: number | null, system: UnitSystem): string {
  return value === null ? '' : String(Number(inUnit(measure, value, system).toPrecision(7)));
}

/** The same for a difference. */
export function plainDifference(measure: Measure, value: number | null, system: UnitSystem): string {
  return plainValue(differenceOfKind(measure), value, system);
}

export function unitText(measure: Measure, system: UnitSystem, currency = ''): string {
  return measure.kind === 'money' ? currency : unitFor(measure, system);
}
