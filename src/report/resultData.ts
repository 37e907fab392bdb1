import { middleOf } from '../design/places.js';
import { faceWords, platesOf } from '../design/plates.js';
import { gaugeLabel, HEAT_LOSS_LABELS, openingLabel, percentOf, placeLabel, stationLabel } from '../words/labels.js';
import type { EstimateResult, OpeningState, SteadyState } from '../study/estimate/result.js';
import { rangeOf, wordsOf } from '../words/quantityWords.js';
import { unknownLabel } from '../words/unknownLabels.js';
import type { UnitSystem } from '../units/index.js';
import { plainText } from '../words/plainText.js';
import { sayUnknown } from '../words/unknownValue.js';
import { inAnyState, LOSSES, lostAt, type StateName } from '../study/quantities.js';
import { sayAlone, sayIn, sayQuantity } from '../words/quantity.js';
import type { TableData } from './text/table.js';

/** Times and wood from the match to the first reading and to soaked. */
export function warmUpData({ design, warmUp }: EstimateResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  const target = say('temperature', design.fire.target);
  const row = (what: string, time: number | null | undefined, wood: number | null | undefined, bound: string) =>
    time == null ? [what, 'never', ''] : [what, `${bound}${say('time', time)}`, say('mass', wood ?? null)];
  return {
    head: ['', 'time', 'wood burned'],
    rows: [
      row(`${gaugeLabel(design.gauge)} first reads ${target}`, warmUp?.gauge_s, warmUp?.woodToGauge_kg, 'at least '),
      row('soaked', warmUp?.soaked_s, warmUp?.woodToSoaked_kg, ''),
    ],
  };
}

/** Gas, thermometer and steel of every station. */
export function temperatureData(state: SteadyState, gauge: string, system: UnitSystem): TableData {
  const say = sayIn(system);
  return {
    head: ['', 'gas', 'thermometer', 'steel', 'hottest outside'],
    rows: state.stations.map((station) => [
      stationLabel(station.name) + (station.name === gauge ? ' (gauge)' : ''),
      say('temperature', station.gas_K),
      say('temperature', station.thermometer_K),
      say('temperature', station.steel_K),
      say('temperature', station.outside_K),
    ]),
  };
}

/**
 * Stations, grates, racks and thermometers while the target is held, and what thermometers settle at under the full
 * fire.
 */
export function bothTemperaturesData({ design, steady, assumed }: EstimateResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  const first = (steady ?? assumed)!;
  const other = steady && assumed;
  const own = middleOf(first.places, design.gauge);
  const degrees = (kelvin: number | undefined) => (kelvin === undefined ? '' : say('temperature', kelvin));
  return {
    head: ['', 'gas', 'thermometer', 'steel', ...(other ? ['full fire'] : [])],
    rows: [
      ...first.stations.map((station, i) => ({
        label: stationLabel(station.name),
        marked: station.name === design.gauge,
        here: station,
        steel_K: station.steel_K,
        there: other?.stations[i],
      })),
      ...first.places.map((place, i) => ({
        label: placeLabel(place),
        marked: place === own,
        here: place,
        steel_K: undefined,
        there: other?.places[i],
      })),
    ].map(({ label, marked, here, steel_K, there }) => [
      label + (marked ? ' (gauge)' : ''),
      ...[here.gas_K, here.thermometer_K, steel_K].map(degrees),
      ...(other ? [degrees(there?.thermometer_K)] : []),
    ]),
  };
}

/** The states that exist, each with its column heading: held at the target, and under the full fire. */
function columns({ steady, assumed }: EstimateResult): { head: string; state: SteadyState }[] {
  return [
    ...(steady ? [{ head: 'holding', state: steady }] : []),
    ...(assumed ? [{ head: 'full fire', state: assumed }] : []),
  ];
}

/** Where the heat goes, under both fires. */
export function heatLossData(result: EstimateResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  const states = columns(result);
  const places = LOSSES.filter((place) => states.some(({ state }) => lostAt(state.heatLoss_W, place) !== 0));
  const cells = (watts: number, total: number) => [say('power', watts), percentOf(watts, total)];
  return {
    head: ['', ...states.flatMap(({ head }) => [head, ''])],
    rows: [...places, 'total' as const].map((place) => [
      place === 'total' ? 'total' : HEAT_LOSS_LABELS[place],
      ...states.flatMap(({ state }) => cells(lostAt(state.heatLoss_W, place), state.heatLoss_W.total)),
    ]),
  };
}

const AIR = [
  'stackBase_Pa',
  'throat_Pa',
  'firebox_Pa',
  'theoretical_Pa',
  'air_kg_per_s',
  'excessAirRatio',
  'intakeVelocity_m_per_s',
  'stackVelocity_m_per_s',
  'airChanges_per_min',
  'residence_s',
  'neutralPlane_m',
] as const satisfies StateName[];

/** Those that say whether a pit draws. */
export const MAIN_AIR = ['stackBase_Pa', 'air_kg_per_s', 'excessAirRatio'] as const satisfies StateName[];

