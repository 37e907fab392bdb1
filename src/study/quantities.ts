/**
 * The numbers that a builder goes by, a row each: where a number is found, what it is printed as, what stands when
 * there is none, and which differences of it count for none. Text, CSV, comparison, spread, page, sheets and charts
 * read this table; what the numbers are called stands in words/quantityWords.ts.
 */
import { middleOf } from '../design/places.js';
import { platesOf, type PartPlate } from '../design/plates.js';
import type { Kind, UnitSystem } from '../units/index.js';
import type { EventStudies } from './compare/studyOption.js';
import { gaugeReading } from './estimate/gauge.js';
import { sinks, type Swing } from './events/swing.js';
import { MOST_YEARS } from './plate/plateStudy.js';
import type { EstimateResult, HeatLoss, PlaceState, StationState, SteadyState } from './estimate/result.js';

/** What numbers are found in: a design's estimate and, where they were followed, its events. */
export interface Found {
  result: EstimateResult;
  studies?: EventStudies | null;
}

/** What splits do to a thermometer that they lift again. */
function swung(from: Found): Swing | null {
  const swing = swingOf(from);
  return swing && sinks(swing, from.result.design.fire) ? null : swing;
}

function swingOf({ result, studies }: Found): Swing | null {
  return studies?.swing ?? result.splits ?? null;
}

function woodUnderSplits(swing: Swing | null): number | null {
  return swing?.wood_kg && swing.period_s > 0 ? swing.wood_kg / swing.period_s : null;
}

interface Row<From> {
  /**
   * how it is printed; a temperature's difference is a temperature difference; 'money' in the currency of a comparison;
   * 'cooks' after which something is paid back
   */
  kind: Kind | 'money' | 'cooks';
  /** units, by system, where the usual one of the kind is unhandy */
  unit?: Partial<Record<UnitSystem, string>>;
  /** significant figures, where the usual ones of the kind are too many or too few */
  digits?: number;
  /** good to no more than two figures, beside others too */
  rough?: boolean;
  /** where counting ends: what reaches it is told as that and more */
  most?: number;
  /**
   * what it is without a number: 'never' come to, and told so; 'beyond' what any fire gives; 'unknown'. The first two
   * lie beyond every number there is.
   */
  missing?: 'never' | 'beyond' | 'unknown';
  /** a difference at most this large is none, seen from the baseline's value; else by the kind */
  none?: (baseline: number) => number;
  of: (from: From) => number | null | undefined;
}

/** A number of a result: where it is found and how it is printed. */
export interface Quantity extends Required<Pick<Row<Found>, 'kind' | 'missing' | 'none'>> {
  /** stable key of the file format; ends with its unit, or with the place it is of */
  key: string;
  /** its row in this table and in that of the words */
  name: QuantityName;
  /** the station, the place or the plate that it is of, where there are several */
  at?: string;
  /** of a plate: what it is part of */
  part?: PartPlate['part'];
  /** of the state that holds the target */
  held: boolean;
  unit: Partial<Record<UnitSystem, string>>;
  digits?: number;
  rough?: boolean;
  most?: number;
  of(found: Found): number | null;
}

/**
 * Differences below these are none: less than what the steps of the solver, let alone a builder, can tell apart. Two
 * options share their unknowns, so that what is unknown about the fire does not enter here.
 */
export const NO_DIFFERENCE = {
  /** share of fires, wood, losses, draft and air */
  share: 0.01,
  /** share of times, and at least this much [s] */
  timeShare: 0.02,
  time: 10,
  /** readings and steel temperatures [K] */
  temperature: 1,
  /** share of weights and costs */
  weight: 0.002,
  /** plates [m] */
  plate: 1e-6,
} as const;

/** The largest difference from a value that is none, by its kind. */
export function leastDifference(kind: Row<Found>['kind'], value: number): number {
  const size = Math.abs(value);
  if (kind === 'temperature' || kind === 'temperatureDifference') return NO_DIFFERENCE.temperature;
  if (kind === 'time') return Math.max(NO_DIFFERENCE.time, NO_DIFFERENCE.timeShare * size);
  if (kind === 'plate') return NO_DIFFERENCE.plate;
  if (kind === 'share') return NO_DIFFERENCE.share;
  return (kind === 'mass' || kind === 'money' ? NO_DIFFERENCE.weight : NO_DIFFERENCE.share) * size;
}

