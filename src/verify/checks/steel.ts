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
import { defineCheck, quantity, type Check } from '../check.js';
import type { CaseKind } from '../quantities.js';
import { standardFurnace } from '../relations/furnaceCurve.js';

const temperature = quantity('temperature', 'steel temperature');

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
  standardFurnace: defineCheck(
    'gas temperature of the standard fire test',
    { time: quantity('time', 'time from the start') },
    'temperature',
    (v) => standardFurnace(v.time),
  ),
};
