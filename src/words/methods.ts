/**
 * The published relations that a design's numbers come from, each beside the function that is run: what a sheet says
 * about methods is made from this list, and a test holds that every function in it is run and carries that source.
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

interface Method {
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

/** By topic: of what, the source, the function, and the designs that it runs for. */
const BY_TOPIC: Readonly<Record<string, [of: string, source: string, run: Method['run'], used?: Method['used']][]>> = {
  'Free convection': [
    ['lying cylinders and thermometer stems', 'Churchill & Chu (1975)', nusseltHorizontalCylinder],
    ['upright plates, ends and stacks', 'Churchill & Chu (1975)', nusseltVerticalPlate],
    ['plates facing up', 'McAdams (1954)', nusseltPlateUp, levelPlates],
    ['plates facing down', 'Radziemska & Lewandowski (2001)', nusseltPlateDown, levelPlates],
  ],
  'Wind and through-flow': [
    ['across cylinders and thermometer stems', 'Churchill & Bernstein (1977)', nusseltCrossCylinder],
    ['along plates', 'Incropera et al. (2007)', nusseltFlatPlate, windy],
    ['through a part', 'Gnielinski (2013)', nusseltPipe],
    ['joined to free convection', 'Churchill (1977)', mixedConvection],
  ],
  Radiation: [
    ['gas by each of CO2 and water vapour', 'Leckner (1972)', gasEmissivity],
    ['beam length', 'Hottel (1954)', meanBeamLength],
    ['surfaces by resistances to one point in each zone', 'Incropera et al. (2007)', surfaceConductance],
  ],
  Steel: [
    ['carbon', 'EN 1993-1-2:2005, 3.4.1', steelSpecificHeat],
    [
      'stainless',
      'EN 1993-1-2:2005, Annex C',
      stainlessSpecificHeat,
      (design) => parts(design).some(({ steel }) => steel === 'stainless'),
    ],
  ],
  Plate: [
    ['buckling of flat panels by heat', 'Timoshenko & Gere (1961)', freePanelStrain],
    ['flat panels under a push', 'Timoshenko & Woinowsky-Krieger (1959)', pushedPanel],
    ['stiffness when hot', 'EN 1993-1-2:2005, table 3.1', steelModulus],
    ['scale', 'Stanley, von Hoene & Huntoon (1950)', scaleLoss, ({ firebox }) => firebox.steel === 'carbon'],
  ],
  Gas: [['NASA polynomials', 'GRI-Mech 3.0', gasEnthalpy]],
  Outdoors: [
    ['pressure by altitude', 'US Standard Atmosphere 1976', standardPressure],
    [
      'wind from a weather station to the pit',
      'ASHRAE Handbook - Fundamentals (2005), ch. 16',
      windProfile,
      fromStation,
    ],
  ],
  Flow: [
    ['openings, one and both ways', 'Emmons (2002)', openingFlow],
    [
      'level openings',
      'Cooper (1989)',
      levelExchange,
      ({ upright, chamber }) => upright !== undefined || chamber?.reverse !== undefined || hasGaps(chamber),
    ],
    ['stacks', 'Darcy-Weisbach', ductFlow],
    ['friction factor', 'Haaland (1983)', haaland],
    ['damper', "Weisbach's vena contracta", damperLoss, ({ stacks }) => stacks.some(({ damper }) => damper < 1)],
  ],
  Fire: [
    ['oxygen that it can use', 'Huggett (1980)', fuelShareLimit],
    [
      'heat of wood by its moisture',
      'AIEL, Wood Fuels Handbook',
      netHeatAsFired,
      ({ wood }) => wood.heat === netHeatAsFired(wood.moisture),
    ],
  ],
  'Wet surfaces': [["Spalding's mass transfer with the Lewis relation", 'Incropera et al. (2007)', evaporation, wet]],
};

/** Every relation that a pit is computed by, with its source. */
export const METHODS: readonly Method[] = Object.entries(BY_TOPIC).flatMap(([topic, rows]) =>
  rows.map(([of, source, run, used]) => ({ topic, of, source, run, used })),
);

/** The relations that a design's numbers come from, in the order of the list. */
export function methodsOf(design: Design): Method[] {
  return METHODS.filter(({ used }) => used === undefined || used(design));
}
