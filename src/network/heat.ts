import { airConductivity, airPrandtl, airSpecificHeat, airViscosity, AIR_GAS_CONSTANT } from '../physics/air.js';
import { saturationPressure } from '../physics/atmosphere.js';
import { GRAVITY } from '../physics/constants.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
} from '../physics/freeConvection.js';
import type { Model } from './model.js';

const HORIZONTAL_CYLINDER = 0;
const VERTICAL_CYLINDER = 1;
const VERTICAL = 2;
const UP = 3;

/** Latent heat of water [J/kg] near the wet-bulb temperatures of cooking (ASHRAE Fundamentals, about 60 degC; from memory). */
export const LATENT_HEAT = 2.36e6;
/** Lewis number of water vapour in air to the power -2/3 (Le 0.87; from memory). */
const LEWIS_FACTOR = 1.097;
/** Most water that steady rain lays on a surface, 5 mm/h, as heat to boil it off [W/m2]: an estimate. */
const RAIN_SUPPLY = (5 / 3600) * LATENT_HEAT;

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
  const rho = p / (AIR_GAS_CONSTANT * film);
  const length = model.faceLength[face];
  const nu = mu / rho;
  const ra = ((GRAVITY / film) * Math.abs(gas - surface) * length * length * length * pr) / (nu * nu);
  const shape = model.faceShape[face];
  const hFree = (freeNusselt(shape, (shape === UP) === gas > surface, ra, pr) * k) / length;
  const z = network.zones[zone];
  const re = (model.speed[zone] * z.hydraulicDiameter) / nu;
  const hThrough = (nusseltPipe(re, pr, z.hydraulicDiameter / z.length) * k) / z.hydraulicDiameter;
  return network.innerConvection * Math.cbrt(hFree * hFree * hFree + hThrough * hThrough * hThrough);
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
  return Math.cbrt(hFree * hFree * hFree + hWind * hWind * hWind);
}

/**
 * Water that leaves a wet surface, as heat [W/m2]: h/cp Le^(-2/3) ln(1 + B) times the latent heat, B the mass-transfer number
 * between surface and gas. Near boiling B grows without bound, which is what holds wet food near its wet-bulb temperature.
 *
 * @param h convection coefficient [W/(m2 K)]; surface temperature [K]; vapour mass fraction of the gas; pressure [Pa]
 * Source: Spalding's mass-transfer number with the Lewis relation, as in Incropera & DeWitt ch. 6 (from memory).
 */
export function evaporation(h: number, surface: number, vapourShare: number, pressure: number): number {
  const saturation = Math.min(saturationPressure(surface) / pressure, 0.995);
  const atSurface = (0.622 * saturation) / (1 - 0.378 * saturation);
  const b = (atSurface - vapourShare) / (1 - atSurface);
  if (b <= 0) return 0;
  return (h / airSpecificHeat(surface)) * LEWIS_FACTOR * Math.log1p(b) * LATENT_HEAT;
}

/** Heat that rain takes off a hot surface by drying [W/m2 of wetted area]; never more than the rain can supply. */
export function rainCooling(h: number, surface: number, model: Model): number {
  const { outdoors } = model.network;
  const ratio = outdoors.humidityRatio;
  const free = evaporation(h, surface, ratio / (1 + ratio), outdoors.pressure);
  return RAIN_SUPPLY * (1 - Math.exp(-free / RAIN_SUPPLY));
}
