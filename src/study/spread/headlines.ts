import type { Design } from '../../design/design.js';
import { stationsOf } from '../../design/sense.js';
import type { EstimateResult, HeatLoss, SteadyState } from '../estimate/result.js';

/** One number of a result that a builder goes by. */
export interface Headline {
  /** stable key of the file format; ends with its unit */
  key: string;
  /** what the number is when it doesn't exist: beyond every other (a time never reached), or none at all */
  missing: 'beyond' | 'none';
  of: (result: EstimateResult) => number | null;
}

const held =
  (of: (state: SteadyState) => number): Headline['of'] =>
  ({ steady }) =>
    steady ? of(steady) : null;

const PLACES = [
  'firebox',
  'chamber',
  'upright',
  'stackWall',
  'stackGas',
  'leaks',
] as const satisfies (keyof HeatLoss)[];

const TIMES: Headline[] = [
  { key: 'gauge_s', missing: 'beyond', of: ({ warmUp }) => warmUp?.gauge_s ?? null },
  { key: 'soaked_s', missing: 'beyond', of: ({ warmUp }) => warmUp?.soaked_s ?? null },
  { key: 'woodToGauge_kg', missing: 'beyond', of: ({ warmUp }) => warmUp?.woodToGauge_kg ?? null },
  { key: 'woodToSoaked_kg', missing: 'beyond', of: ({ warmUp }) => warmUp?.woodToSoaked_kg ?? null },
];

const HOLDING: Headline[] = [
  { key: 'hold.fire_W', missing: 'beyond', of: held((s) => s.fire_W) },
  { key: 'hold.wood_kg_per_s', missing: 'beyond', of: held((s) => s.wood_kg_per_s) },
  { key: 'hold.air_kg_per_s', missing: 'none', of: held((s) => s.air_kg_per_s) },
  { key: 'hold.excessAirRatio', missing: 'none', of: held((s) => s.excessAirRatio) },
  { key: 'hold.stackBase_Pa', missing: 'none', of: held((s) => s.draft.stackBase_Pa) },
  { key: 'hold.firebox_Pa', missing: 'none', of: held((s) => s.draft.firebox_Pa) },
  { key: 'hold.stackVelocity_m_per_s', missing: 'none', of: held((s) => s.draft.stackVelocity_m_per_s) },
  { key: 'hold.endToEnd_K', missing: 'none', of: held(endToEnd) },
  { key: 'hold.hottestOutside_K', missing: 'none', of: held((s) => Math.max(...s.stations.map((x) => x.outside_K))) },
];

/**
 * The headline numbers of a design, in the order a builder asks: warm-up, what holds the target, the temperatures and losses
 * that go with it (but the gauge's, which is the target), and what the full fire settles at.
 */
export function headlinesOf(design: Design): Headline[] {
  const stations = [
    ...(design.chamber ? stationsOf(design, 'chamber') : []),
    ...(design.upright ? stationsOf(design, 'upright') : []),
  ].filter((name) => name !== design.gauge);
  const places = PLACES.filter((place) => (place !== 'chamber' && place !== 'upright') || design[place]);
  return [
    ...TIMES,
    ...HOLDING,
    ...stations.map((name): Headline => ({
      key: `hold.thermometer_K.${name}`,
      missing: 'none',
      of: held((s) => s.stations.find((station) => station.name === name)!.thermometer_K),
    })),
    ...places.map((place): Headline => ({
      key: `hold.heatLoss_W.${place}`,
      missing: 'none',
      of: held((s) => s.heatLoss_W[place]),
    })),
    {
      key: 'full.thermometer_K',
      missing: 'none',
      of: ({ assumed }) => assumed?.stations.find(({ name }) => name === design.gauge)?.thermometer_K ?? null,
    },
  ];
}

/** Between the hottest and the coldest cooking station, by thermometer [K]. */
export function endToEnd(state: SteadyState): number {
  const readings = state.stations
    .filter(({ name }) => name !== 'firebox' && !name.startsWith('plenum'))
    .map(({ thermometer_K }) => thermometer_K);
  return Math.max(...readings) - Math.min(...readings);
}
