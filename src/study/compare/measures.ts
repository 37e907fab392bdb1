import { platesOf } from '../../design/plates.js';
import type { Kind } from '../../units/index.js';
import { endToEnd } from '../spread/headlines.js';
import type { HeatLoss } from '../estimate/result.js';
import type { EventStudies, OptionStudy, StudySettings } from './studyOption.js';

/**
 * Differences below these are none: less than what the steps of the solver, let alone a builder, can tell apart. Two options
 * share their unknowns, so that what is unknown about the fire does not enter here.
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

/** Units of measures for which the usual one of their kind is unhandy. */
export const UNITS_OF_KEYS: Readonly<Record<string, Readonly<Record<'shop' | 'si', string>>>> = {
  'hold.air_kg_per_s': { shop: 'lb/h', si: 'g/s' },
};

export type MeasureGroup =
  'plate' | 'steel' | 'warm-up' | 'holding' | 'losses' | 'temperatures' | 'outside' | 'events' | 'air' | 'cook';

/** One number by which options are compared. */
export interface Measure {
  /** stable key of the file format; ends with its unit */
  key: string;
  group: MeasureGroup;
  words: string;
  /** how it is printed; a temperature's difference is a temperature difference; 'money' in the currency of the settings */
  kind: Kind | 'money';
  /** a difference at most this large is none, seen from the baseline's value */
  none: (baseline: number) => number;
  of: (study: OptionStudy) => number | null;
}

const share = (s: number) => (value: number) => s * Math.abs(value);
const byShare = share(NO_DIFFERENCE.share);
const byTime = (value: number) => Math.max(NO_DIFFERENCE.time, NO_DIFFERENCE.timeShare * Math.abs(value));
const byTemperature = () => NO_DIFFERENCE.temperature;
const byWeight = share(NO_DIFFERENCE.weight);

type Of = Measure['of'];

const steady =
  (of: (state: NonNullable<OptionStudy['result']['steady']>) => number | null): Of =>
  ({ result }) =>
    result.steady ? of(result.steady) : null;
const events =
  (of: (studies: EventStudies) => number | null | undefined): Of =>
  ({ studies }) =>
    (studies && of(studies)) ?? null;

const LOSSES: [keyof HeatLoss, string][] = [
  ['firebox', 'firebox walls'],
  ['chamber', 'chamber walls'],
  ['upright', 'upright walls'],
  ['stackWall', 'stack wall'],
  ['stackGas', 'gas out of the stack'],
  ['leaks', 'smoke out of door gaps'],
];

/**
 * All measures by which these options can be compared, in the order of the table. What none of them has is left out.
 *
 * @param options of one comparison; stations are those that any of them has
 */
export function measuresOf(options: readonly OptionStudy[], settings: StudySettings): Measure[] {
  const stations = [...new Set(options.flatMap(({ result }) => result.steady?.stations.map(({ name }) => name) ?? []))];
  const all = [
    ...plateMeasures(options),
    ...steelMeasures(settings),
    ...warmUpMeasures(),
    ...holdMeasures(),
    ...LOSSES.map(([place, words]): Measure => ({
      key: `hold.heatLoss_W.${place}`,
      group: 'losses',
      words,
      kind: 'power',
      // a small loss that doubles is still small beside the fire
      none: (value) => Math.max(byShare(value), 0.001 * meanFire(options)),
      of: steady(({ heatLoss_W }) => (heatLoss_W[place] === 0 ? null : heatLoss_W[place])),
    })),
    ...stations.map((name): Measure => ({
      key: `hold.thermometer_K.${name}`,
      group: 'temperatures',
      words: name,
      kind: 'temperature',
      none: byTemperature,
      of: steady((state) => state.stations.find((station) => station.name === name)?.thermometer_K ?? null),
    })),
    ...(alike(options) ? [endToEndMeasure] : []),
    ...eventMeasures(),
    hottestMeasure,
    ...stations.map((name): Measure => ({
      key: `hold.outside_K.${name}`,
      group: 'outside',
      words: name,
      kind: 'temperature',
      none: byTemperature,
      of: steady((state) => {
        const outside = state.stations.find((station) => station.name === name)?.outside_K;
        return outside !== undefined && Number.isFinite(outside) ? outside : null;
      }),
    })),
    ...airMeasures(),
    ...cookMeasures(),
  ];
  return all.filter(({ of }) => options.some((option) => of(option) !== null));
}

/** Have all options the same stations? Between different ones an evenness says nothing. */
function alike(options: readonly OptionStudy[]): boolean {
  const sets = options.flatMap(({ result }) => (result.steady ? [result.steady.stations.map(({ name }) => name)] : []));
  return new Set(sets.map((names) => names.join())).size < 2;
}

function meanFire(options: readonly OptionStudy[]): number {
  const fires = options.flatMap(({ result }) => (result.steady ? [result.steady.fire_W] : []));
  return fires.length > 0 ? fires.reduce((a, b) => a + b, 0) / fires.length : 0;
}

/** Which plate each part and door is made of, and each stack. */
function plateMeasures(options: readonly OptionStudy[]): Measure[] {
  const names = [...new Set(options.flatMap(({ result }) => platesOf(result.design).map(({ name }) => name)))];
  return names.map((name): Measure => ({
    key: `plate_m.${name.replaceAll(' ', '_')}`,
    group: 'plate',
    words: name,
    kind: 'plate',
    none: () => NO_DIFFERENCE.plate,
    of: ({ result }) => platesOf(result.design).find((each) => each.name === name)?.plate ?? null,
  }));
}