const byShare = (share: number) => (value: number) => share * Math.abs(value);
const SPEED = { kind: 'speed', digits: 2, unit: { shop: 'ft/s' } } as const;
/** Of a plate that gives or wastes away. */
const SMALL = { digits: 2, rough: true, unit: { shop: 'in', si: 'mm' } } as const;
const DRAFT = { kind: 'pressure', digits: 2 } as const;

/** Numbers of one settled state. */
const STATE = {
  fire_W: { kind: 'power', missing: 'beyond', of: (s) => s.fire_W },
  wood_kg_per_s: { kind: 'massFlow', missing: 'beyond', of: (s) => s.wood_kg_per_s },
  grate_K: {
    kind: 'temperature',
    of: ({ places }) => middleOf(places, places.find(isGrate)?.name ?? '')?.thermometer_K,
  },
  endToEnd_K: { kind: 'temperatureDifference', of: endToEnd },
  topToBottom_K: { kind: 'temperatureDifference', of: ({ evenness }) => evenness.topToBottom_K },
  racks_K: { kind: 'temperatureDifference', of: ({ evenness }) => evenness.racks_K },
  hottestOutside_K: { kind: 'temperature', of: (s) => Math.max(...s.stations.map(({ outside_K }) => outside_K)) },
  stackBase_Pa: {
    ...DRAFT,
    none: (value) => Math.max(byShare(NO_DIFFERENCE.share)(value), 0.005),
    of: ({ draft }) => draft.stackBase_Pa,
  },
  throat_Pa: { ...DRAFT, of: ({ draft }) => draft.throat_Pa },
  firebox_Pa: { ...DRAFT, of: ({ draft }) => draft.firebox_Pa },
  theoretical_Pa: { ...DRAFT, of: ({ draft }) => draft.theoretical_Pa },
  air_kg_per_s: { kind: 'massFlow', unit: { shop: 'lb/h', si: 'g/s' }, of: (s) => s.air_kg_per_s },
  excessAirRatio: { kind: 'number', digits: 2, of: (s) => s.excessAirRatio },
  intakeVelocity_m_per_s: { ...SPEED, of: ({ draft }) => draft.intakeVelocity_m_per_s },
  stackVelocity_m_per_s: { ...SPEED, of: ({ draft }) => draft.stackVelocity_m_per_s },
  airChanges_per_min: { kind: 'number', digits: 2, of: ({ draft }) => draft.airChanges_per_s * 60 },
  residence_s: { kind: 'time', of: ({ draft }) => draft.residence_s },
  neutralPlane_m: { kind: 'length', unit: { shop: 'in' }, of: ({ draft }) => draft.neutralPlane_m },
} as const satisfies Record<string, Row<SteadyState>>;

/** Numbers of one station of a state. */
const STATION = {
  thermometer_K: { kind: 'temperature', of: (s) => s.thermometer_K },
  steel_K: { kind: 'temperature', of: (s) => s.steel_K },
  outside_K: { kind: 'temperature', of: ({ outside_K }) => (Number.isFinite(outside_K) ? outside_K : null) },
} as const satisfies Record<string, Row<StationState>>;

