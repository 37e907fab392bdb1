/** The numbers of an option, row by row, printed as the command prints them, and what differs from another option. */
import { HEAT_LOSS_LABELS, stationLabel } from '../words/labels.js';
import { sayIn } from '../words/quantity.js';
import { NO_DIFFERENCE } from '../study/compare/measures.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { MISSING, sameTime, tellingOf } from '../study/compare/told.js';
import { format, type Kind } from '../units/index.js';

type SayOptions = { digits?: number; shop?: string; si?: string };

export interface NumberRow {
  id: string;
  label: string;
  group: string;
  /** as the command prints it */
  text: string;
  /** SI; null: does not exist */
  si: number | null;
  kind: Kind;
  options?: SayOptions;
  /** said before the number */
  before?: string;
  /** known only with the warm-up */
  warmUp: boolean;
}

/** Shop units with SI in brackets where there is room, or shop units alone. */
export type NumberUnits = 'both' | 'shop';

const sayBoth = sayIn('shop');

function sayShop(kind: Kind, si: number | null, { digits, shop }: SayOptions = {}): string {
  return format(kind, si, 'shop', {
    ...(digits === undefined ? {} : { digits }),
    ...(shop === undefined ? {} : { unit: shop }),
  });
}

const WARM_UP = 'Warming up';
const HOLDING = 'Holding it there';
const LOSS = 'Where the heat goes, holding';
const AIR = 'Air and draft, holding';

/** Rows of a result that has its warm-up; all options of one page give rows with the same meaning under the same id. */
export function numberRows(result: EstimateResult, units: NumberUnits): NumberRow[] {
  const say = units === 'both' ? sayBoth : sayShop;
  const { steady, warmUp, design, geometry } = result;
  const row = (
    group: string,
    id: string,
    label: string,
    kind: Kind,
    si: number | null | undefined,
    options?: SayOptions,
    before = '',
  ): NumberRow => ({
    id,
    label,
    group,
    text: si == null ? (group === WARM_UP ? 'never' : MISSING) : `${before}${say(kind, si, options)}`,
    si: si ?? null,
    kind,
    options,
    before,
    warmUp: group === WARM_UP,
  });
  return [
    row(WARM_UP, 'gauge', 'Thermometer first reads the target', 'time', warmUp?.gauge_s, undefined, 'at least '),
    row(WARM_UP, 'soaked', 'Steel soaked', 'time', warmUp?.soaked_s),
    row(WARM_UP, 'wood-gauge', 'Wood to the first reading', 'mass', warmUp?.woodToGauge_kg),
    row(WARM_UP, 'wood-soaked', 'Wood to soaked', 'mass', warmUp?.woodToSoaked_kg),
    row(HOLDING, 'wood', 'Wood an hour', 'massFlow', steady?.wood_kg_per_s),
    row(HOLDING, 'fire', 'Fire, all of it lost again', 'power', steady?.fire_W),
    ...(steady?.stations ?? []).flatMap(({ name, thermometer_K, steel_K }) => {
      const at = stationLabel(name) + (name === design.gauge ? ' (gauge)' : '');
      return [
        row(HOLDING, `thermometer ${name}`, `Thermometer, ${at}`, 'temperature', thermometer_K),
        row(HOLDING, `steel ${name}`, `Steel, ${at}`, 'temperature', steel_K),
      ];
    }),
    ...(steady ? lossRows(steady, row) : []),
    ...(steady ? airRows(steady, row) : []),
    ...geometry.parts.flatMap(({ name, plate_m, doorPlate_m }) => [
      row('Steel', `plate ${name}`, `Plate, ${name}`, 'plate', plate_m),
      ...(doorPlate_m === undefined
        ? []
        : [row('Steel', `plate ${name} door`, `Plate, ${name} door`, 'plate', doorPlate_m)]),
    ]),
    row('Steel', 'weight', 'Weight of all steel', 'mass', geometry.totalSteelMass_kg),
  ];
}

