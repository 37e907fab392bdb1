/** Convection coefficients of the faces of a network: which relation a face takes, and free and forced flow together. */
import { AIR_GAS_CONSTANT, airConductivity, airKinematicViscosity, airPrandtl } from '../physics/air.js';
import { jetCoefficient, plumeExcess, plumeOrigin } from '../physics/ceilingJet.js';
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

/** About how a coefficient goes with its film temperature at the same difference: by this power. Guides iterations alone. */
const FILM_POWER = -0.5;
/** Nusselt number at which a level plate that heats what is above it turns from the fourth to the third root. */
const PLATE_TURNS = 25;

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

/** Is a face a roof or a floor? */
function isLevel(shape: number): boolean {
  return shape === SHAPE.up || shape === SHAPE.down;
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

/** Power of the temperature difference that a Nusselt number of free convection goes by there. */
function differencePower(relation: FreeRelation, nusselt: number): number {
  switch (relation) {
    case 'nusseltHorizontalCylinder':
      return (1 - 0.6 / Math.sqrt(nusselt)) / 3;
    case 'nusseltVerticalPlate':
      return (1 - 0.825 / Math.sqrt(nusselt)) / 3;
    case 'nusseltPlateUp':
      return nusselt < PLATE_TURNS ? 1 / 4 : 1 / 3;
    case 'nusseltPlateDown':
      return 1 / 5;
  }
}

/** Free and forced convection together, and how the power of the difference fades in it; laid down for face `i`. */
function together(model: Model, i: number, free: number, forced: number, power: number): number {
  const both = mixedConvection(free, forced);
  const share = free / both;
  model.differencePower[i] = both > 0 ? power * share * share * share : 0;
  return both;
}

/**
 * Change of a face's convected heat per area with its own temperature, to within the change of air's properties [W/(m2 K)];
 * with the other side's it changes by the same and -2 `filmSlope`. Needs its coefficient first.
 * @param difference other side less the face [K]
 */
export function convectionSlope(model: Model, face: number, coefficient: number, difference: number, film: number) {
  return -coefficient * (1 + model.differencePower[face]) + filmSlope(coefficient, difference, film);
}

/** The part of it that comes of the film temperature [W/(m2 K)]. */
export function filmSlope(coefficient: number, difference: number, film: number): number {
  return (0.5 * FILM_POWER * coefficient * difference) / film;
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
  const relation = freeRelation(shape, risesInside(shape, surface, gas));
  const nusselt = freeNusselt(relation, ra, pr);
  const z = network.zones[zone];
  const re = (model.speed[zone] * z.hydraulicDiameter) / nu;
  const hThrough = (nusseltPipe(re, pr, z.hydraulicDiameter / z.length) * k) / z.hydraulicDiameter;
  const power = differencePower(relation, nusselt);
  return network.innerConvection * together(model, face, (nusselt * k) / length, hThrough, power);
}

/** Convection coefficient between a face and outdoor air [W/(m2 K)]: free and wind, cubed together, times its factor. */
export function outsideCoefficient(model: Model, face: number, surface: number): number {
  const { outdoors, levelConvection, outsideConvection } = model.network;
  const air = outdoors.temperature;
  const film = 0.5 * (surface + air);
  const k = airConductivity(film);
  const pr = airPrandtl(film);
  const nu = airKinematicViscosity(film, outdoors.pressure);
  const length = model.faceLength[face];
  const shape = model.faceShape[face];
  const ra = rayleigh(surface - air, film, length, nu, pr);
  const relation = freeRelation(shape, risesOutside(shape, surface, air));
  const nusselt = freeNusselt(relation, ra, pr);
  const power = differencePower(relation, nusselt);
  const hFree = (nusselt * k) / length;
  const factor = isLevel(shape) ? levelConvection : outsideConvection;
  if (outdoors.wind <= 0) {
    model.differencePower[face] = power;
    return factor * hFree;
  }
  const windLength = model.faceWindLength[face];
  const re = (outdoors.wind * windLength) / nu;
  const hWind = ((windCrosses(shape) ? nusseltCrossCylinder(re, pr) : nusseltFlatPlate(re, pr)) * k) / windLength;
  return factor * together(model, face, hFree, hWind, power);
}

/** Heat flux below which what the struck roof takes beyond free convection fades out [W/m2]. */
const LEAST_FLUX = 20;

/**
 * Heat that the jet under a struck roof gives it [W/m2], whatever else convection does.
 * @param release of the fire [W], and the share of it that leaves as radiation
 */
export function jetFlux(
  { network }: Model,
  release: number,
  radiantShare: number,
  surface: number,
  gas: number,
): number {
  const { roof } = network.fire;
  const { temperature: ambient, pressure } = network.outdoors;
  const { across, height, jet } = roof!;
  const convective = (1 - radiantShare) * release;
  const origin = plumeOrigin(release, across, pressure / (AIR_GAS_CONSTANT * gas), gas);
  const axis = plumeExcess(convective, height - origin, height, gas, ambient, pressure);
  return jetCoefficient(convective, jet.speed, gas, pressure) * (gas + jet.excess * axis - surface);
}

/** What a struck roof takes beyond its free convection [W/m2]: the larger of the two counts, joined without a corner. */
export function struckExcess(free: number, jet: number): number {
  const more = jet - Math.max(0, free);
  return more > 0 ? (more * more) / (more + LEAST_FLUX) : 0;
}
