/** The numbers of an option, row by row, printed as the command prints them, and what differs from another option. */
import { platesOf } from '../design/plates.js';
import { cookLength, costRows, costsOf, currencyOf, PAYBACK, paybackNumber, paybackOf } from '../study/costs.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { held, heldAt, heldLoss, LOSSES, lostAt, ofResult, plateOf, type Quantity } from '../study/quantities.js';
import { MISSING, sameTime, tellingOf } from '../study/compare/told.js';
import { sayAlone, sayIn, sayQuantity, type Say } from '../words/quantity.js';
import { wordsOf } from '../words/quantityWords.js';
import type { UnitChoice } from '../units/choice.js';
import { type UnitSystem, withCurrency } from '../units/index.js';

/** A number of the answer as the page tells it. */
export interface NumberRow {
  quantity: Omit<Quantity, 'of'>;
  label: string;
  group: string;
  /** as the command prints it */
  text: string;
  /** SI; null: does not exist */
  si: number | null;
  /** of money */
  currency?: string;
}

/** Of one design, or beside others where there is room for one system alone. */
type NumberUnits = UnitChoice;

/**
 * Rows of a result that has its warm-up; all options of one page give rows with the same meaning under the same key.
 *
 * @param beside results of all options, the first of them what the others are held against
 */
export function numberRows(
  result: EstimateResult,
  units: NumberUnits,
  beside: readonly EstimateResult[] = [result],
): NumberRow[] {
  const say = units === 'both' ? sayIn('shop') : sayAlone(units);
  const { steady, design } = result;
  const losses = LOSSES.filter((place) => steady && lostAt(steady.heatLoss_W, place) !== 0);
  const groups: [string, Quantity[]][] = [
    ['Warming up', (['gauge_s', 'soaked_s', 'woodToGauge_kg', 'woodToSoaked_kg'] as const).map(ofResult)],
    ['Holding it there', (['wood_kg_per_s', 'fire_W'] as const).map(held)],
    [
      'Holding it there',
      (steady?.stations ?? []).flatMap(({ name }) => [heldAt('thermometer_K', name), heldAt('steel_K', name)]),
    ],
    [
      'Holding it there',
      (['grate_K', 'endToEnd_K', 'topToBottom_K', 'racks_K'] as const)
        .map(held)
        .filter(({ of }) => of({ result }) !== null),
    ],
    ['Where the heat goes, holding', losses.map(heldLoss)],
    ['Air and draft, holding', steady ? AIR.map(held) : []],
    ['Steel', [...platesOf(design).map(plateOf), ofResult('steel_kg')]],
    ['What it costs', costsBeside(result, beside)],
  ];
  const currency = currencyOf(beside.map((each) => each.design));
  return groups.flatMap(([group, quantities]) =>
    quantities.map((quantity): NumberRow => {
      const si = quantity.of({ result });
      const gauge = quantity.at === design.gauge ? ' (gauge)' : '';
      return {
        quantity,
        label: `${wordsOf(quantity, 'page')}${gauge}`,
        group,
        text: si === null ? missing(quantity) : `${bound(quantity)}${valueText(quantity, si, say, currency)}`,
        si,
        ...(currency === undefined ? {} : { currency }),
      };
    }),
  );
}

/** What the options cost, and when this one is paid back, as far as their designs have prices. */
function costsBeside(result: EstimateResult, beside: readonly EstimateResult[]): Quantity[] {
  const pits = beside.map((each) => ({ result: each }));
  const costs = costsOf(pits, cookLength(beside[0].design));
  const cooks = result === beside[0] ? null : paybackNumber(paybackOf(costs, { result }, pits[0]));
  return [
    ...costRows(costs).filter(({ of }) => pits.some((pit) => of(pit) !== null)),
    ...(cooks === null ? [] : [{ ...PAYBACK, of: () => cooks }]),
  ];
}

function valueText(quantity: NumberRow['quantity'], si: number, say: Say, currency?: string): string {
  if (quantity.kind !== 'money' && quantity.kind !== 'cooks') return sayQuantity(say, quantity, si);
  return tellingOf(quantity, [{ baseline: si, value: si, none: true }], 'shop', currency).quantity(si);
}

const AIR = [
  'stackBase_Pa',
  'firebox_Pa',
  'air_kg_per_s',
  'excessAirRatio',
  'intakeVelocity_m_per_s',
  'stackVelocity_m_per_s',
] as const;

function missing({ missing }: NumberRow['quantity']): string {
  return missing === 'never' ? 'never' : MISSING;
}

/** Said before the number. */
function bound({ name }: NumberRow['quantity']): string {
  return name === 'gauge_s' ? 'at least ' : '';
}

/** A number as it stands beside those of other options, and what it differs by from the first one's. */
interface ToldNumber {
  text: string;
  /**
   * `+12 min`, `−0.4 lb/h`, `same` where it is too little to be told from none; empty where one of them doesn't exist
   */
  difference: string;
}

/**
 * One row of all options, told to the same last digit; the first option is the one that the others are held against.
 */
export function toldBeside(
  rows: readonly (NumberRow | undefined)[],
  system: UnitSystem = 'shop',
): (ToldNumber | null)[] {
  const quantity = rows.find((row) => row !== undefined)?.quantity;
  if (!quantity) return rows.map(() => null);
  const base = rows[0]?.si ?? null;
  const values = rows.map((row) => row?.si ?? null);
  const times = quantity.kind === 'time' ? values.filter((value) => value !== null) : null;
  const pairs = values.map((value) => ({
    baseline: base,
    value,
    none:
      value !== null &&
      base !== null &&
      (Math.abs(value - base) <= quantity.none(base) || (times !== null && sameTime(value, base, times))),
  }));
  const telling = tellingOf(quantity, pairs, system, rows.find((row) => row !== undefined)?.currency);
  return rows.map((row, i) => {
    if (!row) return null;
    const apart = i === 0 ? '' : telling.difference(pairs[i]);
    const bare = apart === '' || apart === 'same' || apart === MISSING || telling.unit === '';
    const told = () => (quantity.kind === 'money' ? signedMoney(apart, telling.unit) : `${apart} ${telling.unit}`);
    return {
      text: `${row.si === null ? '' : bound(quantity)}${telling.quantity(row.si)}`,
      difference: apart === MISSING ? '' : (bare ? apart : told()).replace(/^-/, '−'),
    };
  });
}

/** `+$108` for `+108`. */
function signedMoney(difference: string, currency: string): string {
  return difference.slice(0, 1) + withCurrency(difference.slice(1), currency);
}
