/** The numbers of an option, row by row, printed as the command prints them, and what differs from another option. */
import { HEAT_LOSS_LABELS, stationLabel } from '../charts/labels.js';
import { sayIn } from '../report/quantity.js';
import { NO_DIFFERENCE } from '../study/measures.js';
import type { EstimateResult, SteadyState } from '../study/result.js';
import { format, type Kind } from '../units.js';

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
    text: si == null ? (kind === 'time' ? 'never' : '–') : `${before}${say(kind, si, options)}`,
    si: si ?? null,
    kind,
    options,
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

/**
 * What a number differs by from the first option's: `+12 min`, `−0.4 lb/h`, `same` where it is too little to be told from none.
 * Empty where one of them doesn't exist.
 */
export function differenceText(own: NumberRow, base: NumberRow | undefined): string {
  if (!base || own.si === null || base.si === null) return '';
  const by = own.si - base.si;
  if (own.text === base.text || Math.abs(by) <= leastDifference(own.kind, base.si)) return 'same';
  const sign = by > 0 ? '+' : '−';
  const size = Math.abs(by);
  if (own.kind === 'temperature') return `${sign}${format('temperatureDifference', size, 'shop', { digits: 2 })}`;
  const unit = own.kind === 'time' ? 'min' : own.options?.shop;
  return `${sign}${format(own.kind, size, 'shop', { digits: 2, ...(unit ? { unit } : {}) })}`;
}

/** Differences up to this are none, as in comparisons of the command. */
function leastDifference(kind: Kind, base: number): number {
  if (kind === 'temperature') return NO_DIFFERENCE.temperature;
  if (kind === 'time') return Math.max(NO_DIFFERENCE.time, NO_DIFFERENCE.timeShare * Math.abs(base));
  return (kind === 'mass' ? NO_DIFFERENCE.weight : NO_DIFFERENCE.share) * Math.abs(base);
}
