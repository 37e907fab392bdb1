/** Checks of evaporation from wet surfaces, and of rain. */
import { humidityRatio, moistureFraction } from '../../physics/atmosphere.js';
import { evaporation, rainCooling } from '../../physics/evaporation.js';
import { bracketedRoot } from '../../solve/root.js';
import { defineCheck, quantity, type Check } from '../check.js';

const wet = {
  coefficient: quantity('coefficient', 'convection coefficient of the surface'),
  surface: quantity('temperature', 'of the wet surface'),
  vapourShare: quantity('share', 'water vapour in the gas, by mass'),
  pressure: quantity('pressure', 'absolute'),
} as const;

/** The coldest that a wet surface is looked for below its air [K]. */
const DEEPEST = 80;

export const wetChecks: Record<string, Check> = {
  evaporation: defineCheck('heat that water leaving a wet surface takes along', wet, 'heatFlux', (v) =>
    evaporation(v.coefficient, v.surface, v.vapourShare, v.pressure),
  ),
  rainCooling: defineCheck('heat that rain takes off a surface by drying', wet, 'heatFlux', (v) =>
    rainCooling(v.coefficient, v.surface, v.vapourShare, v.pressure),
  ),
  wetSurfaceTemperature: defineCheck(
    'temperature at which a wet surface in a stream of air gives off by evaporation what it takes by convection',
    {
      temperature: quantity('temperature', 'of the air'),
      relativeHumidity: quantity('share', 'of the air'),
      pressure: quantity('pressure', 'absolute'),
    },
    'temperature',
    (air) => {
      const vapour = moistureFraction(humidityRatio(air));
      const excess = (T: number) => evaporation(1, T, vapour, air.pressure) - (air.temperature - T);
      const [low, high] = [air.temperature - DEEPEST, air.temperature];
      return bracketedRoot(excess, { low, high, tolerance: 1e-6 }).root;
    },
  ),
};
