/** Convection coefficients of the faces of a network: which relation a face takes, and free and forced flow together. */
import { airConductivity, airKinematicViscosity, airPrandtl } from '../physics/air.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
  rayleigh,
} from '../physics/freeConvection.js';
import { mixedConvection } from '../physics/mixedConvection.js';
import { SHAPE, type Model } from './model.js';

type FreeRelation = 'nusseltHorizontalCylinder' | 'nusseltVerticalPlate' | 'nusseltPlateUp' | 'nusseltPlateDown';

/** Free-convection relation of a face by how it stands; `rises` says that heat goes upwards off a level surface. */
export function freeRelation(shape: number, rises: boolean): FreeRelation {
  if (shape === SHAPE.horizontalCylinder) return 'nusseltHorizontalCylinder';
  if (shape === SHAPE.vertical || shape === SHAPE.verticalCylinder) return 'nusseltVerticalPlate';
  return rises ? 'nusseltPlateUp' : 'nusseltPlateDown';
}

/** Does heat rise off a level face inside? A roof that takes heat from hotter gas is a hot plate facing up turned over. */
export function risesInside(shape: number, surface: number, gas: number): boolean {
  return (shape === SHAPE.up) === gas > surface;
}

/** Does heat rise off a level face outdoors? */
export function risesOutside(shape: number, surface: number, air: number): boolean {
  return (shape === SHAPE.up) === surface > air;
}

/** Does wind cross a face as it crosses a cylinder? */
export function windCrosses(shape: number): boolean {
  return shape === SHAPE.horizontalCylinder || shape === SHAPE.verticalCylinder;
}

function freeNusselt(relation: FreeRelation, ra: number, pr: number): number {
  switch (relation) {
    case 'nusseltHorizontalCylinder':
      return nusseltHorizontalCylinder(ra, pr);
    case 'nusseltVerticalPlate':
      return nusseltVerticalPlate(ra, pr);
    case 'nusseltPlateUp':
      return nusseltPlateUp(ra);
    case 'nusseltPlateDown':
      return nusseltPlateDown(ra);
  }
}

/**
 * Convection coefficient between a zone's gas and a face inside it [W/(m2 K)]: free and through-flow, cubed together, times
 * the factor on inner convection.
 */
export function insideCoefficient(model: Model, face: number, zone: number, surface: number, gas: number): number {
  const { network } = model;
  const film = 0.5 * (surface + gas);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const nu = airKinematicViscosity(film, network.outdoors.pressure);
  const length = model.faceLength[face];
  const shape = model.faceShape[face];
  const ra = rayleigh(gas - surface, film, length, nu, pr);
  const hFree = (freeNusselt(freeRelation(shape, risesInside(shape, surface, gas)), ra, pr) * k) / length;
  const z = network.zones[zone];
  const re = (model.speed[zone] * z.hydraulicDiameter) / nu;
  const hThrough = (nusseltPipe(re, pr, z.hydraulicDiameter / z.length) * k) / z.hydraulicDiameter;
  return network.innerConvection * mixedConvection(hFree, hThrough);
}

/** Convection coefficient between a face and outdoor air [W/(m2 K)]: free and wind, cubed together. */
export function outsideCoefficient(model: Model, face: number, surface: number): number {
  const { outdoors } = model.network;
  const air = outdoors.temperature;
  const film = 0.5 * (surface + air);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const nu = airKinematicViscosity(film, outdoors.pressure);
  const length = model.faceLength[face];
  const shape = model.faceShape[face];
  const ra = rayleigh(surface - air, film, length, nu, pr);
  const hFree = (freeNusselt(freeRelation(shape, risesOutside(shape, surface, air)), ra, pr) * k) / length;
  if (outdoors.wind <= 0) return hFree;
  const windLength = model.faceWindLength[face];
  const re = (outdoors.wind * windLength) / nu;
  const hWind = ((windCrosses(shape) ? nusseltCrossCylinder(re, pr) : nusseltFlatPlate(re, pr)) * k) / windLength;
  return mixedConvection(hFree, hWind);
}
