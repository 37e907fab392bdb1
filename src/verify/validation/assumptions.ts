/** What the measured rooms are computed with, and the one-at-a-time changes whose effect the report shows. */
import { DEFAULT_RESOLUTION } from '../../network/build.js';
import { FINISHES, INSULATIONS } from '../../design/catalog/index.js';
import type { ThermalLink } from '../../network/types.js';
import { FUEL_GASES } from '../rooms/burner.js';
import { constantConductivity } from '../rooms/wall.js';

/** Inputs that the measurements leave open. */
export interface Assumptions {
  discharge: number;
  /** soot in the gas [1/m] */
  soot: number;
  /** factor on inner convection */
  innerConvection: number;
  insideEmissivity: number;
  outsideEmissivity: number;
  /** added to the radiant share of the burner's gas */
  radiantShift: number;
  /** of the fibre board of the vent-flow rooms, and of the stone wool in the steel room */
  boardConductivity: ThermalLink['conductivity'];
  woolConductivity: ThermalLink['conductivity'];
  /** steel's specific heat [J/(kg K)]; undefined: the tool's own, which rises with temperature */
  steelSpecificHeat?: number;
  /** room and flame radiate out of the doorway */
  doorRadiates: boolean;
  /** the fire's plume strikes the ceiling */
  struckRoof: boolean;
  /** factors on what a hot stream takes in and on what sinks along walls; undefined: 1, as published */
  entrainment?: number;
  downflow?: number;
  /** level layers of the gas in a room that burns; undefined: mixed over its height, as a firebox's is */
  levels?: number;
  /** factor on what the fire's plume takes in there; undefined: 1, as published */
  bending?: number;
  /** ignition in the steel room [s]; undefined: as the calorimeter shows it */
  litAt?: number;
}

/**
 * Nothing here is fitted: the opening coefficient is the usual one of the vent-flow literature, emissivities and
 * conductivities are those that the tool takes for a pit (its inside emissivity, oxidised steel, its ceramic fibre and
 * mineral wool), the radiant shares are published for the gases, and the gas is clear.
 */
export const BASE: Assumptions = {
  discharge: 0.7,
  soot: 0,
  innerConvection: 1,
  insideEmissivity: 0.95,
  outsideEmissivity: FINISHES.oxidised.emissivity,
  radiantShift: 0,
  boardConductivity: INSULATIONS['ceramic fibre'].conductivity,
  woolConductivity: INSULATIONS['mineral wool'].conductivity,
  doorRadiates: true,
  struckRoof: true,
};

/** Gas of the room that burns in as many layers as a pit's chamber has: shown beside, for a firebox is mixed. */
export const BURNING_IN_LAYERS: Assumptions = { ...BASE, levels: DEFAULT_RESOLUTION.levels };

/** Conductivities and specific heat that the model inputs released with the measurements take. */
const RELEASED = { board: 0.1, wool: 0.04, steel: 465 } as const;

const { levels } = DEFAULT_RESOLUTION;

/** Changes of one mechanism at a time; then layers, alone and with one more. */
export const MECHANISMS = {
  base: { name: 'as the tool takes it', change: {} },
  noPlume: { name: 'no plume on the ceiling', change: { struckRoof: false } },
  soot: { name: 'soot in the gas, 0.5 1/m (what a firebox takes)', change: { soot: 0.5 } },
  muchSoot: { name: 'soot in the gas, 1.2 1/m (top of its spread)', change: { soot: 1.2 } },
  convection: { name: 'inner convection doubled (a plume washes the walls)', change: { innerConvection: 2 } },
  outside70: { name: 'emissivity outside 0.7', change: { outsideEmissivity: 0.7 } },
  outside45: {
    name: 'emissivity outside 0.45 (what the heat balance below asks for)',
    change: { outsideEmissivity: 0.45 },
  },
  outside90: { name: 'emissivity outside 0.9', change: { outsideEmissivity: 0.9 } },
  inside85: { name: 'emissivity inside 0.85', change: { insideEmissivity: 0.85 } },
  discharge: { name: 'opening coefficient 0.62 (what a vent takes)', change: { discharge: 0.62 } },
  lessRadiant: { name: 'radiant share of the flame 0.10 less', change: { radiantShift: -0.1 } },
  moreRadiant: { name: 'radiant share of the flame 0.10 more', change: { radiantShift: 0.1 } },
  shutDoorway: { name: 'nothing radiates out of the doorway', change: { doorRadiates: false } },
  released: {
    name: 'board, wool and steel as in the released inputs',
    change: {
      boardConductivity: constantConductivity(RELEASED.board),
      woolConductivity: constantConductivity(RELEASED.wool),
      steelSpecificHeat: RELEASED.steel,
    },
  },
  litAtZero: { name: "steel room lit at the clock's zero", change: { litAt: 0 } },
  sootAndOutside: { name: 'soot 0.5 1/m and emissivity outside 0.7', change: { soot: 0.5, outsideEmissivity: 0.7 } },
  layers: { name: 'layers where it burns', change: { levels } },
  twiceLayers: { name: 'layers, twice as many', change: { levels: 2 * levels } },
  bentPlume: { name: 'layers, the plume takes in twice as much (bent by the inflow)', change: { levels, bending: 2 } },
  muchBentPlume: { name: 'layers, three times as much', change: { levels, bending: 3 } },
  layersNoPlume: { name: 'layers, no plume on the ceiling', change: { levels, struckRoof: false } },
  layersSoot: { name: 'layers, soot 0.5 1/m', change: { levels, soot: 0.5 } },
} satisfies Record<string, { name: string; change: Partial<Assumptions> }>;

/** One of the changes. */
export type MechanismKey = keyof typeof MECHANISMS;

/** Share of a burner's heat that its flame radiates. */
export function radiantShareOf(fuel: keyof typeof FUEL_GASES, { radiantShift }: Assumptions): number {
  return FUEL_GASES[fuel].radiantShare + radiantShift;
}

/** Of these what a room takes as it is. */
export function roomOf(a: Assumptions) {
  const { discharge, soot, insideEmissivity, outsideEmissivity, innerConvection, levels, doorRadiates } = a;
  return { discharge, soot, insideEmissivity, outsideEmissivity, innerConvection, levels, ventsRadiate: doorRadiates };
}

/** How its burner's plume is taken. */
export function plumeOf({ struckRoof, bending }: Assumptions) {
  return { strikes: struckRoof, bending };
}
