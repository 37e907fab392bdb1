import type { Design } from '../../src/design/design.js';
import type { EstimateResult, StationSeries, StationState, SteadyState } from '../../src/study/estimate/result.js';
import { exampleDesign } from './examples.js';

/**
 * A result made by hand, of the right order but solved by nobody: it feeds the tests of texts and charts, which ask
 * only that what is in the tree is what is shown.
 */
const kelvin = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9 + 273.15;

export const sampleDesign: Design = {
  ...exampleDesign('plain-24.yaml'),
  name: 'Yard pit',
  shop: 'Made-up Welding',
  job: 'Sheet 1',
};

/** Two layers, of the firebox one, and four plates round a station's means. */
function byHeight(name: string, gas_K: number, steel_K: number): Pick<StationState, 'layers' | 'steelBy'> {
  return {
    layers:
      name === 'firebox'
        ? [{ from_m: 0.46, to_m: 1.07, gas_K }]
        : [
            { from_m: 0.72, to_m: 1.02, gas_K: gas_K - 20 },
            { from_m: 1.02, to_m: 1.31, gas_K: gas_K + 20 },
          ],
    steelBy: { roof_K: steel_K + 15, upper_K: steel_K + 5, lower_K: steel_K - 5, floor_K: steel_K - 15 },
  };
}

const held: SteadyState = {
  fire_W: 9350,
  fireAsked_W: 9350,
  wood_kg_per_s: 9350 / 14.71e6,
  air_kg_per_s: 0.0237,
  excessAirRatio: 7.8,
  letInRatio: 7.8,
  converged: true,
  iterations: 38,
  residual: 1e-12,
  stations: (
    [
      { name: 'firebox', gas_K: kelvin(441), thermometer_K: kelvin(371), steel_K: kelvin(303), outside_K: kelvin(333) },
      { name: 'fireEnd', gas_K: kelvin(356), thermometer_K: kelvin(287), steel_K: kelvin(175), outside_K: kelvin(190) },
      { name: 'middle', gas_K: kelvin(314), thermometer_K: kelvin(250), steel_K: kelvin(148), outside_K: kelvin(155) },
      {
        name: 'stackEnd',
        gas_K: kelvin(280),
        thermometer_K: kelvin(226),
        steel_K: kelvin(136),
        outside_K: kelvin(142),
      },
    ] as const
  ).map((station) => ({ ...station, dial_m: 1.165, ...byHeight(station.name, station.gas_K, station.steel_K) })),
  places: (['fireEnd', 'middle', 'stackEnd'] as const).map((station, i) => ({
    name: 'grate',
    kind: 'grate',
    part: 'chamber',
    station,
    along: (i + 0.5) / 3,
    height_m: 0.986,
    gas_K: kelvin(270 - 10 * i),
    thermometer_K: kelvin(235 - 8 * i),
  })),
  evenness: { grates: [{ name: 'grate', endToEnd_K: (16 * 5) / 9 }], topToBottom_K: null, racks_K: null },
  hottestOutside: { part: 'firebox', station: 'firebox', place: 'roof', steel_K: kelvin(333) },
  heatLoss_W: { firebox: 3941, chamber: 2365, upright: 0, stackWall: 268, stackGas: 2776, leaks: 0, total: 9350 },
  draft: {
    stackBase_Pa: 0.87,
    firebox_Pa: 1.72,
    throat_Pa: 1.4,
    theoretical_Pa: 2.79,
    stackVelocity_m_per_s: 1.6,
    intakeVelocity_m_per_s: 1.1,
    neutralPlane_m: 1.31,
    airChanges_per_s: 0.05,
    residence_s: 20,
  },
  pressurePath: [
    { where: 'intake', height_m: 0.66, gauge_Pa: -1.8 },
    { where: 'firebox', height_m: 0.762, gauge_Pa: -1.72 },
    { where: 'throat', height_m: 0.864, gauge_Pa: -1.4 },
    { where: 'middle', height_m: 1.016, gauge_Pa: -1.0 },
    { where: 'stack base', height_m: 1.067, gauge_Pa: -0.87 },
    { where: 'stack top', height_m: 1.981, gauge_Pa: 0.1 },
  ],
  openings: (
    [
      ['intake 1', 'intake', 0.016214, 0.0214, 1.8],
      ['throat', 'throat', 0.0580644, 0.0232, 0.02],
      ['firebox door gap, lower', 'gap', 0.00032, -0.0009, -1.9],
      ['firebox door gap, upper', 'gap', 0.00032, -0.0008, -1.5],
      ['chamber door gap, upper, middle', 'gap', 0.00022, 0.0001, 0.05],
      ['stack', 'stackExit', 0.0168, 0.0237, 2.7],
    ] as const
  ).map(([name, role, area_m2, flow_kg_per_s, dp_Pa]) => ({
    name,
    role,
    area_m2,
    flow_kg_per_s,
    dp_Pa,
    way: role === 'stackExit' ? 'up' : 'in',
    eitherWay: false,
    back_kg_per_s: role === 'throat' ? 0.002 : 0,
  })),
  limitedByAir: false,
  energyError: 2e-13,
  massError_kg_per_s: 3e-15,
};

