/**
 * Emissivity of combustion gas by a weighted sum of grey gases; the product does not use it: its weights end at 600 K,
 * where a pit is colder, and it is what the used relation is held against above that.
 *
 *   eps = sum_i a_i(T) (1 - exp(-kappa_i (pCO2 + pH2O) L)),  a_i = b0 + b1 T + b2 T^2 + b3 T^3
 *
 * Smith, Shen & Friedman (1982), J. Heat Transfer 104, 602-608, Table 1, for pH2O/pCO2 = 1 and 2; published for
 * 600-2400 K and (pCO2 + pH2O) L of 0.001-10 atm m at 1 atm.
 */

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
 * Linear in pH2O/pCO2 between 1 and 2, held outside; weights at the gas temperature, held at 600 K below and 2400 K
 * above.
 * @param T gas temperature [K]
 * @param pCO2, pH2O partial pressures [atm]
 * @param beam mean beam length [m]
 * @returns [-]
 */
export function greyGasEmissivity(T: number, pCO2: number, pH2O: number, beam: number): number {
  const held = Math.min(HIGHEST, Math.max(LOWEST, T));
  const depth = (pCO2 + pH2O) * beam;
  const share = Math.min(1, Math.max(0, pH2O / pCO2 - 1));
  return (1 - share) * sumOfGreyGases(RATIO_1, held, depth) + share * sumOfGreyGases(RATIO_2, held, depth);
}
