/** Checks of steel and of the standard furnace curve. */
import { steelDensity } from '../../design/faces.js';
import { standardFurnace } from '../../physics/furnaceCurve.js';
import {
  stainlessConductivity,
  stainlessEnthalpy,
  stainlessSpecificHeat,
  stainlessTemperature,
  steelConductivity,
  steelEnthalpy,
  steelSpecificHeat,
  steelTemperature,
} from '../../physics/steel.js';
import { defineCheck, quantity, type Check } from '../check.js';
import type { CaseKind } from '../quantities.js';

const temperature = quantity('temperature', 'steel temperature');
const enthalpy = quantity('energyPerMass', 'enthalpy above 20 °C');

const ofTemperature = (about: string, result: CaseKind, run: (T: number) => number): Check =>
  defineCheck({ about, inputs: { temperature }, result, run: (v) => run(v.temperature) });

export const steelChecks: Record<string, Check> = {
  steelDensity: defineCheck({
    about: 'density of steel, as used',
    inputs: {},
    result: 'density',
    run: () => steelDensity('carbon'),
  }),
  steelSpecificHeat: ofTemperature('specific heat of carbon steel', 'specificHeat', steelSpecificHeat),
  steelEnthalpy: ofTemperature('enthalpy of carbon steel above 20 °C', 'energyPerMass', steelEnthalpy),
  steelConductivity: ofTemperature('thermal conductivity of carbon steel', 'conductivity', steelConductivity),
  steelTemperature: defineCheck({
    about: 'temperature of carbon steel of a given enthalpy',
    inputs: { enthalpy },
    result: 'temperature',
    run: (v) => steelTemperature(v.enthalpy),
  }),
  stainlessSpecificHeat: ofTemperature('specific heat of stainless steel', 'specificHeat', stainlessSpecificHeat),
  stainlessEnthalpy: ofTemperature('enthalpy of stainless steel above 20 °C', 'energyPerMass', stainlessEnthalpy),
  stainlessConductivity: ofTemperature('thermal conductivity of stainless', 'conductivity', stainlessConductivity),
  stainlessTemperature: defineCheck({
    about: 'temperature of stainless steel of a given enthalpy',
    inputs: { enthalpy },
    result: 'temperature',
    run: (v) => stainlessTemperature(v.enthalpy),
  }),
  standardFurnace: defineCheck({
    about: 'gas temperature of the standard fire test',
    inputs: { time: quantity('time', 'time from the start') },
    result: 'temperature',
    run: (v) => standardFurnace(v.time),
  }),
};
