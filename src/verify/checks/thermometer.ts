/** Checks of what a thermometer stem reads. */
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { settledReading, stemCapacity, stemCoefficient, stemHeating } from '../../physics/thermometer.js';
import { defineCheck, optional, quantity, type Check } from '../check.js';

const gas = quantity('temperature', 'gas past the stem');
const stem = quantity('temperature', 'stem');
const walls = quantity('temperature', 'black radiation of the walls');
const speed = quantity('speed', 'gas past the stem');
const diameter = quantity('length', 'of the stem');
const emissivity = quantity('number', 'of the stem');
const pressure = optional('pressure', 'absolute; one standard atmosphere when left out');

export const thermometerChecks: Record<string, Check> = {
  stemCoefficient: defineCheck({
    about: 'convection coefficient of a thermometer stem',
    inputs: { gas, stem, speed, diameter, pressure },
    result: 'coefficient',
    run: (v) => stemCoefficient(v.gas, v.stem, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter),
  }),
  stemHeating: defineCheck({
    about: 'heat that a stem takes up per surface',
    inputs: { gas, walls, stem, speed, pressure, diameter, emissivity },
    result: 'heatFlux',
    run: (v) => stemHeating(v.gas, v.walls, v.stem, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter, v.emissivity),
  }),
  stemCapacity: defineCheck({
    about: 'heat capacity of a stem per surface in J/(m2 K)',
    inputs: { diameter, fill: quantity('share', 'of the stem that is solid') },
    result: 'number',
    run: (v) => stemCapacity(v.diameter, v.fill),
  }),
  settledReading: defineCheck({
    about: 'settled reading of a thermometer',
    inputs: { gas, walls, speed, pressure, diameter, emissivity },
    result: 'temperature',
    run: (v) => settledReading(v.gas, v.walls, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter, v.emissivity),
  }),
};