/** Draft, air and speeds, under both fires. */
export function airData(result: EstimateResult, system: UnitSystem, shown: readonly StateName[] = AIR): TableData {
  const say = sayIn(system);
  const states = columns(result);
  return {
    head: ['', ...states.map(({ head }) => head)],
    rows: shown
      .map(inAnyState)
      .map((quantity) => [
        wordsOf(quantity, 'row'),
        ...states.map(({ state }) => sayQuantity(say, quantity, quantity.of(state))),
      ]),
  };
}

/** Pressures and flows below these are told to one figure [Pa, kg/s], such pressures not at all [Pa]. */
const FAINT = 0.03;
const TRICKLE = 1e-5;
const NONE = 0.01;

/** Flow and pressure difference of every opening. */
export function openingsData({ openings }: SteadyState, system: UnitSystem): TableData {
  const [say, alone] = [sayIn(system), sayAlone(system)];
  return {
    head: ['', 'flow', '', 'pressure across'],
    rows: openings.map((opening) => [
      openingLabel(opening),
      say('massFlow', Math.abs(opening.flow_kg_per_s), {
        digits: Math.abs(opening.flow_kg_per_s) < TRICKLE ? 1 : 2,
        shop: 'lb/h',
        si: 'g/s',
      }),
      wayOf(opening),
      Math.abs(opening.dp_Pa) < NONE
        ? '–'
        : // names of doors and stations are long: one unit leaves them room
          alone('pressure', Math.abs(opening.dp_Pa), { digits: Math.abs(opening.dp_Pa) < FAINT ? 1 : 2 }),
    ]),
    align: ['left', 'right', 'left', 'right'],
  };
}

/** Flow against the net one is worth a word from this share of it. */
const WORTH_SAYING = 0.01;

const WAYS = { along: ['from the fire', 'to the fire'], up: ['up', 'down'], in: ['in', 'out'] } as const;

/** Which way an opening flows, in a builder's words; what flows against its own direction is called out. */
function wayOf({ role, way, eitherWay, flow_kg_per_s: flow, back_kg_per_s: back }: OpeningState): string {
  if (flow === 0 && back === 0) return 'still';
  if (role === 'gap') return flow > 0 ? 'leaks smoke' : 'draws air';
  const bothWays = (flow > 0 ? back : back + flow) >= WORTH_SAYING * Math.abs(flow);
  if (eitherWay) return `${bothWays ? 'net ' : ''}${WAYS[way][flow > 0 ? 0 : 1]}`;
  if (flow < 0) return 'BACKWARDS';
  return bothWays ? 'both ways' : WAYS[way][0];
}

/** Hot faces of linings and the steel behind them, each at its hottest, under both fires. */
export function liningsData({ steady, assumed }: EstimateResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  const states = [
    ['holding', steady],
    ['full fire', assumed],
  ].flatMap(([name, state]) =>
    state ? [{ name: name as string, linings: (state as SteadyState).linings ?? [] }] : [],
  );
  return {
    head: ['', ...states.flatMap(({ name }) => [`hot face, ${name}`, 'steel behind'])],
    rows: states[0].linings.map(({ part, face, material }, i) => [
      `${plainText(part)} ${faceWords(face)}, ${material}`,
      ...states.flatMap(({ linings }) => [
        say('temperature', linings[i].hot_K),
        say('temperature', linings[i].steel_K),
      ]),
    ]),
  };
}

/** Area, weight and gas of every part. */
export function weightsData({ geometry, design }: EstimateResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  return {
    head: ['', 'plate', 'steel area', 'steel weight', 'gas volume'],
    rows: [
      ...geometry.parts.flatMap((part) => [
        [
          plainText(part.name),
          say('plate', part.plate_m),
          say('area', part.steelArea_m2),
          say('mass', part.steelMass_kg),
          say('volume', part.gasVolume_m3),
        ],
        ...platesOf(design)
          .filter((each) => each.part === part.name && each.face !== undefined)
          .map(({ name, plate }) => [plainText(name), say('plate', plate), '', '', '']),
        ...(part.doorPlate_m === undefined
          ? []
          : [[`${plainText(part.name)} door`, say('plate', part.doorPlate_m), '', '', '']]),
      ]),
      ...geometry.parts.flatMap(({ name, liningMass_kg: lining }) =>
        lining === undefined ? [] : [[`${plainText(name)} lining`, '', '', say('mass', lining), '']],
      ),
      ['all steel', '', '', say('mass', geometry.totalSteelMass_kg), ''],
    ],
  };
}

/** What the table of estimates needs said of what was fitted; null where nothing was. */
export function fittedNote({ estimates }: EstimateResult): string | null {
  return estimates.some(({ fitted }) => fitted)
    ? 'Fitted: the spread is the interval that 9 of 10 cases lie in.'
    : null;
}

/** Estimates that the numbers rest on, each with its spread. */
export function unknownsData({ estimates }: EstimateResult, system: UnitSystem): TableData {
  const text = (value: number, of: { path: string; unit: string }) => sayUnknown(value, of, system);
  return {
    head: ['field', 'used', 'spread', ''],
    rows: estimates.map(({ path, value, low, high, unit, fitted }) => [
      path,
      text(value, { path, unit }),
      rangeOf(text(fitted?.low ?? low, { path, unit }), text(fitted?.high ?? high, { path, unit })),
      `${unknownLabel(path)}${fitted ? ', fitted' : ''}`,
    ]),
    align: ['left', 'right', 'right', 'left'],
  };
}
