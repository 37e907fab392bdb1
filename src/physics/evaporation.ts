/** Heat that evaporating water takes off a wet surface: food, a water pan, plate in the rain. */
import { airSpecificHeat } from './air.js';
import { saturationPressure } from './atmosphere.js';

/** Latent heat of water near the wet-bulb temperatures of cooking, 60 °C [J/kg]. Steam tables (from memory). */
const LATENT_HEAT = 2.36e6;
/** Lewis number of water vapour in air to the power -2/3 (Le 0.87; from memory). */
const LEWIS_FACTOR = 1.097;
/** Molar mass of water over that of air, and what is left to 1, rounded as psychrometrics does. */
const WATER_TO_AIR = 0.622;
const REST = 0.378;
/** Most that the vapour pressure may take of the total: at 1 the surface would boil. */
const NEARLY_BOILING = 0.995;
/** Most water that steady rain lays on a surface, 5 mm/h, as heat to boil it off [W/m2]: an estimate. */
const RAIN_SUPPLY = (5 / 3600) * LATENT_HEAT;

/**
 * Heat that water leaving a wet surface takes along, h/cp Le^(-2/3) ln(1 + B) hfg, with Spalding's mass-transfer number
 * B = (Ys - Y)/(1 - Ys) between surface and gas. Near boiling B grows without bound, which is what holds wet food near
 * its wet-bulb temperature.
 * @param coefficient convection coefficient of the surface [W/(m2 K)]
 * @param surface temperature [K]; held where the vapour pressure reaches 99.5 % of the total
 * @param vapourShare water vapour in the gas, mass fraction [-]
 * @param pressure absolute [Pa]
 * @returns [W/m2]; 0 where the gas is the wetter (nothing condenses)
 * @example evaporation(10, 291.05, 0.0098, 101325) // 75 W/m2
 * Reference: Spalding's mass-transfer number with the Lewis relation, Incropera et al. (2007), 6th ed., ch. 6 (from
 * memory).
 */
export function evaporation(coefficient: number, surface: number, vapourShare: number, pressure: number): number {
  const saturation = Math.min(saturationPressure(surface) / pressure, NEARLY_BOILING);
  const atSurface = (WATER_TO_AIR * saturation) / (1 - REST * saturation);
  const b = (atSurface - vapourShare) / (1 - atSurface);
  if (b <= 0) return 0;
  return (coefficient / airSpecificHeat(surface)) * LEWIS_FACTOR * Math.log1p(b) * LATENT_HEAT;
}

/**
 * Heat that rain takes off a hot surface by drying, S [1 - exp(-q/S)]: what evaporates (q) while the surface is cool,
 * and never more than the rain can supply (S, 5 mm/h boiled off) where it is hot.
 * @param coefficient, surface, vapourShare, pressure as in `evaporation`
 * @returns [W/m2 of wetted area]
 * @example rainCooling(1e6, 360, 0.01, 101325) // 3280 W/m2
 * Reference: ours; the supply is an estimate.
 */
export function rainCooling(coefficient: number, surface: number, vapourShare: number, pressure: number): number {
  const free = evaporation(coefficient, surface, vapourShare, pressure);
  return RAIN_SUPPLY * (1 - Math.exp(-free / RAIN_SUPPLY));
}