function steelMeasures({ steelPrice }: StudySettings): Measure[] {
  const weight: Of = ({ result }) => result.geometry.totalSteelMass_kg;
  return [
    { key: 'steel_kg', group: 'steel', words: 'all steel', kind: 'mass', none: byWeight, of: weight },
    ...(steelPrice === undefined
      ? []
      : [
          {
            key: 'steelCost',
            group: 'steel' as const,
            words: 'steel at that price',
            kind: 'money' as const,
            none: byWeight,
            of: (study: OptionStudy) => weight(study)! * steelPrice,
          },
        ]),
  ];
}

function warmUpMeasures(): Measure[] {
  const group = 'warm-up';
  return [
    { key: 'gauge_s', group, words: 'first reads the target', kind: 'time', none: byTime, of: warmUp('gauge_s') },
    { key: 'soaked_s', group, words: 'soaked', kind: 'time', none: byTime, of: warmUp('soaked_s') },
    {
      key: 'woodToSoaked_kg',
      group,
      words: 'wood until soaked',
      kind: 'mass',
      none: share(NO_DIFFERENCE.timeShare),
      of: warmUp('woodToSoaked_kg'),
    },
  ];
}

const warmUp =
  (key: 'gauge_s' | 'soaked_s' | 'woodToSoaked_kg'): Of =>
  ({ result }) =>
    result.warmUp?.[key] ?? null;

function holdMeasures(): Measure[] {
  return [
    {
      key: 'hold.fire_W',
      group: 'holding',
      words: 'fire that holds it',
      kind: 'power',
      none: byShare,
      of: steady(({ fire_W }) => fire_W),
    },
    {
      key: 'hold.wood_kg_per_s',
      group: 'holding',
      words: 'wood that holds it',
      kind: 'massFlow',
      none: byShare,
      of: steady(({ wood_kg_per_s }) => wood_kg_per_s),
    },
  ];
}

const endToEndMeasure: Measure = {
  key: 'hold.endToEnd_K',
  group: 'temperatures',
  words: 'hottest to coldest place',
  kind: 'temperatureDifference',
  none: byTemperature,
  of: steady(endToEnd),
};

const hottestMeasure: Measure = {
  key: 'hold.hottestOutside_K',
  group: 'outside',
  words: 'hottest anywhere',
  kind: 'temperature',
  none: byTemperature,
  of: steady(({ stations }) => Math.max(...stations.map(({ outside_K }) => outside_K))),
};

function eventMeasures(): Measure[] {
  const kelvin = (key: string, words: string, of: Of): Measure => ({
    key,
    group: 'events',
    words,
    kind: 'temperatureDifference',
    none: byTemperature,
    of,
  });
  const time = (key: string, words: string, of: Of): Measure => ({
    key,
    group: 'events',
    words,
    kind: 'time',
    none: byTime,
    of,
  });
  return [
    kelvin(
      'swing.thermometer_K',
      'splits: thermometer swing',
      events(({ swing }) => swing?.thermometer_K),
    ),
    kelvin(
      'swing.steel_K',
      'splits: steel swing',
      events(({ swing }) => swing?.steel_K),
    ),
    kelvin(
      'door.dip_K',
      'door: thermometer dip',
      events(({ door }) => door?.dip_K),
    ),
    time(
      'door.recovery_s',
      'door: back after',
      events(({ door }) => door?.recovery_s),
    ),
    kelvin(
      'gust.dip_K',
      'gust: thermometer dip',
      events(({ gust }) => gust?.dip_K),
    ),
    kelvin(
      'shower.dip_K',
      'shower: thermometer dip',
      events(({ shower }) => shower?.dip_K),
    ),
    time(
      'coolDown.half_s',
      'fire out: half down after',
      events((s) => s.coolDown?.half_s),
    ),
    time(
      'coolDown.touch_s',
      'fire out: touch limit after',
      events((s) => s.coolDown?.touch_s),
    ),
  ];
}

function airMeasures(): Measure[] {
  return [
    {
      key: 'hold.stackBase_Pa',
      group: 'air',
      words: 'draft at the stack base',
      kind: 'pressure',
      none: (value) => Math.max(byShare(value), 0.005),
      of: steady(({ draft }) => draft.stackBase_Pa),
    },
    {
      key: 'hold.air_kg_per_s',
      group: 'air',
      words: 'air',
      kind: 'massFlow',
      none: byShare,
      of: steady(({ air_kg_per_s }) => air_kg_per_s),
    },
    {
      key: 'hold.excessAirRatio',
      group: 'air',
      words: 'air over what wood needs',
      kind: 'number',
      none: byShare,
      of: steady(({ excessAirRatio }) => excessAirRatio),
    },
  ];
}

function cookMeasures(): Measure[] {
  return [
    {
      key: 'cook.wood_kg',
      group: 'cook',
      words: 'wood for the day',
      kind: 'mass',
      none: byShare,
      of: events(({ cook }) => cook?.wood_kg),
    },
    {
      key: 'cook.inBand_share',
      group: 'cook',
      words: 'time within the band',
      kind: 'share',
      none: () => NO_DIFFERENCE.share,
      of: events(({ cook }) => cook?.inBand_share),
    },
  ];
}
