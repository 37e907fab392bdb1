/** Pictures of the validation: computed against measured with bands, and the steel room against time. */
import type { NamedChart } from '../../charts/estimateCharts.js';
import { historyChart, scatterChart, type ScatterGroup } from '../../charts/scatterChart.js';
import type { QuantityResult } from '../../verify/validation/summary.js';
import type { Validation } from '../../verify/validation/validation.js';

export interface Picture extends NamedChart {
  /** what it shows, in a sentence */
  about: string;
}

const fifth = { band: { share: 0.2 }, bandMeans: 'within 20 % (dashed)' } as const;

function group(name: string, { rows }: QuantityResult): ScatterGroup {
  return { name, points: rows.filter((row) => row.leftOut === '') };
}

export function evidencePictures({ quantities }: Validation): Picture[] {
  const of = (experiment: string, quantity: string) =>
    quantities.find((each) => each.experiment === experiment && each.quantity.startsWith(quantity))!;
  const [rooms, bare, wool] = ['vent-flow rooms', 'steel room, bare plate', 'steel room, wool inside'];
  const steel = of(bare, 'steel rise, mean');
  const minutes = (id: string) => Number(id.split('-').at(-1)) / 60;
  const curve = (key: 'measured' | 'computed' | 'computedAsIs') =>
    steel.rows.map((row) => ({ x: minutes(row.id), y: row[key]! }));
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
        groups: [group('flow out', of(rooms, 'flow out')), group('flow in', of(rooms, 'flow in'))],
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
        groups: [group('neutral plane', of(rooms, 'neutral plane'))],
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
          group('upper gas, vent-flow rooms', of(rooms, 'gas rise, upper')),
          group('mean gas, bare steel room', of(bare, 'gas rise, mean')),
          group('steel by area, bare steel room', steel),
          group('plate thermometers, bare', of(bare, 'plate thermometers')),
          group('plate thermometers, wool inside', of(wool, 'plate thermometers')),
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
