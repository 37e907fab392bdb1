/** Outdoor air: pressure by altitude and humidity. */
import { GAS_CONSTANT, GRAVITY, STANDARD_PRESSURE, ZERO_CELSIUS } from './constants.js';
import type { Composition } from './gasMixture.js';

/**
 * US Standard Atmosphere 1976, lowest layer: sea-level temperature, lapse rate, molar mass of air, radius of the earth.
 */
export const SEA_LEVEL_TEMPERATURE = 288.15; // K
/** Fall of temperature with height in its lowest layer [K/m]. */
export const LAPSE_RATE = 6.5e-3; // K/m
const AIR_MOLAR_MASS = 28.9644e-3; // kg/mol
const EARTH_RADIUS = 6356766; // m

/**
 * Geopotential altitude, r z/(r + z): the altitude that barometric formulas and ASHRAE's table use.
 * @param altitude geometric altitude above sea level [m]
 * @returns [m]; 1 m less at 2.5 km
 * @example geopotentialAltitude(4000) // 3997 m
 * Reference: US Standard Atmosphere 1976, eq. 18.
 */
export function geopotentialAltitude(altitude: number): number {
  return (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
}

/**
 * Pressure at a geopotential altitude, p0 (1 - L H/T0)^(g M/(R L)).
 * @param altitude geopotential [m]; -5000 to 11000
 * @returns [Pa]; 0 above 44.3 km, where the formula ends
 * @example pressureAtGeopotential(1000) // 89875 Pa
 * Reference: US Standard Atmosphere 1976, eq. 33a; ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 3.
 */
export function pressureAtGeopotential(altitude: number): number {
  const share = Math.max(0, 1 - (LAPSE_RATE * altitude) / SEA_LEVEL_TEMPERATURE);
  return STANDARD_PRESSURE * Math.pow(share, (GRAVITY * AIR_MOLAR_MASS) / (GAS_CONSTANT * LAPSE_RATE));
}

/**
 * Standard air pressure at a site.
 * @param altitude geometric altitude above sea level [m]; -5000 to 11000
 * @returns [Pa]
 * @example standardPressure(4000) // 61660 Pa
 * Reference: US Standard Atmosphere 1976.
 */
export function standardPressure(altitude: number): number {
  return pressureAtGeopotential(geopotentialAltitude(altitude));
}

/**
 * Saturation pressure of water vapour, over ice below 0 °C and over water above (0.01 % apart at 0 °C).
 * @param T [K]; 173.15-473.15
 * @returns [Pa]
 * @example saturationPressure(298.15) // 3169 Pa
 * Reference: Hyland & Wexler (1983), as in ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 5 and 6.
 */
export function saturationPressure(T: number): number {
  if (T < ZERO_CELSIUS) {
    return Math.exp(
      -5.6745359e3 / T +
        6.3925247 +
        T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13))) +
        4.1635019 * Math.log(T),
    );
  }
  return Math.exp(
    -5.8002206e3 / T +
      1.3914993 +
      T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8)) +
      6.5459673 * Math.log(T),
  );
}

/** Molar mass of water over that of dry air. ASHRAE Fundamentals (2017), ch. 1. */
const WATER_TO_AIR = 0.621945;

/** State of air with water vapour in it. */
export interface HumidAir {
  /** dry-bulb temperature [K] */
  temperature: number;
  /** 0..1 */
  relativeHumidity: number;
  /** absolute [Pa] */
  pressure: number;
}

/**
 * Humidity ratio of moist air, 0.621945 pw/(p - pw), pw = RH psat.
 * @param air its temperature [K], relative humidity (0-1) and absolute pressure [Pa]
 * @returns [kg of water per kg of dry air]
 * @example humidityRatio({ temperature: 298.15, relativeHumidity: 0.5, pressure: 101325 }) // 0.0099
 * @throws RangeError when the vapour pressure reaches the total pressure: no air would be left
 * Reference: ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 20 and 22.
 */
export function humidityRatio({ temperature, relativeHumidity, pressure }: HumidAir): number {
  const vapour = relativeHumidity * saturationPressure(temperature);
  if (!(vapour < pressure)) {
    throw new RangeError(
      `humidityRatio: vapour pressure ${vapour} Pa at ${temperature} K must stay below the total pressure ${pressure} Pa`,
    );
  }
  return (WATER_TO_AIR * vapour) / (pressure - vapour);
}

/**
 * Water vapour as mass fraction of moist air, W/(1 + W).
 * @param ratio humidity ratio W [kg of water per kg of dry air]
 * @returns [-]
 * @example moistureFraction(0.01) // 0.0099
 * Reference: ASHRAE Handbook - Fundamentals (2017), ch. 1, eq. 11.
 */
export function moistureFraction(ratio: number): number {
  return ratio / (1 + ratio);
}

/**
 * Air with its water vapour.
 * @param air mass fractions of the dry air
 * @param ratio kg of vapour per kg of dry air
 * @returns mass fractions
 * @example humidAir(dryAir, 0.01).H2O // 0.0099
 * Reference: definition of the humidity ratio.
 */
export function humidAir(air: Composition, ratio: number): Composition {
  const share = 1 / (1 + ratio);
  return { N2: air.N2 * share, O2: air.O2 * share, CO2: air.CO2 * share, H2O: air.H2O * share + ratio * share };
}