const assumed: SteadyState = {
  ...held,
  fire_W: 20515,
  fireAsked_W: 20515,
  wood_kg_per_s: 20515 / 14.71e6,
  air_kg_per_s: 0.029,
  excessAirRatio: 4.1,
  letInRatio: 4.1,
  stations: held.stations.map((station) => ({
    name: station.name,
    gas_K: station.gas_K + 130,
    thermometer_K: station.thermometer_K + 105,
    steel_K: station.steel_K + 80,
    outside_K: station.outside_K + 85,
    dial_m: station.dial_m,
    ...byHeight(station.name, station.gas_K + 130, station.steel_K + 80),
  })),
  places: held.places.map((place) => ({
    ...place,
    gas_K: place.gas_K + 130,
    thermometer_K: place.thermometer_K + 105,
  })),
  hottestOutside: { part: 'firebox', station: 'firebox', place: 'roof', steel_K: kelvin(418) },
  heatLoss_W: { firebox: 8900, chamber: 5200, upright: 0, stackWall: 600, stackGas: 5815, leaks: 0, total: 20515 },
};

const time = Array.from({ length: 121 }, (_, i) => i * 30);
const rise = (to: number, tau: number) =>
  time.map((t) => sampleDesign.site.air + (to - sampleDesign.site.air) * (1 - Math.exp(-t / tau)));
const stations: StationSeries[] = assumed.stations.map((station, index) => ({
  name: station.name,
  gas_K: rise(station.gas_K, 500 + 100 * index),
  thermometer_K: rise(station.thermometer_K, 700 + 120 * index),
  steel_K: rise(station.steel_K, 1300 + 200 * index),
}));
const fire = time.map((t) => sampleDesign.fire.heat * (1 - Math.exp(-t / sampleDesign.fire.rise)));
const heat = fire.reduce<number[]>((sums, power, i) => [...sums, (sums[i - 1] ?? 0) + power * 30], []);

export const sampleResult: EstimateResult = {
  schema: 1,
  tool: { name: 'pitwright', version: '0.1.0' },
  design: sampleDesign,
  warnings: [
    {
      code: 'door-gap-smoke',
      message: 'The chamber door gap leaks smoke near its top. Seal it, or raise the stack.',
      where: 'chamber door gap, upper, middle',
      value: 0.0001,
      limits: { high: 0, unit: 'kg/s' },
    },
  ],
  geometry: {
    parts: [
      { name: 'firebox', plate_m: 0.00635, steelArea_m2: 1.46, steelMass_kg: 72.9, gasVolume_m3: 0.165, biot: 0.0031 },
      { name: 'chamber', plate_m: 0.00635, steelArea_m2: 3.4, steelMass_kg: 170, gasVolume_m3: 0.42, biot: 0.0022 },
    ],
    totalSteelMass_kg: 253.1,
  },
  estimates: [
    {
      path: 'fire.radiant',
      value: 0.3,
      low: 0.2,
      high: 0.45,
      unit: '-',
      distribution: 'triangular',
      source: 'estimate',
    },
    { path: 'fire.soot', value: 0.5, low: 0, high: 1.2, unit: '1/m', distribution: 'triangular', source: 'estimate' },
    { path: 'innerConvection', value: 1, low: 0.8, high: 2, unit: '-', distribution: 'triangular', source: 'estimate' },
  ],
  steady: held,
  assumed,
  warmUp: {
    gauge_s: 774,
    soaked_s: 1758,
    woodToGauge_kg: 0.6,
    woodToSoaked_kg: 1.9,
    series: {
      time_s: time,
      fire_W: fire,
      thermometer_K: stations[2].thermometer_K,
      gas_K: stations[2].gas_K,
      steel_K: stations[2].steel_K,
      stations,
      places: held.places.map((place) => ({
        ...place,
        thermometer_K: stations[2].thermometer_K,
        gas_K: stations[2].gas_K,
      })),
      fire_J: heat,
      lost_J: heat.map((sum) => 0.3 * sum),
      stored_J: heat.map((sum) => 0.7 * sum),
    },
    steps: 240,
  },
  balance: { energyError: 4e-6, massError_kg_per_s: 3e-13 },
};
