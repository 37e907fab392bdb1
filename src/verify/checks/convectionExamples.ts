/** Worked examples of convection: from temperatures and sizes to a coefficient or heat, by a named relation. */
import { airConductivity, airDensity, airPrandtl, airViscosity } from '../../physics/air.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
  rayleigh,
} from '../../physics/freeConvection.js';
import {
  nusseltCylinderMcAdams,
  nusseltDittusBoelter,
  nusseltHilpert,
  nusseltPlateDownMcAdams,
  nusseltZukauskas,
} from '../relations/convection.js';
import { choice, defineCheck, optional, quantity, type Check, type Values } from '../check.js';

/** Film properties: those the source gives, or ours at the film temperature where it gives none. */
const film = {
  pressure: optional('pressure', 'absolute; one standard atmosphere when left out'),
  kinematicViscosity: optional('diffusivity', 'of the source, at one atmosphere; ours when left out'),
  viscosity: optional('viscosity', 'dynamic, of the source, with our density; ours when left out'),
  diffusivity: optional('diffusivity', 'thermal, of the source; from viscosity and Prandtl number when left out'),
  conductivity: optional('conductivity', 'of the source; ours when left out'),
  prandtl: optional('number', 'of the source; ours when left out'),
} as const;

interface Properties {
  nu: number;
  k: number;
  Pr: number;
}

function properties(v: Values<typeof film>, T: number): Properties {
  const pressure = v.pressure ?? STANDARD_PRESSURE;
  const nu =
    v.kinematicViscosity === undefined
      ? (v.viscosity ?? airViscosity(T)) / airDensity(T, pressure)
      : (v.kinematicViscosity * STANDARD_PRESSURE) / pressure;
  const Pr = v.prandtl ?? (v.diffusivity === undefined ? airPrandtl(T) : nu / v.diffusivity);
  return { nu, k: v.conductivity ?? airConductivity(T), Pr };
}

const FREE = {
  horizontalCylinder: nusseltHorizontalCylinder,
  verticalPlate: nusseltVerticalPlate,
  plateUp: (Ra: number) => nusseltPlateUp(Ra),
  plateDown: (Ra: number) => nusseltPlateDown(Ra),
  horizontalCylinderMcAdams: (Ra: number) => nusseltCylinderMcAdams(Ra),
  plateDownMcAdams: (Ra: number) => nusseltPlateDownMcAdams(Ra),
} as const;

const freeInputs = {
  relation: choice(Object.keys(FREE) as (keyof typeof FREE)[], 'surface and relation'),
  surface: quantity('temperature', 'surface temperature'),
  air: quantity('temperature', 'air temperature'),
  length: quantity('length', 'length of the relation: D, height, or area over perimeter'),
  ...film,
} as const;

function free(v: Values<typeof freeInputs>): { Ra: number; Nu: number; h: number } {
  const T = (v.surface + v.air) / 2;
  const { nu, k, Pr } = properties(v, T);
  const Ra = rayleigh(v.surface - v.air, T, v.length, nu, v.diffusivity === undefined ? Pr : nu / v.diffusivity);
  const Nu = FREE[v.relation](Ra, Pr);
  return { Ra, Nu, h: (Nu * k) / v.length };
}

const CROSS = {
  churchillBernstein: (Re: number, Pr: number) => nusseltCrossCylinder(Re, Pr),
  hilpert: (Re: number, Pr: number) => nusseltHilpert(Re, Pr),
  zukauskas: nusseltZukauskas,
} as const;

const crossInputs = {
  relation: choice(Object.keys(CROSS) as (keyof typeof CROSS)[], 'relation'),
  speed: quantity('speed', 'of the air'),
  diameter: quantity('length', 'of the cylinder'),
  surface: quantity('temperature', 'surface temperature'),
  air: quantity('temperature', 'air temperature'),
  prandtlSurface: optional('number', 'at the surface, for zukauskas; Pr of the film when left out'),
  ...film,
} as const;

function crossCylinder(v: Values<typeof crossInputs>): { Nu: number; h: number } {
  const { nu, k, Pr } = properties(v, (v.surface + v.air) / 2);
  const Nu = CROSS[v.relation]((v.speed * v.diameter) / nu, Pr, v.prandtlSurface ?? Pr);
  return { Nu, h: (Nu * k) / v.diameter };
}

const PIPE = {
  gnielinski: (Re: number, Pr: number) => nusseltPipe(Re, Pr, 0),
  dittusBoelterHeated: (Re: number, Pr: number) => nusseltDittusBoelter(Re, Pr, true),
  dittusBoelterCooled: (Re: number, Pr: number) => nusseltDittusBoelter(Re, Pr, false),
} as const;

