/**
 * The published relations that a design's numbers come from, each beside the function that is run: what a sheet says about
 * methods is made from this list, and a test holds that every function in it is run and carries that source.
 */
import { hasGaps } from '../design/decks.js';
import type { Design } from '../design/design.js';
import { standardPressure } from '../physics/atmosphere.js';
import { ductFlow } from '../physics/ductFlow.js';
import { evaporation } from '../physics/evaporation.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
} from '../physics/freeConvection.js';
import { damperLoss, haaland } from '../physics/friction.js';
import { gasEmissivity, meanBeamLength } from '../physics/gasRadiation.js';
import { gasEnthalpy } from '../physics/gasMixture.js';
import { levelExchange } from '../physics/levelExchange.js';
import { mixedConvection } from '../physics/mixedConvection.js';
import { openingFlow } from '../physics/opening.js';
import { freePanelStrain } from '../physics/panelBuckling.js';
import { pushedPanel } from '../physics/plateBending.js';
import { scaleLoss } from '../physics/scaling.js';
import { surfaceConductance } from '../physics/surfaceNode.js';
import { steelSpecificHeat, stainlessSpecificHeat } from '../physics/steel.js';
import { steelModulus } from '../physics/steelStrength.js';
import { windProfile } from '../physics/windProfile.js';
import { fuelShareLimit, netHeatAsFired } from '../physics/wood.js';

export interface Method {
  topic: string;
  /** of what; '' where the topic says it */
  of: string;
  /** as the function's own comment names it */
  source: string;
  run: (...inputs: never[]) => unknown;
  /** designs that it runs for; all of them when left out */
  used?: (design: Design) => boolean;
}

const parts = ({ firebox, chamber, upright }: Design) =>
  [firebox, chamber, upright].filter((part) => part !== undefined);
/** All parts but a round one without a plate inside have level plates. */
const levelPlates = ({ firebox, chamber, upright }: Design) =>
  upright !== undefined ||
  chamber?.reverse !== undefined ||
  hasGaps(chamber) ||
  [firebox, chamber].some((part) => part?.shape === 'square');
const fromStation = ({ site }: Design) => site.windAt === 'station';
const windy = ({ site }: Design) => site.wind > 0;
const wet = (design: Design) =>
  design.site.rain > 0 ||
  (design.cook?.load.length ?? 0) > 0 ||
  parts(design).some((part) => part.contents.some(({ material }) => material === 'water' || material === 'food'));

export const METHODS: readonly Method[] = [
  {
    topic: 'Free convection',
    of: 'lying cylinders and thermometer stems',
    source: 'Churchill & Chu (1975)',
    run: nusseltHorizontalCylinder,
  },
  {
    topic: 'Free convection',
    of: 'upright plates, ends and stacks',
    source: 'Churchill & Chu (1975)',
    run: nusseltVerticalPlate,
  },
  {
    topic: 'Free convection',
    of: 'plates facing up',
    source: 'McAdams (1954)',
    run: nusseltPlateUp,
    used: levelPlates,
  },
  {
    topic: 'Free convection',
    of: 'plates facing down',
    source: 'Radziemska & Lewandowski (2001)',
    run: nusseltPlateDown,
    used: levelPlates,
  },
  {
    topic: 'Wind and through-flow',
    of: 'across cylinders and thermometer stems',
    source: 'Churchill & Bernstein (1977)',
    run: nusseltCrossCylinder,
  },
  {
    topic: 'Wind and through-flow',
    of: 'along plates',
    source: 'Incropera et al. (2007)',
    run: nusseltFlatPlate,
    used: windy,
  },
  { topic: 'Wind and through-flow', of: 'through a part', source: 'Gnielinski (2013)', run: nusseltPipe },
  { topic: 'Wind and through-flow', of: 'joined to free convection', source: 'Churchill (1977)', run: mixedConvection },
  {
    topic: 'Radiation',
    of: 'gas by each of CO2 and water vapour',
    source: 'Leckner (1972)',
    run: gasEmissivity,
  },
  { topic: 'Radiation', of: 'beam length', source: 'Hottel (1954)', run: meanBeamLength },
  {
    topic: 'Radiation',
    of: 'surfaces by resistances to one point in each zone',
    source: 'Incropera et al. (2007)',
    run: surfaceConductance,
  },
  { topic: 'Steel', of: 'carbon', source: 'EN 1993-1-2:2005, 3.4.1', run: steelSpecificHeat },
  {
    topic: 'Steel',
    of: 'stainless',
    source: 'EN 1993-1-2:2005, Annex C',
    run: stainlessSpecificHeat,
    used: (design) => parts(design).some(({ steel }) => steel === 'stainless'),
  },
  {
    topic: 'Plate',
    of: 'buckling of flat panels by heat',
    source: 'Timoshenko & Gere (1961)',
    run: freePanelStrain,
  },
  {
    topic: 'Plate',
    of: 'flat panels under a push',
    source: 'Timoshenko & Woinowsky-Krieger (1959)',
    run: pushedPanel,
  },
  { topic: 'Plate', of: 'stiffness when hot', source: 'EN 1993-1-2:2005, table 3.1', run: steelModulus },
  {
    topic: 'Plate',
    of: 'scale',
    source: 'Stanley, von Hoene & Huntoon (1950)',
    run: scaleLoss,
    used: ({ firebox }) => firebox.steel === 'carbon',
  },
  { topic: 'Gas', of: 'NASA polynomials', source: 'GRI-Mech 3.0', run: gasEnthalpy },
  { topic: 'Outdoors', of: 'pressure by altitude', source: 'US Standard Atmosphere 1976', run: standardPressure },
  {
    topic: 'Outdoors',
    of: 'wind from a weather station to the pit',
    source: 'ASHRAE Handbook - Fundamentals (2005), ch. 16',
    run: windProfile,
    used: fromStation,
  },
  { topic: 'Flow', of: 'openings, one and both ways', source: 'Emmons (2002)', run: openingFlow },
  {
    topic: 'Flow',
    of: 'level openings',
    source: 'Cooper (1989)',
    run: levelExchange,
    used: ({ upright, chamber }) => upright !== undefined || chamber?.reverse !== undefined || hasGaps(chamber),
  },
  { topic: 'Flow', of: 'stacks', source: 'Darcy-Weisbach', run: ductFlow },
  { topic: 'Flow', of: 'friction factor', source: 'Haaland (1983)', run: haaland },
  {
    topic: 'Flow',
    of: 'damper',
    source: "Weisbach's vena contracta",
    run: damperLoss,
    used: ({ stacks }) => stacks.some(({ damper }) => damper < 1),
  },
  { topic: 'Fire', of: 'oxygen that it can use', source: 'Huggett (1980)', run: fuelShareLimit },
  {
    topic: 'Fire',
    of: 'heat of wood by its moisture',
    source: 'AIEL, Wood Fuels Handbook',
    run: netHeatAsFired,
    used: ({ wood }) => wood.heat === netHeatAsFired(wood.moisture),
  },
  {
    topic: 'Wet surfaces',
    of: "Spalding's mass transfer with the Lewis relation",
    source: 'Incropera et al. (2007)',
    run: evaporation,
    used: wet,
  },
];

/** The relations that a design's numbers come from, in the order of the list. */
export function methodsOf(design: Design): Method[] {
  return METHODS.filter(({ used }) => used === undefined || used(design));
}
