/** Checks of steel and of the standard furnace curve. */
import {
  stainlessConductivity,
  stainlessEnthalpy,
  stainlessSpecificHeat,
  steelConductivity,
  steelEnthalpy,
  steelSpecificHeat,
  steelDensity,
} from '../../physics/steel.js';
import { scaleLoss, scalingRate } from '../../physics/scaling.js';
import { steelElongation, steelExpansion, steelModulus } from '../../physics/steelStrength.js';
import { choice, defineCheck, quantity, type Check } from '../check.js';
import type { CaseKind } from '../quantities.js';
import { standardFurnace } from '../relations/furnaceCurve.js';

const temperature = quantity('temperature', 'steel temperature');

const steel = choice(['carbon', 'stainless'], 'steel');

const ofTemperature = (about: string, result: CaseKind, run: (T: number) => number): Check =>
  defineCheck(about, { temperature }, result, (v) => run(v.temperature));

export const steelChecks: Record<string, Check> = {
  steelDensity: defineCheck('density of steel, as used', {}, 'density', () => steelDensity('carbon')),
  steelSpecificHeat: ofTemperature('specific heat of carbon steel', 'specificHeat', steelSpecificHeat),
  steelEnthalpy: ofTemperature('enthalpy of carbon steel above 20 °C', 'energyPerMass', steelEnthalpy),
  steelConductivity: ofTemperature('thermal conductivity of carbon steel', 'conductivity', steelConductivity),
  stainlessSpecificHeat: ofTemperature('specific heat of stainless steel', 'specificHeat', stainlessSpecificHeat),
  stainlessEnthalpy: ofTemperature('enthalpy of stainless steel above 20 °C', 'energyPerMass', stainlessEnthalpy),
  stainlessConductivity: ofTemperature('thermal conductivity of stainless', 'conductivity', stainlessConductivity),
  steelModulusLeft: defineCheck(
    'modulus of elasticity of hot steel over that when cold',
    { steel, temperature },
    'share',
    (v) => steelModulus(v.steel, v.temperature) / steelModulus(v.steel, 293.15),
  ),
  steelElongation: defineCheck('elongation of steel over its length at 20 °C', { steel, temperature }, 'share', (v) =>
    steelElongation(v.steel, v.temperature),
  ),
  steelExpansion: defineCheck(
    'mean expansion of steel for each kelvin, in parts a million',
    { steel, from: temperature, to: temperature },
    'number',
    (v) => 1e6 * steelExpansion(v.steel, v.from, v.to),
  ),
  scaleLoss: defineCheck(
    'carbon steel that one face loses to scale',
    { temperature, time: quantity('time', 'since the face was bare') },
    'length',
    (v) => scaleLoss(v.temperature, v.time),
  ),
  scaledAway: defineCheck(
    'carbon steel that one face loses where scale falls off',
    { temperature, thickness: quantity('length', 'of the scale that falls off'), time: quantity('time', 'under fire') },
    'length',
    (v) => scalingRate(v.temperature, v.thickness) * v.time,
  ),
  standardFurnace: defineCheck(
    'gas temperature of the standard fire test',
    { time: quantity('time', 'time from the start') },
    'temperature',
    (v) => standardFurnace(v.time),
  ),
};