export const convectionExampleChecks: Record<string, Check> = {
  reynolds: defineCheck(
    'Reynolds number of air flow, V L/nu',
    {
      speed: quantity('speed', 'of the air'),
      length: quantity('length', 'along the flow, or diameter'),
      temperature: optional('temperature', 'of the film, where no viscosity is given'),
      viscosity: optional('viscosity', 'dynamic, of the source'),
      pressure: film.pressure,
      kinematicViscosity: film.kinematicViscosity,
    },
    'number',
    ({ speed, length, temperature: T, viscosity, pressure = STANDARD_PRESSURE, kinematicViscosity }) => {
      if (kinematicViscosity !== undefined)
        return (speed * length * pressure) / (kinematicViscosity * STANDARD_PRESSURE);
      if (T === undefined) throw new RangeError('reynolds: give kinematicViscosity or temperature');
      return (airDensity(T, pressure) * speed * length) / (viscosity ?? airViscosity(T));
    },
  ),
  freeRayleigh: defineCheck('Rayleigh number of a surface in air', freeInputs, 'number', (v) => free(v).Ra),
  freeNusselt: defineCheck('Nusselt number of free convection at a surface', freeInputs, 'number', (v) => free(v).Nu),
  freeCoefficient: defineCheck('free-convection coefficient of a surface', freeInputs, 'coefficient', (v) => free(v).h),
  freeHeat: defineCheck(
    'heat that a surface loses by free convection',
    { ...freeInputs, area: quantity('area', 'of the surface') },
    'power',
    (v) => free(v).h * v.area * (v.surface - v.air),
  ),
  freeHeatPerLength: defineCheck(
    'heat per length that a cylinder loses by free convection; length is its diameter',
    freeInputs,
    'heatPerLength',
    (v) => free(v).h * Math.PI * v.length * (v.surface - v.air),
  ),
  plateHeatPerWidth: defineCheck(
    'heat per width between a plate and air flowing along it, by its size',
    {
      speed: quantity('speed', 'of the air'),
      length: quantity('length', 'of the plate along the flow'),
      surface: quantity('temperature', 'plate temperature'),
      air: quantity('temperature', 'air temperature'),
      ...film,
    },
    'heatPerLength',
    (v) => {
      const { nu, k, Pr } = properties(v, (v.surface + v.air) / 2);
      return nusseltFlatPlate((v.speed * v.length) / nu, Pr) * k * Math.abs(v.surface - v.air);
    },
  ),
  plateStripHeat: defineCheck(
    'heat from one strip of an isothermal plate: what the plate to its end gives less what the plate to its start gives',
    {
      speed: quantity('speed', 'of the air'),
      start: quantity('length', 'distance of the strip from the leading edge'),
      end: quantity('length', 'distance of its far edge'),
      width: quantity('length', 'across the flow'),
      surface: quantity('temperature', 'plate temperature'),
      air: quantity('temperature', 'air temperature'),
      ...film,
    },
    'power',
    (v) => {
      const { nu, k, Pr } = properties(v, (v.surface + v.air) / 2);
      const upTo = (length: number) => nusseltFlatPlate((v.speed * length) / nu, Pr);
      return (upTo(v.end) - upTo(v.start)) * k * v.width * (v.surface - v.air);
    },
  ),
  crossCylinderNusselt: defineCheck(
    'Nusselt number of a cylinder in cross flow',
    crossInputs,
    'number',
    (v) => crossCylinder(v).Nu,
  ),
  crossCylinderCoefficient: defineCheck(
    'coefficient of a cylinder in cross flow',
    crossInputs,
    'coefficient',
    (v) => crossCylinder(v).h,
  ),
  crossCylinderHeatPerLength: defineCheck(
    'heat per length from a cylinder in cross flow',
    crossInputs,
    'heatPerLength',
    (v) => crossCylinder(v).h * Math.PI * v.diameter * (v.surface - v.air),
  ),
  pipeHeatPerLength: defineCheck(
    'heat per length from a pipe to the air flowing in it',
    {
      relation: choice(Object.keys(PIPE) as (keyof typeof PIPE)[], 'relation'),
      speed: quantity('speed', 'of the air'),
      diameter: quantity('length', 'of the pipe'),
      temperature: quantity('temperature', 'of the air'),
      pressure: film.pressure,
      wallExcess: quantity('temperatureDifference', 'wall less air'),
      viscosity: quantity('viscosity', 'dynamic'),
      conductivity: quantity('conductivity', 'of the air'),
      prandtl: quantity('number', 'Prandtl number'),
    },
    'heatPerLength',
    (v) => {
      const density = airDensity(v.temperature, v.pressure ?? STANDARD_PRESSURE);
      const Re = (density * v.speed * v.diameter) / v.viscosity;
      return PIPE[v.relation](Re, v.prandtl) * v.conductivity * Math.PI * v.wallExcess;
    },
  ),
};
