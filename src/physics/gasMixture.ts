/**
 * Ideal-gas mixture of air and combustion products: enthalpy, specific heat and gas constant.
 *
 * Species data are the NASA 7-coefficient polynomials of GRI-Mech 3.0 (Smith et al. 1999, thermo data file), whose form
 * is that of NASA TM-4513 (McBride, Gordon & Reno 1993):
 *
 *   cp/R = a1 + a2 T + a3 T^2 + a4 T^3 + a5 T^4
 *   h/R  = a1 T + a2 T^2/2 + a3 T^3/3 + a4 T^4/4 + a5 T^5/5 + a6      (heat of formation included)
 *
 * with one set below 1000 K and one above. The two sets miss each other at 1000 K by under 1 J/mol; a6 of the upper set
 * is shifted by that gap, so that enthalpy is continuous (the solver needs it) and its slope stays cp. Outside 200-3500
 * K the enthalpy goes on linearly with the cp of the limit: finite and monotonic for whatever a Newton step may try.
 */
import { GAS_CONSTANT } from './constants.js';

/** What gas in a pit is made of. */
export type Species = 'N2' | 'O2' | 'CO2' | 'H2O' | 'Ar';

/**
 * Mass fractions of a gas. N2 stands for the nitrogen of air, argon included in air's own proportion, so that dry air
 * has the molar mass and specific heat of real dry air with four species to carry.
 */
export interface Composition {
  N2: number;
  O2: number;
  CO2: number;
  H2O: number;
}

/** Molar masses [kg/mol]. IUPAC standard atomic weights 2013 (abridged). N2 is the pure gas. */
export const MOLAR_MASS: Readonly<Record<Species, number>> = {
  N2: 28.0134e-3,
  O2: 31.9988e-3,
  CO2: 44.0095e-3,
  H2O: 18.01528e-3,
  Ar: 39.948e-3,
};

/** Dry air by volume: GRI-Mech's usual air, CO2 left out. US Standard Atmosphere 1976, table 3, rounded. */
const AIR_MOLE_FRACTIONS = { O2: 0.2095, N2: 0.7812, Ar: 0.0093 } as const;

const ARGON_IN_NITROGEN = AIR_MOLE_FRACTIONS.Ar / (AIR_MOLE_FRACTIONS.N2 + AIR_MOLE_FRACTIONS.Ar);

/** Molar mass of the nitrogen of air with its argon [kg/mol]; 28.154 g/mol. */
export const AIR_NITROGEN_MOLAR_MASS = (1 - ARGON_IN_NITROGEN) * MOLAR_MASS.N2 + ARGON_IN_NITROGEN * MOLAR_MASS.Ar;

const LOWEST = 200;
const SPLIT = 1000;
const HIGHEST = 3500;

/**
 * a1..a6 below 1000 K, then a1..a6 above. N2 is published from 300 K; its set is used down to 200 K (cp 1 % low there).
 */
const NASA: Readonly<Record<Species, readonly number[]>> = {
  N2: [
    3.298677, 1.4082404e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12, -1020.8999, 2.92664, 1.4879768e-3, -5.68476e-7,
    1.0097038e-10, -6.753351e-15, -922.7977,
  ],
  O2: [
    3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12, -1063.94356, 3.28253784, 1.48308754e-3,
    -7.57966669e-7, 2.09470555e-10, -2.16717794e-14, -1088.45772,
  ],
  CO2: [
    2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697, 3.85746029, 4.41437026e-3,
    -2.21481404e-6, 5.23490188e-10, -4.72084164e-14, -48759.166,
  ],
  H2O: [
    4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267, 3.03399249, 2.17691804e-3,
    -1.64072518e-7, -9.7041987e-11, 1.68200992e-14, -30004.2971,
  ],
  Ar: [2.5, 0, 0, 0, 0, -745.375, 2.5, 0, 0, 0, 0, -745.375],
};

/**
 * Enthalpy and specific heat of one gas per kg (or per mol), ready for a hot loop: below 1000 K the constant then the
 * coefficients of T .. T^5 of the enthalpy, then the same above.
 */
export type GasPolynomial = Float64Array;

function enthalpySet(p: ArrayLike<number>, at: number, T: number): number {
  return p[at] + T * (p[at + 1] + T * (p[at + 2] + T * (p[at + 3] + T * (p[at + 4] + T * p[at + 5]))));
}

function heatSet(p: ArrayLike<number>, at: number, T: number): number {
  return p[at + 1] + T * (2 * p[at + 2] + T * (3 * p[at + 3] + T * (4 * p[at + 4] + T * 5 * p[at + 5])));
}

/** Enthalpy polynomial of one species per mol, the upper set shifted to meet the lower at 1000 K. */
function molarPolynomial(a: readonly number[]): GasPolynomial {
  const p = new Float64Array(12);
  for (const at of [0, 6]) {
    p[at] = GAS_CONSTANT * a[at + 5];
    for (let n = 1; n <= 5; n++) p[at + n] = (GAS_CONSTANT * a[at + n - 1]) / n;
  }
  p[6] += enthalpySet(p, 0, SPLIT) - enthalpySet(p, 6, SPLIT);
  return p;
}

/**
 * Enthalpy of each gas per mol, heat of formation included (elements at 298.15 K are zero). Reference: GRI-Mech 3.0
 * thermo data.
 */
export const SPECIES_POLYNOMIAL: Readonly<Record<Species, GasPolynomial>> = {
  N2: molarPolynomial(NASA.N2),
  O2: molarPolynomial(NASA.O2),
  CO2: molarPolynomial(NASA.CO2),
  H2O: molarPolynomial(NASA.H2O),
  Ar: molarPolynomial(NASA.Ar),
};

