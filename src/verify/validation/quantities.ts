/** What is compared with measurements, and how sure the measurements are. */
export interface ValidationQuantity {
  experiment:
    | 'vent-flow rooms'
    | 'steel room, bare plate'
    | 'steel room, wool inside'
    | 'corridor behind a burn room'
    | 'box the size of a firebox';
  quantity: string;
  unit: string;
  /** expanded uncertainty of the measurement, as a share: twice its standard deviation */
  uncertainty: number;
  uncertaintySource: string;
  /** measured values below this are shown but not counted: a ratio of small differences says nothing */
  least?: number;
}

/** A measured value and the computed one, in the unit of its quantity. */
export interface ValidationRow {
  id: string;
  /** of a test that is told against time [s] */
  time_s?: number;
  /** rows of one group repeat one case */
  group: string;
  measured: number;
  computed: number;
  /** the same with the calorimeter's heat release as it stands, where there is such a choice */
  computedAsIs?: number;
  /** the same with gas mixed over the height, where it is else in layers */
  mixed?: number;
  /** the same with layers in the room that burns, which is else mixed as a firebox is */
  layered?: number;
  /** why the row is shown but not counted; '' when it is */
  leftOut: string;
}

/** All rows of one quantity. */
export interface ValidationTable extends ValidationQuantity {
  rows: ValidationRow[];
}

const rooms = 'vent-flow rooms' as const;
const bare = 'steel room, bare plate' as const;
const wool = 'steel room, wool inside' as const;
const corridor = 'corridor behind a burn room' as const;

const box = 'box the size of a firebox' as const;

const given = 'given with the data';
const estimate = 'estimate: the data give none';

/** Every quantity that is compared. */
export const QUANTITIES = {
  outflow: { experiment: rooms, quantity: 'flow out', unit: 'kg/s', uncertainty: 0.2, uncertaintySource: given },
  inflow: { experiment: rooms, quantity: 'flow in', unit: 'kg/s', uncertainty: 0.2, uncertaintySource: given },
  neutral: {
    experiment: rooms,
    quantity: 'neutral plane, share of the opening',
    unit: '-',
    uncertainty: 0.07,
    uncertaintySource: `0.04 of the opening, ${given}`,
  },
  upperGas: {
    experiment: rooms,
    quantity: 'gas rise, upper layer',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: given,
  },
  roomGas: {
    experiment: rooms,
    quantity: 'gas rise, mean over the height',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: given,
  },
  steelMean: {
    experiment: bare,
    quantity: 'steel rise, mean by area',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: given,
  },
  ceiling: {
    experiment: bare,
    quantity: 'steel rise, ceiling',
    unit: 'K',
    uncertainty: 0.25,
    uncertaintySource: given,
  },
  wallUpper: {
    experiment: bare,
    quantity: 'steel rise, upper wall',
    unit: 'K',
    uncertainty: 0.25,
    uncertaintySource: given,
  },
  wallLower: {
    experiment: bare,
    quantity: 'steel rise, lower wall',
    unit: 'K',
    uncertainty: 0.25,
    uncertaintySource: given,
  },
  floor: { experiment: bare, quantity: 'steel rise, floor', unit: 'K', uncertainty: 0.25, uncertaintySource: given },
  gasMean: {
    experiment: bare,
    quantity: 'gas rise, mean over the height',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: estimate,
  },
  gasUpper: {
    experiment: bare,
    quantity: 'gas rise, upper half',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: estimate,
  },
  probes: {
    experiment: bare,
    quantity: 'plate thermometers, rise, mean by area',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: estimate,
  },
  woolProbes: {
    experiment: wool,
    quantity: 'plate thermometers, rise, mean by area',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: estimate,
  },
  woolSteel: {
    experiment: wool,
    quantity: 'steel rise behind the wool, mean by area',
    unit: 'K',
    uncertainty: 0.2,
    uncertaintySource: given,
    least: 10,
  },
  burnRoomGas: {
    experiment: corridor,
    quantity: 'gas rise, burn room, mean over the height',
    unit: 'K',
    uncertainty: 0.15,
    uncertaintySource: given,
  },
  corridorHeight: {
    experiment: corridor,
    quantity: 'layer height at the far end',
    unit: 'm',
    uncertainty: 0.13,
    uncertaintySource: `0.15 m, ${given}`,
  },
  corridorUpper: {
    experiment: corridor,
    quantity: 'gas rise, upper layer at the far end',
    unit: 'K',
    uncertainty: 0.15,
    uncertaintySource: given,
  },
  corridorLower: {
    experiment: corridor,
    quantity: 'gas rise, lower layer at the far end',
    unit: 'K',
    uncertainty: 0.15,
    uncertaintySource: given,
  },
  oxygenUnderRoof: {
    experiment: box,
    quantity: 'oxygen taken from the gas under the roof, mole fraction of dry gas',
    unit: '-',
    uncertainty: 0.15,
    uncertaintySource: given,
  },
} as const satisfies Record<string, ValidationQuantity>;

/** One of them. */
export type QuantityName = keyof typeof QUANTITIES;

/** Of tables or results, a quantity each, the one of a quantity. */
export function ofQuantity<T extends ValidationQuantity>(all: readonly T[], name: QuantityName): T {
  const { experiment, quantity } = QUANTITIES[name];
  return all.find((each) => each.experiment === experiment && each.quantity === quantity)!;
}
