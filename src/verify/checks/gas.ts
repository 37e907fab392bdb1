/** Checks of air, gas mixtures and the outdoor atmosphere. */
import {
  airConductivity,
  airDensity,
  airKinematicViscosity,
  airPrandtl,
  airSpecificHeat,
  airViscosity,
} from '../../physics/air.js';
import {
  geopotentialAltitude,
  humidAir,
  humidityRatio,
  moistureFraction,
  pressureAtGeopotential,
  saturationPressure,
  standardPressure,
} from '../../physics/atmosphere.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import {
  dryAir,
  gasConstantOf,
  gasEnthalpy,
  gasSpecificHeat,
  mixturePolynomial,
  molesPerKilogram,
  SPECIES_POLYNOMIAL,
} from '../../physics/gasMixture.js';
import { choice, defineCheck, optional, quantity, type Check } from '../check.js';
import { standardTemperature, wetBulb } from '../relations/atmosphere.js';
import { moleFractions } from '../relations/combustion.js';

const temperature = quantity('temperature', 'gas temperature');
const pressure = optional('pressure', 'absolute pressure; one standard atmosphere when left out');
const SPECIES = ['N2', 'O2', 'CO2', 'H2O', 'Ar'] as const;
const CARRIED = ['N2', 'O2', 'CO2', 'H2O'] as const;

/** Mass fractions of a mixture; N2 is the nitrogen of air with its argon. */
const composition = {
  N2: quantity('share', 'mass fraction of nitrogen (with the argon of air)'),
  O2: quantity('share', 'mass fraction of oxygen'),
  CO2: quantity('share', 'mass fraction of carbon dioxide'),
  H2O: quantity('share', 'mass fraction of water vapour'),
} as const;

const outdoors = {
  temperature: quantity('temperature', 'dry-bulb temperature'),
  relativeHumidity: quantity('share', 'relative humidity'),
  pressure: quantity('pressure', 'absolute pressure'),
} as const;

const altitude = quantity('length', 'altitude above sea level, geometric');
const REFERENCE = 298.15;

export const gasChecks: Record<string, Check> = {
  airDensity: defineCheck(
    'density of dry air',
    { temperature, pressure },
    'density',
    ({ temperature: T, pressure: p }) => airDensity(T, p ?? STANDARD_PRESSURE),
  ),
  airSpecificHeat: defineCheck('specific heat of dry air', { temperature }, 'specificHeat', ({ temperature: T }) =>
    airSpecificHeat(T),
  ),
  airViscosity: defineCheck('dynamic viscosity of air', { temperature }, 'viscosity', ({ temperature: T }) =>
    airViscosity(T),
  ),
  airKinematicViscosity: defineCheck(
    'kinematic viscosity of air',
    { temperature, pressure },
    'diffusivity',
    ({ temperature: T, pressure: p }) => airKinematicViscosity(T, p ?? STANDARD_PRESSURE),
  ),
  airConductivity: defineCheck('thermal conductivity of air', { temperature }, 'conductivity', ({ temperature: T }) =>
    airConductivity(T),
  ),
  airPrandtl: defineCheck('Prandtl number of air', { temperature }, 'number', ({ temperature: T }) => airPrandtl(T)),
  speciesEnthalpyMolar: defineCheck(
    'molar enthalpy of a gas, heat of formation included',
    { species: choice(SPECIES, 'gas'), temperature },
    'molarEnergy',
    ({ species, temperature: T }) => gasEnthalpy(SPECIES_POLYNOMIAL[species], T),
  ),
  speciesEnthalpyRise: defineCheck(
    'molar enthalpy of a gas above 298.15 K: difference of two speciesEnthalpyMolar',
    { species: choice(SPECIES, 'gas'), temperature },
    'molarEnergy',
    ({ species, temperature: T }) =>
      gasEnthalpy(SPECIES_POLYNOMIAL[species], T) - gasEnthalpy(SPECIES_POLYNOMIAL[species], REFERENCE),
  ),
  gasEnthalpy: defineCheck(
    'enthalpy of a mixture, heat of formation included',
    { ...composition, temperature },
    'energyPerMass',
    ({ temperature: T, ...c }) => gasEnthalpy(mixturePolynomial(c), T),
  ),
  gasSpecificHeat: defineCheck(
    'specific heat of a mixture',
    { ...composition, temperature },
    'specificHeat',
    ({ temperature: T, ...c }) => gasSpecificHeat(mixturePolynomial(c), T),
  ),
  gasConstantOf: defineCheck('specific gas constant of a mixture', composition, 'specificHeat', (c) =>
    gasConstantOf(c),
  ),
  molarMass: defineCheck(
    'molar mass of a mixture in kg/mol: one over molesPerKilogram',
    composition,
    'number',
    (c) => 1 / molesPerKilogram(c),
  ),
  moleFractions: defineCheck(
    'mole (volume) fraction of one gas in a mixture',
    {
      ...composition,
      of: choice(CARRIED, 'gas asked for'),
      basis: choice(['wet', 'dry'], 'with or without vapour'),
    },
    'share',
    ({ of, basis, ...c }) => moleFractions(c, basis === 'wet')[of],
  ),
  geopotentialAltitude: defineCheck('geopotential altitude of a geometric one', { altitude }, 'length', (v) =>
    geopotentialAltitude(v.altitude),
  ),
  standardTemperature: defineCheck('temperature of the standard atmosphere', { altitude }, 'temperature', (v) =>
    standardTemperature(v.altitude),
  ),
  standardPressure: defineCheck('pressure of the standard atmosphere', { altitude }, 'pressure', (v) =>
    standardPressure(v.altitude),
  ),
  standardDensity: defineCheck(
    'density of the standard atmosphere: airDensity at standardTemperature and standardPressure',
    { altitude },
    'density',
    (v) => airDensity(standardTemperature(v.altitude), standardPressure(v.altitude)),
  ),
  pressureAtGeopotential: defineCheck(
    'standard pressure at a geopotential altitude',
    { altitude: quantity('length', 'altitude above sea level, geopotential') },
    'pressure',
    (v) => pressureAtGeopotential(v.altitude),
  ),
  saturationPressure: defineCheck(
    'saturation pressure of water vapour',
    { temperature },
    'pressure',
    ({ temperature: T }) => saturationPressure(T),
  ),
  humidityRatio: defineCheck('water per dry air', outdoors, 'number', (air) => humidityRatio(air)),
  moistureFraction: defineCheck('water per moist air', outdoors, 'share', (air) =>
    moistureFraction(humidityRatio(air)),
  ),
  humidAir: defineCheck(
    'mass fraction of a gas in air with its water vapour',
    { ratio: quantity('number', 'kg of vapour per kg of dry air'), of: choice(CARRIED, 'gas asked for') },
    'share',
    ({ ratio, of }) => humidAir(dryAir, ratio)[of],
  ),
  wetBulb: defineCheck('thermodynamic wet-bulb temperature', outdoors, 'temperature', (air) => wetBulb(air)),
};
