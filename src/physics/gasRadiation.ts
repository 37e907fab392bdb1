/**
 * Emissivity of combustion gas with CO2, water vapour and soot: weighted sum of grey gases.
 *
 *   eps = sum_i a_i(T) (1 - exp(-kappa_i (pCO2 + pH2O) L)),  a_i = b0 + b1 T + b2 T^2 + b3 T^3
 *
 * Smith, Shen & Friedman (1982), J. Heat Transfer 104, 602-608, Table 1, for pH2O/pCO2 = 1 and 2; published for 600-2400 K
 * and (pCO2 + pH2O) L of 0.001-10 atm m at 1 atm.
 */

import { STANDARD_PRESSURE } from './constants.js';
import { MOLAR_MASS } from './gasMixture.js';

/** kappa [1/(atm m)], b0, b1 [1/K], b2 [1/K2], b3 [1/K3] of the three grey gases. Some copies swap the two ratios. */
// prettier-ignore
const RATIO_1 = Float64Array.of(
  0.4303, 5.15e-1, -2.303e-4, 0.9779e-7, -1.494e-11,
  7.055, 0.7749e-1, 3.399e-4, -2.297e-7, 3.77e-11,
  178.1, 1.907e-1, -1.824e-4, 0.5608e-7, -0.5122e-11,
);
// prettier-ignore
const RATIO_2 = Float64Array.of(
  0.4201, 6.508e-1, -5.551e-4, 3.029e-7, -5.353e-11,
  6.516, -0.2504e-1, 6.112e-4, -3.882e-7, 6.528e-11,
  131.9, 2.718e-1, -3.118e-4, 1.221e-7, -1.612e-11,
);

const LOWEST = 600;
const HIGHEST = 2400;

function sumOfGreyGases(b: Float64Array, T: number, depth: number): number {
  let emissivity = 0;
  for (let n = 0; n < 15; n += 5) {
    const weight = b[n + 1] + T * (b[n + 2] + T * (b[n + 3] + T * b[n + 4]));
    emissivity -= weight * Math.expm1(-b[n] * depth);
  }
  return emissivity;
}

/**
 * Emissivity of a CO2 and water vapour mixture (file head). Linear in pH2O/pCO2 between 1 and 2, held outside; weights at the
 * gas temperature, held at 600 K below and 2400 K above.
 * @param T gas temperature [K]
 * @param pCO2atm, pH2Oatm partial pressures [atm]; negative counts as none
 * @param beam mean beam length [m]
 * @returns [-], 0 with no radiating gas
 * @example gasEmissivity(1200, 0.1, 0.1, 1.5) // 0.28
 * Reference: file head.
 */
export function gasEmissivity(T: number, pCO2atm: number, pH2Oatm: number, beam: number): number {
  const pCO2 = pCO2atm > 0 ? pCO2atm : 0;
  const pH2O = pH2Oatm > 0 ? pH2Oatm : 0;
  const depth = (pCO2 + pH2O) * beam;
  if (!(depth > 0)) return 0;
  const held = T < LOWEST ? LOWEST : T > HIGHEST ? HIGHEST : T;
  if (pH2O <= pCO2) return sumOfGreyGases(RATIO_1, held, depth);
  if (pH2O >= 2 * pCO2) return sumOfGreyGases(RATIO_2, held, depth);
  const share = pH2O / pCO2 - 1;
  return (1 - share) * sumOfGreyGases(RATIO_1, held, depth) + share * sumOfGreyGases(RATIO_2, held, depth);
}

/**
 * Soot on top of the gas: 1 - (1 - eps_gas) exp(-kappa L).
 * @param gasEps emissivity of the clear gas [-]
 * @param kappa soot absorption coefficient [1/m] (estimate 0.5, spread 0-1.2, in a firebox)
 * @param beam mean beam length [m]
 * @returns [-]
 * @example sootEmissivity(0.2, 0.5, 0.5) // 0.377
 * Reference: grey medium with additive absorption; Siegel & Howell, Thermal Radiation Heat Transfer.
 */
export function sootEmissivity(gasEps: number, kappa: number, beam: number): number {
  return 1 - (1 - gasEps) * Math.exp(-kappa * beam);
}

/**
 * Mean beam length of a gas volume to its whole boundary, 3.6 V/A.
 * @param volume [m3]
 * @param area all surfaces that bound the gas [m2]
 * @returns [m]
 * @example meanBeamLength(0.5, 4) // 0.45 m
 * Reference: Hottel (1954) in McAdams, Heat Transmission, 3rd ed., ch. 4.
 */
export function meanBeamLength(volume: number, area: number): number {
  return (3.6 * volume) / area;
}

/** Emissivities are held below this: the way through the gas to the star point must stay open. */
const MOST = 0.999;

/**
 * Emissivity of the gas in a zone, soot included, from its mass fractions: partial pressures from moles, then `gasEmissivity` and
 * `sootEmissivity`. Nitrogen is counted as pure N2, its argon too, which puts the partial pressures 0.4 % low.
 * @param T [K]
 * @param nitrogen, oxygen, dioxide, water mass fractions [-]; not negative
 * @param pressure absolute [Pa]
 * @param beam mean beam length [m]
 * @param soot absorption coefficient [1/m]
 * @returns [-]; 0 to 0.999
 * @example zoneEmissivity(1200, 0.7, 0.1, 0.1, 0.1, 101325, 0.4, 1e9) // 0.999
 * Reference: Dalton's law.
 */
export function zoneEmissivity(
  T: number,
  nitrogen: number,
  oxygen: number,
  dioxide: number,
  water: number,
  pressure: number,
  beam: number,
  soot: number,
): number {
  const carbonic = dioxide / MOLAR_MASS.CO2;
  const vapour = water / MOLAR_MASS.H2O;
  const moles = nitrogen / MOLAR_MASS.N2 + oxygen / MOLAR_MASS.O2 + carbonic + vapour;
  const perMole = pressure / STANDARD_PRESSURE / moles;
  const clear = gasEmissivity(T, carbonic * perMole, vapour * perMole, beam);
  const e = soot > 0 ? sootEmissivity(clear, soot, beam) : clear;
  return e < MOST ? e : MOST;
}
