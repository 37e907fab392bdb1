import { airConductivity, airDensity, airPrandtl, airViscosity, AIR_GAS_CONSTANT } from '../physics/air.js';
import { GRAVITY } from '../physics/constants.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
} from '../physics/freeConvection.js';
import { mixedConvection } from '../physics/mixedConvection.js';
import type { Model } from './model.js';

const HORIZONTAL_CYLINDER = 0;
const VERTICAL_CYLINDER = 1;
const VERTICAL = 2;
const UP = 3;

/**
 * Free-convection Nusselt number of a surface by how it stands; `unstable` says that heat goes upwards off a level surface.
 */
function freeNusselt(shape: number, unstable: boolean, ra: number, pr: number): number {
  if (shape === HORIZONTAL_CYLINDER) return nusseltHorizontalCylinder(ra, pr);
  if (shape === VERTICAL || shape === VERTICAL_CYLINDER) return nusseltVerticalPlate(ra, pr);
  return unstable ? nusseltPlateUp(ra) : nusseltPlateDown(ra);
}

/**
 * Convection coefficient between a zone's gas and a face inside it [W/(m2 K)]: free and through-flow, cubed together, times
 * the factor on inner convection. A roof that takes heat from hotter gas behaves as a hot plate facing up turned over.
 */
export function insideCoefficient(model: Model, face: number, zone: number, surface: number, gas: number): number {
  const { network } = model;
  const p = network.outdoors.pressure;
  const film = 0.5 * (surface + gas);
  const k = airConductivity(film);
  const mu = airViscosity(film);
  const pr = airPrandtl(film);
  const rho = airDensity(film, p);
  const length = model.faceLength[face];
  const nu = mu / rho;
  const ra = ((GRAVITY / film) * Math.abs(gas - surface) * length * length * length * pr) / (nu * nu);
  const shape = model.faceShape[face];
  const hFree = (freeNusselt(shape, (shape === UP) === gas > surface, ra, pr) * k) / length;
  const z = network.zones[zone];
  const re = (model.speed[zone] * z.hydraulicDiameter) / nu;
  const hThrough = (nusseltPipe(re, pr, z.hydraulicDiameter / z.length) * k) / z.hydraulicDiameter;
  return network.innerConvection * mixedConvection(hFree, hThrough);
}

/** Convection coefficient between a face and outdoor air [W/(m2 K)]: free and wind, cubed together (Churchill 1977). */
export function outsideCoefficient(model: Model, face: number, surface: number): number {
  const { outdoors } = model.network;
  const film = 0.5 * (surface + outdoors.temperature);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const nu = (airViscosity(film) * AIR_GAS_CONSTANT * film) / outdoors.pressure;
  const length = model.faceLength[face];
  const difference = surface - outdoors.temperature;
  const ra = ((GRAVITY / film) * Math.abs(difference) * length * length * length * pr) / (nu * nu);
  const shape = model.faceShape[face];
  const hFree = (freeNusselt(shape, (shape === UP) === difference > 0, ra, pr) * k) / length;
  if (outdoors.wind <= 0) return hFree;
  const windLength = model.faceWindLength[face];
  const re = (outdoors.wind * windLength) / nu;
  const across = shape === HORIZONTAL_CYLINDER || shape === VERTICAL_CYLINDER;
  const hWind = ((across ? nusseltCrossCylinder(re, pr) : nusseltFlatPlate(re, pr)) * k) / windLength;
  return mixedConvection(hFree, hWind);
}
