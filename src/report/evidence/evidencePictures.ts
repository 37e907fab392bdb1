/** Pictures of the validation: computed against measured with bands, and the steel room against time. */
import type { NamedChart } from '../../charts/estimateCharts.js';
import { historyChart, scatterChart, type ScatterGroup } from '../../charts/scatterChart.js';
import { ofQuantity, type QuantityName } from '../../verify/validation/quantities.js';
import type { QuantityResult } from '../../verify/validation/summary.js';
import type { Validation } from '../../verify/validation/validation.js';

interface Picture extends NamedChart {
  /** what it shows, in a sentence */
  about: string;
}

const fifth = { band: { share: 0.2 }, bandMeans: 'within 20 % (dashed)' } as const;

function group(name: string, { rows }: QuantityResult): ScatterGroup {
  return { name, points: rows.filter((row) => row.leftOut === '') };
}

/** Every picture of the report, in its order. */
export function evidencePictures({ quantities }: Validation): Picture[] {
  const of = (name: QuantityName) => ofQuantity(quantities, name);
  const steel = of('steelMean');
  const curve = (key: 'measured' | 'computed' | 'computedAsIs') =>
    steel.rows.map((row) => ({ x: row.time_s! / 60, y: row[key]! }));
  const charts: (Omit<Picture, 'config'> & { config: unknown })[] = [
    {
      file: 'flows',
      about: 'Flows through the opening of the vent-flow rooms, computed against measured',
      config: scatterChart({
        ...fifth,
        title: 'Vent-flow rooms: flows through the opening',
        subtitle: 'Steckler, Quintiere & Rinkinen (1982), 11 tests; opening coefficient 0.70, nothing fitted',
        quantity: 'flow',
        unit: 'kg/s',
        groups: [group('flow out', of('outflow')), group('flow in', of('inflow'))],
      }),
    },
    {
      file: 'neutral-plane',
      about: 'Neutral plane of the vent-flow rooms, computed against measured',
      config: scatterChart({
        title: 'Vent-flow rooms: neutral plane',
        subtitle:
          'height above the sill as a share of the opening; one mixed zone puts it too low and nearly at one height',
        quantity: 'neutral plane',
        unit: 'share of the opening',
        groups: [group('neutral plane', of('neutral'))],
        band: { amount: 0.04 },
        bandMeans: "within the measurement's 0.04 (dashed)",
        from: 0.4,
      }),
    },
    {
      file: 'temperature-rises',
      about: 'Temperature rises of the measured rooms, computed against measured',
      config: scatterChart({
        ...fifth,
        title: 'Measured rooms: temperature rises',
        subtitle: 'vent-flow rooms (steady) and thin steel room (moments of its tests), clear gas, nothing fitted',
        quantity: 'rise',
        unit: 'K',
        groups: [
          group('upper gas, vent-flow rooms', of('upperGas')),
          group('mean gas, bare steel room', of('gasMean')),
          group('steel by area, bare steel room', steel),
          group('plate thermometers, bare', of('probes')),
          group('plate thermometers, wool inside', of('woolProbes')),
        ],
      }),
    },
    {
      file: 'steel-room',
      about: 'Steel of the bare steel room against time, measured and computed',
      config: historyChart({
        title: 'Bare steel room: mean rise of the plates',
        subtitle:
          '3 mm plate, propane fire of some 460 kW; means by area at the moments of the table, straight between',
        quantity: 'Steel rise',
        unit: 'K',
        series: [
          { name: 'measured', measured: true, points: curve('measured') },
          { name: 'computed, heat release corrected for lag', points: curve('computed') },
          { name: 'computed, calorimeter as it is (dashed)', dash: [7, 4], points: curve('computedAsIs') },
        ],
      }),
    },
  ];
  return charts as Picture[];
}