/** Numbers of a whole result, and of the events that it is put through. */
const RESULT = {
  gauge_s: { kind: 'time', missing: 'never', of: ({ result }) => result.warmUp?.gauge_s },
  soaked_s: { kind: 'time', missing: 'never', of: ({ result }) => result.warmUp?.soaked_s },
  woodToGauge_kg: { kind: 'mass', missing: 'never', of: ({ result }) => result.warmUp?.woodToGauge_kg },
  woodToSoaked_kg: {
    kind: 'mass',
    missing: 'never',
    none: byShare(NO_DIFFERENCE.timeShare),
    of: ({ result }) => result.warmUp?.woodToSoaked_kg,
  },
  'full.thermometer_K': {
    kind: 'temperature',
    of: ({ result: { design, assumed } }) => assumed && gaugeReading(assumed, design.gauge),
  },
  steel_kg: { kind: 'mass', of: ({ result }) => result.geometry.totalSteelMass_kg },
  lining_kg: {
    kind: 'mass',
    of: ({ result }) => result.geometry.parts.reduce((sum, { liningMass_kg = 0 }) => sum + liningMass_kg, 0),
  },
  'swing.thermometer_K': { kind: 'temperatureDifference', of: (from) => swung(from)?.thermometer_K },
  'swing.period_s': { kind: 'time', of: (from) => swung(from)?.period_s || null },
  'swing.wood_kg': { kind: 'mass', of: (from) => swingOf(from)?.wood_kg },
  'swing.wood_kg_per_s': { kind: 'massFlow', of: (from) => woodUnderSplits(swung(from)) },
  'swing.lowest_K': { kind: 'temperature', of: (from) => swingOf(from)?.lowest_K },
  'swing.highest_K': { kind: 'temperature', of: (from) => swingOf(from)?.highest_K },
  'swing.late_K': { kind: 'temperature', of: (from) => swung(from)?.late_K },
  'swing.steel_K': { kind: 'temperatureDifference', of: (from) => swung(from)?.steel_K },
  'door.dip_K': { kind: 'temperatureDifference', of: ({ studies }) => studies?.door?.dip_K },
  'door.recovery_s': { kind: 'time', of: ({ studies }) => studies?.door?.recovery_s },
  'gust.dip_K': { kind: 'temperatureDifference', of: ({ studies }) => studies?.gust?.dip_K },
  'shower.dip_K': { kind: 'temperatureDifference', of: ({ studies }) => studies?.shower?.dip_K },
  'coolDown.half_s': { kind: 'time', of: ({ studies }) => studies?.coolDown?.half_s },
  'coolDown.touch_s': { kind: 'time', of: ({ studies }) => studies?.coolDown?.touch_s },
  'plate.overEdge_K': {
    kind: 'temperatureDifference',
    rough: true,
    of: ({ studies }) => studies?.plate.worst?.overEdge_K,
  },
  'plate.mayBuckle_K': {
    kind: 'temperatureDifference',
    of: ({ studies }) => studies?.plate.worst?.buckles_K.supported,
  },
  'plate.buckles_K': { kind: 'temperatureDifference', of: ({ studies }) => studies?.plate.worst?.buckles_K.clamped },
  'plate.buckling': {
    kind: 'number',
    digits: 2,
    rough: true,
    of: ({ studies }) =>
      studies?.plate.worst && studies.plate.worst.overEdge_K / studies.plate.worst.buckles_K.supported,
  },
  'plate.push_m': { kind: 'length', ...SMALL, of: ({ studies }) => studies?.plate.softest?.push_m },
  'plate.corner_m': { kind: 'length', ...SMALL, of: ({ studies }) => studies?.plate.door?.corner_m },
  'plate.scaled_m': {
    kind: 'length',
    ...SMALL,
    of: ({ studies }) => studies?.plate.scale && 1000 * studies.plate.scale.hourly_m,
  },
  'plate.halfGone_years': {
    kind: 'number',
    digits: 2,
    rough: true,
    most: MOST_YEARS,
    of: ({ studies }) => studies?.plate.scale?.halfGone_years.likely,
  },
  'plate.strength_share': { kind: 'share', of: ({ studies }) => studies?.plate.scale?.strength_share },
  'cook.wood_kg': { kind: 'mass', none: byShare(NO_DIFFERENCE.share), of: ({ studies }) => studies?.cook?.wood_kg },
  'cook.inBand_share': { kind: 'share', of: ({ studies }) => studies?.cook?.inBand_share },
} as const satisfies Record<string, Row<Found>>;

