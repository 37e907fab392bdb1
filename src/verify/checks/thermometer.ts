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
  stemCoefficient: defineCheck(
    'convection coefficient of a thermometer stem',
    { gas, stem, speed, diameter, pressure },
    'coefficient',
    (v) => stemCoefficient(v.gas, v.stem, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter),
  ),
  stemHeating: defineCheck(
    'heat that a stem takes up per surface',
    { gas, walls, stem, speed, pressure, diameter, emissivity },
    'heatFlux',
    (v) => stemHeating(v.gas, v.walls, v.stem, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter, v.emissivity),
  ),
  stemCapacity: defineCheck(
    'heat capacity of a stem per surface in J/(m2 K)',
    { diameter, fill: quantity('share', 'of the stem that is solid') },
    'number',
    (v) => stemCapacity(v.diameter, v.fill),
  ),
  settledReading: defineCheck(
    'settled reading of a thermometer',
    { gas, walls, speed, pressure, diameter, emissivity },
    'temperature',
    (v) => settledReading(v.gas, v.walls, v.speed, v.pressure ?? STANDARD_PRESSURE, v.diameter, v.emissivity),
  ),
};
