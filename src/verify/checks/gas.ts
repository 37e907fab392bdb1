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
  airDensity: defineCheck({
    about: 'density of dry air',
    inputs: { temperature, pressure },
    result: 'density',
    run: ({ temperature: T, pressure: p }) => airDensity(T, p ?? STANDARD_PRESSURE),
  }),
  airSpecificHeat: defineCheck({
    about: 'specific heat of dry air',
    inputs: { temperature },
    result: 'specificHeat',
    run: ({ temperature: T }) => airSpecificHeat(T),
  }),
  airViscosity: defineCheck({
    about: 'dynamic viscosity of air',
    inputs: { temperature },
    result: 'viscosity',
    run: ({ temperature: T }) => airViscosity(T),
  }),
  airKinematicViscosity: defineCheck({
    about: 'kinematic viscosity of air',
    inputs: { temperature, pressure },
    result: 'diffusivity',
    run: ({ temperature: T, pressure: p }) => airKinematicViscosity(T, p ?? STANDARD_PRESSURE),
  }),
  airConductivity: defineCheck({
    about: 'thermal conductivity of air',
    inputs: { temperature },
    result: 'conductivity',
    run: ({ temperature: T }) => airConductivity(T),
  }),
  airPrandtl: defineCheck({
    about: 'Prandtl number of air',
    inputs: { temperature },
    result: 'number',
    run: ({ temperature: T }) => airPrandtl(T),
  }),
  speciesEnthalpyMolar: defineCheck({
    about: 'molar enthalpy of a gas, heat of formation included',
    inputs: { species: choice(SPECIES, 'gas'), temperature },
    result: 'molarEnergy',
    run: ({ species, temperature: T }) => gasEnthalpy(SPECIES_POLYNOMIAL[species], T),
  }),
  speciesEnthalpyRise: defineCheck({
    about: 'molar enthalpy of a gas above 298.15 K: difference of two speciesEnthalpyMolar',
    inputs: { species: choice(SPECIES, 'gas'), temperature },
    result: 'molarEnergy',
    run: ({ species, temperature: T }) =>
      gasEnthalpy(SPECIES_POLYNOMIAL[species], T) - gasEnthalpy(SPECIES_POLYNOMIAL[species], REFERENCE),
  }),
  gasEnthalpy: defineCheck({
    about: 'enthalpy of a mixture, heat of formation included',
    inputs: { ...composition, temperature },
    result: 'energyPerMass',
    run: ({ temperature: T, ...c }) => gasEnthalpy(mixturePolynomial(c), T),
  }),
  gasSpecificHeat: defineCheck({
    about: 'specific heat of a mixture',
    inputs: { ...composition, temperature },
    result: 'specificHeat',
    run: ({ temperature: T, ...c }) => gasSpecificHeat(mixturePolynomial(c), T),
  }),
  gasConstantOf: defineCheck({
    about: 'specific gas constant of a mixture',
    inputs: composition,
    result: 'specificHeat',
    run: (c) => gasConstantOf(c),
  }),
  molarMass: defineCheck({
    about: 'molar mass of a mixture in kg/mol: one over molesPerKilogram',
    inputs: composition,
    result: 'number',
    run: (c) => 1 / molesPerKilogram(c),
  }),
  moleFractions: defineCheck({
    about: 'mole (volume) fraction of one gas in a mixture',
    inputs: {
      ...composition,
      of: choice(CARRIED, 'gas asked for'),
      basis: choice(['wet', 'dry'], 'with or without vapour'),
    },
    result: 'share',
    run: ({ of, basis, ...c }) => moleFractions(c, basis === 'wet')[of],
  }),
  geopotentialAltitude: defineCheck({
    about: 'geopotential altitude of a geometric one',
    inputs: { altitude },
    result: 'length',
    run: (v) => geopotentialAltitude(v.altitude),
  }),
  standardTemperature: defineCheck({
    about: 'temperature of the standard atmosphere',
    inputs: { altitude },
    result: 'temperature',
    run: (v) => standardTemperature(v.altitude),
  }),
  standardPressure: defineCheck({
    about: 'pressure of the standard atmosphere',
    inputs: { altitude },
    result: 'pressure',
    run: (v) => standardPressure(v.altitude),
  }),
  standardDensity: defineCheck({
    about: 'density of the standard atmosphere: airDensity at standardTemperature and standardPressure',
    inputs: { altitude },
    result: 'density',
    run: (v) => airDensity(standardTemperature(v.altitude), standardPressure(v.altitude)),
  }),
  pressureAtGeopotential: defineCheck({
    about: 'standard pressure at a geopotential altitude',
    inputs: { altitude: quantity('length', 'altitude above sea level, geopotential') },
    result: 'pressure',
    run: (v) => pressureAtGeopotential(v.altitude),
  }),
  saturationPressure: defineCheck({
    about: 'saturation pressure of water vapour',
    inputs: { temperature },
    result: 'pressure',
    run: ({ temperature: T }) => saturationPressure(T),
  }),
  humidityRatio: defineCheck({
    about: 'water per dry air',
    inputs: outdoors,
    result: 'number',
    run: (air) => humidityRatio(air),
  }),
  moistureFraction: defineCheck({
    about: 'water per moist air',
    inputs: outdoors,
    result: 'share',
    run: (air) => moistureFraction(humidityRatio(air)),
  }),
  humidAir: defineCheck({
    about: 'mass fraction of a gas in air with its water vapour',
    inputs: { ratio: quantity('number', 'kg of vapour per kg of dry air'), of: choice(CARRIED, 'gas asked for') },
    result: 'share',
    run: ({ ratio, of }) => humidAir(dryAir, ratio)[of],
  }),
  wetBulb: defineCheck({
    about: 'thermodynamic wet-bulb temperature',
    inputs: outdoors,
    result: 'temperature',
    run: (air) => wetBulb(air),
  }),
};