type MakeRow = (
  group: string,
  id: string,
  label: string,
  kind: Kind,
  si: number | null | undefined,
  options?: SayOptions,
) => NumberRow;

function lossRows({ heatLoss_W }: SteadyState, row: MakeRow): NumberRow[] {
  const places = Object.keys(HEAT_LOSS_LABELS) as (keyof typeof HEAT_LOSS_LABELS)[];
  return places
    .filter((place) => heatLoss_W[place] !== 0)
    .map((place) => row(LOSS, `loss ${place}`, capital(HEAT_LOSS_LABELS[place]), 'power', heatLoss_W[place]));
}

function airRows({ draft, air_kg_per_s, excessAirRatio }: SteadyState, row: MakeRow): NumberRow[] {
  const pressure = { digits: 2 };
  const speed = { digits: 2, shop: 'ft/s' };
  return [
    row(AIR, 'draft-stack', 'Draft at the stack base', 'pressure', draft.stackBase_Pa, pressure),
    row(AIR, 'draft-firebox', 'Draft in the firebox', 'pressure', draft.firebox_Pa, pressure),
    row(AIR, 'air', 'Air', 'massFlow', air_kg_per_s, { shop: 'lb/h', si: 'g/s' }),
    row(AIR, 'excess', 'Air, times what the wood needs', 'number', excessAirRatio, { digits: 2 }),
    row(AIR, 'intake-speed', 'Speed in the vents', 'speed', draft.intakeVelocity_m_per_s, speed),
    row(AIR, 'stack-speed', 'Speed in the stack', 'speed', draft.stackVelocity_m_per_s, speed),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A number as it stands beside those of other options, and what it differs by from the first one's. */
export interface ToldNumber {
  text: string;
  /** `+12 min`, `−0.4 lb/h`, `same` where it is too little to be told from none; empty where one of them doesn't exist */
  difference: string;
}

/** One row of all options, told to the same last digit; the first option is the one that the others are held against. */
export function toldBeside(rows: readonly (NumberRow | undefined)[]): (ToldNumber | null)[] {
  const known = rows.find((row) => row !== undefined);
  if (!known) return rows.map(() => null);
  const base = rows[0]?.si ?? null;
  const values = rows.map((row) => row?.si ?? null);
  const times = known.kind === 'time' ? values.filter((value) => value !== null) : null;
  const pairs = values.map((value) => ({
    baseline: base,
    value,
    none:
      value !== null &&
      base !== null &&
      (Math.abs(value - base) <= leastDifference(known.kind, base) || (times !== null && sameTime(value, base, times))),
  }));
  const { kind, options } = known;
  const missing = known.warmUp ? 'never' : MISSING;
  const telling = tellingOf({ kind, missing, unit: options?.shop ? { shop: options.shop } : {} }, pairs, 'shop');
  return rows.map((row, i) => {
    if (!row) return null;
    const apart = i === 0 ? '' : telling.difference(pairs[i]);
    const bare = apart === '' || apart === 'same' || apart === MISSING || telling.unit === '';
    return {
      text: `${row.si === null ? '' : (row.before ?? '')}${telling.quantity(row.si)}`,
      difference: apart === MISSING ? '' : (bare ? apart : `${apart} ${telling.unit}`).replace(/^-/, '−'),
    };
  });
}

/** Differences up to this are none, as in comparisons of the command. */
function leastDifference(kind: Kind, base: number): number {
  if (kind === 'temperature') return NO_DIFFERENCE.temperature;
  if (kind === 'time') return Math.max(NO_DIFFERENCE.time, NO_DIFFERENCE.timeShare * Math.abs(base));
  if (kind === 'plate') return NO_DIFFERENCE.plate;
  return (kind === 'mass' ? NO_DIFFERENCE.weight : NO_DIFFERENCE.share) * Math.abs(base);
}
