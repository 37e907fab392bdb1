/** Checks of the convection relations, by their numbers alone. */
import { airKinematicViscosity, airPrandtl } from '../../physics/air.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
  rayleigh,
} from '../../physics/freeConvection.js';
import {
  NUSSELT_LAMINAR_FLUX,
  nusseltColburn,
  nusseltCylinderMcAdams,
  nusseltDittusBoelter,
  nusseltHilpert,
  nusseltPetukhov,
  nusseltPlateChurchillOzoe,
  nusseltPlateDownMcAdams,
  nusseltPlateKreith,
  nusseltPlateSchlichting,
  nusseltPlateUpMcAdams,
  nusseltZukauskas,
} from '../relations/convection.js';
import { mixedConvection } from '../../physics/mixedConvection.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { choice, defineCheck, optional, quantity, type Check } from '../check.js';

const Ra = quantity('number', 'Rayleigh number on the relation own length');
const Re = quantity('number', 'Reynolds number on the relation own length');
const Pr = quantity('number', 'Prandtl number');

const free = (about: string, run: (Ra: number) => number): Check =>
  defineCheck(about, { Ra }, 'number', (v) => run(v.Ra));
const freePr = (about: string, run: (Ra: number, Pr: number) => number): Check =>
  defineCheck(about, { Ra, Pr }, 'number', (v) => run(v.Ra, v.Pr));
const forced = (about: string, run: (Re: number, Pr: number) => number): Check =>
  defineCheck(about, { Re, Pr }, 'number', (v) => run(v.Re, v.Pr));

export const convectionChecks: Record<string, Check> = {
  rayleigh: defineCheck(
    'Rayleigh number of air, properties at film temperature',
    {
      deltaT: quantity('temperatureDifference', 'surface less air'),
      filmTemperature: quantity('temperature', 'mean of surface and air'),
      length: quantity('length', 'characteristic length'),
      pressure: optional('pressure', 'absolute; one standard atmosphere when left out'),
    },
    'number',
    ({ deltaT, filmTemperature: T, length, pressure = STANDARD_PRESSURE }) =>
      rayleigh(deltaT, T, length, airKinematicViscosity(T, pressure), airPrandtl(T)),
  ),
  nusseltHorizontalCylinder: freePr(
    'free convection, horizontal cylinder (Churchill & Chu)',
    nusseltHorizontalCylinder,
  ),
  nusseltVerticalPlate: freePr('free convection, vertical plate (Churchill & Chu)', nusseltVerticalPlate),
  nusseltPlateUp: free('free convection, hot plate facing up', nusseltPlateUp),
  nusseltPlateDown: free('free convection, hot plate facing down (Radziemska & Lewandowski)', nusseltPlateDown),
  nusseltFlatPlate: forced('flat plate, laminar and mixed', nusseltFlatPlate),
  nusseltCrossCylinder: forced('cylinder in cross flow (Churchill & Bernstein)', nusseltCrossCylinder),
  nusseltPipe: defineCheck(
    'pipe flow: Hausen, Gnielinski and the transition between',
    { Re, Pr, diameterOverLength: optional('number', 'hydraulic diameter over length; 0 when left out') },
    'number',
    (v) => nusseltPipe(v.Re, v.Pr, v.diameterOverLength ?? 0),
  ),
  mixedConvection: defineCheck(
    'free and forced convection together, cubed',
    { free: quantity('coefficient', 'free'), forced: quantity('coefficient', 'forced') },
    'coefficient',
    (v) => mixedConvection(v.free, v.forced),
  ),
  nusseltLaminarFlux: defineCheck(
    'laminar pipe flow with uniform heat flux, 48/11 (not used by the tool)',
    {},
    'number',
    () => NUSSELT_LAMINAR_FLUX,
  ),
  nusseltDittusBoelter: defineCheck(
    'turbulent pipe flow (Dittus-Boelter; not used by the tool)',
    { Re, Pr, fluid: choice(['heated', 'cooled'], 'exponent 0.4 or 0.3') },
    'number',
    (v) => nusseltDittusBoelter(v.Re, v.Pr, v.fluid === 'heated'),
  ),
  nusseltColburn: forced('turbulent pipe flow (Colburn; not used by the tool)', nusseltColburn),
  nusseltPetukhov: defineCheck(
    'turbulent pipe flow (Petukhov, Kirillov & Popov; not used by the tool)',
    { Re, Pr, friction: quantity('number', 'Darcy friction factor') },
    'number',
    (v) => nusseltPetukhov(v.Re, v.Pr, v.friction),
  ),
  nusseltZukauskas: defineCheck(
    'cylinder in cross flow (Zukauskas; not used by the tool)',
    { Re, Pr, PrSurface: quantity('number', 'Prandtl number at the surface') },
    'number',
    (v) => nusseltZukauskas(v.Re, v.Pr, v.PrSurface),
  ),
  nusseltHilpert: forced('cylinder in cross flow (Hilpert; not used by the tool)', nusseltHilpert),
  nusseltPlateKreith: forced('turbulent flat plate (Kreith & Bohn; not used by the tool)', nusseltPlateKreith),
  nusseltPlateSchlichting: forced('turbulent flat plate (Schlichting; not used by the tool)', nusseltPlateSchlichting),
  nusseltPlateChurchillOzoe: forced(
    'laminar flat plate (Churchill & Ozoe; not used by the tool)',
    nusseltPlateChurchillOzoe,
  ),
  nusseltCylinderMcAdams: free('horizontal cylinder, 0.53 Ra^(1/4) (not used by the tool)', nusseltCylinderMcAdams),
  nusseltPlateUpMcAdams: free('hot plate facing up, 0.15 Ra^(1/3) alone (not used by the tool)', nusseltPlateUpMcAdams),
  nusseltPlateDownMcAdams: free('hot plate facing down, 0.27 Ra^(1/4) (not used by the tool)', nusseltPlateDownMcAdams),
};