/** Per-kg polynomials of the four carried gases; the nitrogen holds its argon. */
const N2_BY_MASS = SPECIES_POLYNOMIAL.N2.map(
  (b, n) => ((1 - ARGON_IN_NITROGEN) * b + ARGON_IN_NITROGEN * SPECIES_POLYNOMIAL.Ar[n]) / AIR_NITROGEN_MOLAR_MASS,
);
const O2_BY_MASS = SPECIES_POLYNOMIAL.O2.map((b) => b / MOLAR_MASS.O2);
const CO2_BY_MASS = SPECIES_POLYNOMIAL.CO2.map((b) => b / MOLAR_MASS.CO2);
const H2O_BY_MASS = SPECIES_POLYNOMIAL.H2O.map((b) => b / MOLAR_MASS.H2O);

/**
 * Polynomial of a mixture; linear in the mass fractions, which need not add up to exactly 1.
 * @param c mass fractions
 * @returns its enthalpy per kg, for `gasEnthalpy` and `gasSpecificHeat`
 * @example gasSpecificHeat(mixturePolynomial(dryAir), 300) // 1004 J/(kg K)
 * Reference: ideal mixture.
 */
export function mixturePolynomial(c: Composition): GasPolynomial {
  const into = new Float64Array(12);
  for (let n = 0; n < 12; n++) {
    into[n] = c.N2 * N2_BY_MASS[n] + c.O2 * O2_BY_MASS[n] + c.CO2 * CO2_BY_MASS[n] + c.H2O * H2O_BY_MASS[n];
  }
  return into;
}

/**
 * Enthalpy of a gas, heat of formation included: h(T) as in the file's head.
 * @param poly of a mixture, or of a species per mol
 * @param T [K]; data 200-3500 K (N2 from 300 K), linear outside
 * @returns [J/kg] for a mixture, [J/mol] for a species
 * @example gasEnthalpy(SPECIES_POLYNOMIAL.CO2, 298.15) // -393510 J/mol
 * Reference: GRI-Mech 3.0 thermo data (Smith et al. 1999).
 */
export function gasEnthalpy(poly: GasPolynomial, T: number): number {
  if (T < LOWEST) return enthalpySet(poly, 0, LOWEST) + heatSet(poly, 0, LOWEST) * (T - LOWEST);
  if (T <= SPLIT) return enthalpySet(poly, 0, T);
  if (T <= HIGHEST) return enthalpySet(poly, 6, T);
  return enthalpySet(poly, 6, HIGHEST) + heatSet(poly, 6, HIGHEST) * (T - HIGHEST);
}

/**
 * Specific heat at constant pressure, the slope of `gasEnthalpy`; held outside 200-3500 K. The two sets differ by some
 * 0.01 % at 1000 K.
 * @param poly of a mixture, or of a species per mol
 * @param T [K]
 * @returns [J/(kg K)] for a mixture, [J/(mol K)] for a species
 * @example gasSpecificHeat(SPECIES_POLYNOMIAL.N2, 1000) // 32.8 J/(mol K)
 * Reference: GRI-Mech 3.0 thermo data (Smith et al. 1999).
 */
export function gasSpecificHeat(poly: GasPolynomial, T: number): number {
  if (T <= SPLIT) return heatSet(poly, 0, T < LOWEST ? LOWEST : T);
  return heatSet(poly, 6, T > HIGHEST ? HIGHEST : T);
}

/**
 * Moles per kg of gas, sum of mass fraction over molar mass.
 * @param c mass fractions
 * @returns [mol/kg]
 * @example molesPerKilogram(dryAir) // 34.53 mol/kg
 * Reference: definition; the nitrogen of air is counted with its argon.
 */
export function molesPerKilogram(c: Composition): number {
  return c.N2 / AIR_NITROGEN_MOLAR_MASS + c.O2 / MOLAR_MASS.O2 + c.CO2 / MOLAR_MASS.CO2 + c.H2O / MOLAR_MASS.H2O;
}

/**
 * Specific gas constant of a mixture, R/M.
 * @param c mass fractions
 * @returns [J/(kg K)]
 * @example gasConstantOf(dryAir) // 287.1 J/(kg K)
 * Reference: ideal gas.
 */
export function gasConstantOf(c: Composition): number {
  return GAS_CONSTANT * molesPerKilogram(c);
}

const AIR_MOLAR_MASS = AIR_MOLE_FRACTIONS.O2 * MOLAR_MASS.O2 + (1 - AIR_MOLE_FRACTIONS.O2) * AIR_NITROGEN_MOLAR_MASS;

/** Dry air by mass: 20.95 % O2 by volume, the rest nitrogen with its argon; the 0.04 % CO2 is left out. */
export const dryAir: Readonly<Composition> = {
  N2: 1 - (AIR_MOLE_FRACTIONS.O2 * MOLAR_MASS.O2) / AIR_MOLAR_MASS,
  O2: (AIR_MOLE_FRACTIONS.O2 * MOLAR_MASS.O2) / AIR_MOLAR_MASS,
  CO2: 0,
  H2O: 0,
};

/**
 * Density of an ideal gas, p/(R T).
 * @param T [K]
 * @param pressure absolute [Pa]
 * @param gasConstant specific gas constant [J/(kg K)]
 * @returns [kg/m3]
 * @example gasDensity(300, 101325, 287.06) // 1.177 kg/m3
 * Reference: ideal gas.
 */
export function gasDensity(T: number, pressure: number, gasConstant: number): number {
  return pressure / (gasConstant * T);
}