/** Numbers of a steady state. */
export type StateName = keyof typeof STATE;
type StationQuantity = keyof typeof STATION;
/** Numbers of an estimate, or of the events followed on it. */
export type ResultName = keyof typeof RESULT;
type CostName = 'steelCost' | 'insulationCost' | 'liningCost' | 'buildCost' | 'cookWood_kg' | 'cookCost' | 'payback';
/** Every number that has a row here or in the costs. */
export type QuantityName = StateName | StationQuantity | ResultName | CostName | 'heatLoss_W' | 'plate_m';

/** A quantity of its row. */
export function made(
  key: string,
  name: QuantityName,
  row: Row<Found>,
  more: Partial<Pick<Quantity, 'held' | 'at' | 'part'>> = {},
): Quantity {
  return {
    key,
    name,
    held: false,
    ...more,
    ...row,
    unit: row.unit ?? {},
    missing: row.missing ?? 'unknown',
    none: row.none ?? ((value) => leastDifference(row.kind, value)),
    of: (found) => row.of(found) ?? null,
  };
}

/** A number of a whole result. */
export function ofResult(name: ResultName): Quantity {
  return made(name, name, RESULT[name]);
}

/** What the cook's thermometer settles at under the full fire. */
export function fullReading(gauge: string): Quantity {
  return { ...ofResult('full.thermometer_K'), at: gauge };
}

/** A number of the state that holds the target. */
export function held(name: StateName): Quantity {
  const row: Row<SteadyState> = STATE[name];
  return made(`hold.${name}`, name, { ...row, of: inState(row.of) }, { held: true });
}

/** The same of any state. */
export function inAnyState(name: StateName): Omit<Quantity, 'of'> & { of(state: SteadyState): number | null } {
  const row: Row<SteadyState> = STATE[name];
  return { ...held(name), of: (state) => row.of(state) ?? null };
}

/** A number of a station while the target is held. */
export function heldAt(name: StationQuantity, station: string): Quantity {
  const row: Row<StationState> = STATION[name];
  const of = inState(({ stations }) => {
    const there = stations.find((each) => each.name === station);
    return there && row.of(there);
  });
  return made(`hold.${name}.${station}`, name, { ...row, of }, { held: true, at: station });
}

/** Heat that a place loses while the target is held. */
export function heldLoss(place: keyof HeatLoss): Quantity {
  const of = inState(({ heatLoss_W }) => lostAt(heatLoss_W, place));
  return made(`hold.heatLoss_W.${place}`, 'heatLoss_W', { kind: 'power', of }, { held: true, at: place });
}

/** The plate that a part, a door or a stack is made of. */
export function plateOf({ name, part, face }: Pick<PartPlate, 'name' | 'part' | 'face'>): Quantity {
  const of = ({ result }: Found) => {
    const plates = platesOf(result.design);
    // a face is named only where its plate is not its part's
    return (plates.find((each) => each.name === name) ?? (face && plates.find((each) => each.name === part)))?.plate;
  };
  return made(`plate_m.${name.replaceAll(' ', '_')}`, 'plate_m', { kind: 'plate', of }, { at: name, part });
}

function inState(of: Row<SteadyState>['of']): Row<Found>['of'] {
  return ({ result: { steady } }) => steady && of(steady);
}

/** The places that lose heat, in the order of the gas path. */
export const LOSSES = ['firebox', 'chamber', 'upright', 'stackWall', 'stackGas', 'leaks'] as const satisfies Exclude<
  keyof HeatLoss,
  'total'
>[];

/** Less than this share of all is what the solver's rounding lets through a gap that draws air. */
const TRICKLE = 1e-5;

/** Heat lost at a place [W]; none where it is no more than rounding. */
export function lostAt(loss: HeatLoss, place: keyof HeatLoss): number {
  return Math.abs(loss[place]) < TRICKLE * loss.total ? 0 : loss[place];
}

const isGrate = ({ kind }: PlaceState): boolean => kind === 'grate';

/** Along the grate that is the least even, or over the racks where there is no grate [K]. */
function endToEnd({ evenness: { grates, racks_K } }: SteadyState): number | null {
  return grates.length > 0 ? Math.max(...grates.map(({ endToEnd_K }) => endToEnd_K)) : racks_K;
}
