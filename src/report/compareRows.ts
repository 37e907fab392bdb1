import { stationLabel } from '../words/labels.js';
import type { ComparedOption, Comparison, Difference } from '../study/compare/compare.js';
import { measuresOf, UNITS_OF_KEYS, type Measure, type MeasureGroup } from '../study/compare/measures.js';
import { MISSING, tellingOf, type Telling } from '../study/compare/told.js';
import { convert, unitOf, type UnitSystem } from '../units/index.js';

/** Heads of the table's groups. */
export const GROUP_WORDS: Record<MeasureGroup, string> = {
  plate: 'Plate',
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

/** Times that are never come to, and what they would have burned; all else that is missing is not known. */
const NEVER: ReadonlySet<string> = new Set(['gauge_s', 'soaked_s', 'woodToSoaked_kg']);

/** How the cells of a row are told, all to one last digit. */
export function tellingOfRow({ measure, cells }: CompareRow, system: UnitSystem, currency = ''): Telling {
  const { key, kind } = measure;
  const missing = NEVER.has(key) ? 'never' : MISSING;
  return tellingOf({ kind, missing, unit: UNITS_OF_KEYS[key] ?? {} }, cells, system, currency);
}

/** What a row is called, its unit with it. */
export function rowHead({ words }: CompareRow, { unit }: Telling): string {
  return unit === '' ? words : `${words} [${unit}]`;
}

/** The unit of a row's plain numbers. */
export function plainUnit({ kind, key }: Measure, system: UnitSystem, currency = ''): string {
  return kind === 'money' ? currency : (UNITS_OF_KEYS[key]?.[system] ?? unitOf(kind, system));
}

/** A value as a plain number in its row's unit, for a spreadsheet. */
export function plainValue(measure: Measure, value: number | null, system: UnitSystem): string {
  if (value === null) return '';
  const { kind } = measure;
  const unit = plainUnit(measure, system);
  const number = kind === 'money' ? value : convert(kind, value, system, unit === '' ? {} : { unit });
  return String(Number(number.toPrecision(7)));
}

/** The same for a difference, which takes no offset. */
export function plainDifference(measure: Measure, value: number | null, system: UnitSystem): string {
  return plainValue(
    measure.kind === 'temperature' ? { ...measure, kind: 'temperatureDifference' } : measure,
    value,
    system,
  );
}
