/** Constants of nature and the standard state, SI. */

/** Stefan-Boltzmann constant [W/(m2 K4)]. CODATA 2018 (exact in the 2019 SI, rounded). */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Molar gas constant [J/(mol K)]. CODATA 2018 (exact in the 2019 SI, rounded). */
export const GAS_CONSTANT = 8.31446261815324;

/** Standard acceleration of gravity [m/s2]. CGPM 1901. */
export const GRAVITY = 9.80665;

/** Standard atmosphere [Pa]. CGPM 1954. */
export const STANDARD_PRESSURE = 101325;

/** 0 °C [K]. */
export const ZERO_CELSIUS = 273.15;
