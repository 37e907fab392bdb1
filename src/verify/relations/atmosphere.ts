/** Standard air above the ground, and the wet bulb of outdoor air. */
import { bracketedRoot } from '../../solve/root.js';
import {
  geopotentialAltitude,
  humidityRatio,
  LAPSE_RATE,
  SEA_LEVEL_TEMPERATURE,
  type HumidAir,
} from '../../physics/atmosphere.js';
import { ZERO_CELSIUS } from '../../physics/constants.js';

/**
 * Temperature of the standard atmosphere, 288.15 K less 6.5 K per geopotential km.
 * @param altitude geometric [m]; -5000 to 11000
 * @returns [K]
 * Reference: US Standard Atmosphere 1976.
 */
export function standardTemperature(altitude: number): number {
  return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotentialAltitude(altitude);
}

/** Humidity ratio that air at `temperature` would have with a given wet bulb; enthalpies in kJ/kg, t in °C. */
function ratioFromWetBulb(t: number, wet: number, pressure: number): number {
  const saturated = humidityRatio({ temperature: wet + ZERO_CELSIUS, relativeHumidity: 1, pressure });
  return wet >= 0
    ? ((2501 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet)
    : ((2830 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830 + 1.86 * t - 2.1 * wet);
}

/**
 * Thermodynamic wet-bulb temperature: the root of ASHRAE's eq. 33 (water) or 35 (ice).
 * @param air temperature -60 to 90 °C
 * @returns [K]
 * @example wetBulb({ temperature: 280.15, relativeHumidity: 0.61, pressure: 1e5 }) // 277.08
 * Reference: ASHRAE Handbook - Fundamentals (2017), ch. 1.
 */
export function wetBulb(air: HumidAir): number {
  const t = air.temperature - ZERO_CELSIUS;
  const ratio = humidityRatio(air);
  // saturated air is as wet as its wet bulb: a hair more keeps rounding inside
  const [low, high] = [t - 60, t + 1e-9];
  const over = (wet: number) => ratioFromWetBulb(t, wet, air.pressure) - ratio;
  return bracketedRoot(over, { low, high, tolerance: 1e-13 }).root + ZERO_CELSIUS;
}
