/**
 * Dry air: transport properties, specific heat and density.
 *
 * Viscosity and conductivity follow Sutherland's form with constants fitted by least squares to Table A.4 of Incropera,
 * DeWitt, Bergman & Lavine (2007), Fundamentals of Heat and Mass Transfer, 6th ed., over 300-1200 K: within 0.15 % of
 * the table for viscosity and 1.1 % for conductivity there. The usual textbook constants run 2-3 % low at 1200 K.
 * Smooth and positive for every T > 0. Combustion gas of a pit is mostly air (excess air 3 to 10): these are used for
 * it as well.
 */
import { dryAir, gasConstantOf, gasDensity, gasSpecificHeat, mixturePolynomial } from './gasMixture.js';

/** Sutherland constants fitted to Table A.4, 300-1200 K (file head). */
const VISCOSITY_FACTOR = 1.5093e-6; // Pa s / K^0.5
const VISCOSITY_CONSTANT = 124.78; // K
const CONDUCTIVITY_FACTOR = 2.5492e-3; // W / (m K^1.5)
const CONDUCTIVITY_CONSTANT = 203.21; // K
/** In the Prandtl number the roots of both fall out. */
const PRANDTL_FACTOR = VISCOSITY_FACTOR / CONDUCTIVITY_FACTOR;

/** Specific gas constant of dry air [J/(kg K)]; 287.11. */
export const AIR_GAS_CONSTANT = gasConstantOf(dryAir);

const AIR = mixturePolynomial(dryAir);

/**
 * Dynamic viscosity of air, mu = C T^1.5/(T + S).
 * @param T [K]; fitted 300-1200 K; low by 0.3 % at 250 K and 2.4 % at 150 K
 * @returns [Pa s]
 * @example airViscosity(300) // 1.846e-5 Pa s
 * Reference: Table A.4 (file head).
 */
export function airViscosity(T: number): number {
  return (VISCOSITY_FACTOR * T * Math.sqrt(T)) / (T + VISCOSITY_CONSTANT);
}

/**
 * Thermal conductivity of air, k = C T^1.5/(T + S).
 * @param T [K]; fitted 300-1200 K; low by 0.3 % at 250 K and 3.9 % at 150 K; above 1300 K low against the table
 * @returns [W/(m K)]
 * @example airConductivity(300) // 0.0263 W/(m K)
 * Reference: Table A.4 (file head).
 */
export function airConductivity(T: number): number {
  return (CONDUCTIVITY_FACTOR * T * Math.sqrt(T)) / (T + CONDUCTIVITY_CONSTANT);
}

/**
 * Specific heat of dry air at constant pressure, from the same polynomials as the gas balance.
 * @param T [K]; 200-3500 K, held outside
 * @returns [J/(kg K)]
 * @example airSpecificHeat(500) // 1030 J/(kg K)
 * Reference: GRI-Mech 3.0 thermo data (Smith et al. 1999).
 */
export function airSpecificHeat(T: number): number {
  return gasSpecificHeat(AIR, T);
}

/**
 * Prandtl number of air, mu cp/k.
 * @param T [K]; validity as its parts
 * @returns [-]
 * @example airPrandtl(300) // 0.7
 * Reference: definition; Table A.4 prints 0.707 at 300 K.
 */
export function airPrandtl(T: number): number {
  return (PRANDTL_FACTOR * (T + CONDUCTIVITY_CONSTANT) * airSpecificHeat(T)) / (T + VISCOSITY_CONSTANT);
}

/**
 * Density of dry air as an ideal gas, p/(R T). Table A.4 prints values 1.3 % lower.
 * @param T [K]
 * @param p absolute pressure [Pa]
 * @returns [kg/m3]
 * @example airDensity(288.15, 101325) // 1.225 kg/m3
 * Reference: ideal gas; US Standard Atmosphere 1976 has 1.225 at sea level.
 */
export function airDensity(T: number, p: number): number {
  return gasDensity(T, p, AIR_GAS_CONSTANT);
}

/**
 * Kinematic viscosity of air, mu/rho.
 * @param T [K]
 * @param p absolute pressure [Pa]
 * @returns [m2/s]
 * @example airKinematicViscosity(350, 101325) // 2.06e-5 m2/s
 * Reference: definition; Table A.4 prints 20.92e-6 at 350 K, where its density is 1.3 % low.
 */
export function airKinematicViscosity(T: number, p: number): number {
  return airViscosity(T) / airDensity(T, p);
}
