/**
 * Emissivity of combustion gas with CO2, water vapour and soot. Each gas by itself at vanishing partial pressure, times
 * a correction for the pressures, less what their bands overlap:
 *
 *   ln eps0 = sum_ij c_ij t^j (log10 paL)^i, eps = eps0 [1 - (a - 1)(1 - PE)/(a + b - 1 + PE) exp(-c (log10
 *   (paL_m/paL))^2)]
 *
 * Leckner (1972), Combustion and Flame 19, 33-48, in the form of Modest, Radiative Heat Transfer, 3rd ed., section
 * 11.10 and Table 11.3, with t = T/1000 K, pressures in bar and paths in bar cm. From 400 K on, within 5 % (water
 * vapour) and 10 % (CO2) of his spectra. Written from open codings of it, which agree to the digit.
 */

import { STANDARD_PRESSURE } from './constants.js';
import { MOLAR_MASS } from './gasMixture.js';

/** c_ij, row after row in t, of water vapour and CO2. */
// prettier-ignore
const WATER = Float64Array.of(
  -2.2118, -1.1987, 0.035596, 0,
  0.85667, 0.93048, -0.14391, 0,
  -0.10838, -0.17156, 0.045915, 0,
);
// prettier-ignore
const DIOXIDE = Float64Array.of(
  -3.9893, 2.7669, -2.1081, 0.39163,
  1.271, -1.109, 1.0195, -0.21897,
  -0.23678, 0.19731, -0.19544, 0.044644,
);

const LOWEST = 400;
const HIGHEST = 2400;
const BAR = 1.01325;
/** log10 e, to get decadic logarithms of natural ones, which are cheaper; and log10 of the factors of paL_m. */
const LG = Math.LOG10E;
const WATER_PEAK = Math.log10(13.2);
const COLD_PEAK = Math.log10(0.054);
const HOT_PEAK = Math.log10(0.225);
/** A path this short radiates nothing [bar cm]. */
const NOTHING = 1e-30;

/** Emissivity of one gas: `depth` is log10 of its path, `total` PE, `middle` log10 of paL_m. */
function ofOne(
  c: Float64Array,
  t: number,
  depth: number,
  total: number,
  a: number,
  b: number,
  width: number,
  middle: number,
): number {
  const off = middle - depth;
  const power =
    c[0] +
    t * (c[1] + t * (c[2] + t * c[3])) +
    depth * (c[4] + t * (c[5] + t * (c[6] + t * c[7])) + depth * (c[8] + t * (c[9] + t * (c[10] + t * c[11]))));
  return Math.exp(power) * (1 - (((a - 1) * (1 - total)) / (a + b - 1 + total)) * Math.exp(-width * off * off));
}

/**
 * Emissivity of a CO2 and water vapour mixture (file head), at the gas temperature, held at 400 K below and 2400 K
 * above. Where print changes from one curve to another (at 700 and 750 K) the smaller or larger of both is taken, so
 * that nothing jumps.
 * @param T gas temperature [K]
 * @param pCO2atm, pH2Oatm partial pressures [atm]; negative counts as none
 * @param beam mean beam length [m]
 * @param total pressure [atm]
 * @returns [-], 0 with no radiating gas
 * @example gasEmissivity(1200, 0.1, 0.1, 1.5) // 0.2646
 * Reference: file head.
 */
export function gasEmissivity(T: number, pCO2atm: number, pH2Oatm: number, beam: number, total = 1): number {
  const t = (T < LOWEST ? LOWEST : T > HIGHEST ? HIGHEST : T) / 1000;
  const ln = Math.log(t);
  const water = BAR * pH2Oatm;
  const dioxide = BAR * pCO2atm;
  const cm = 100 * beam;
  let emissivity = 0;
  if (water * cm > NOTHING) {
    const a = Math.min(2.144, 1.888 - 2.053 * LG * ln);
    const PE = BAR * total + (2.56 * water) / Math.sqrt(t);
    const depth = LG * Math.log(water * cm);
    emissivity += ofOne(WATER, t, depth, PE, a, 1.1 * Math.exp(-1.4 * ln), 0.5, WATER_PEAK + 2 * LG * ln);
  }
  if (dioxide * cm > NOTHING) {
    const PE = BAR * total + 0.28 * dioxide;
    const middle = Math.max(COLD_PEAK - 2 * LG * ln, HOT_PEAK + 2 * LG * ln);
    const depth = LG * Math.log(dioxide * cm);
    emissivity += ofOne(DIOXIDE, t, depth, PE, 1 + 0.1 * Math.exp(-1.45 * ln), 0.23, 1.47, middle);
  }
  return water > 0 && dioxide > 0 ? emissivity - overlap(water, dioxide, cm) : emissivity;
}

function overlap(water: number, dioxide: number, cm: number): number {
  const path = (water + dioxide) * cm;
  if (path <= 1) return 0;
  const share = water / (water + dioxide);
  const both = share / (10.7 + 101 * share) - 0.0089 * Math.exp(10.4 * Math.log(share));
  return both * Math.exp(2.76 * Math.log(LG * Math.log(path)));
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

/** Emissivities are held below this: the way through the gas to the surface node must stay open. */
const MOST = 0.999;

/**
 * Emissivity of the gas in a zone, soot included, from its mass fractions: partial pressures from moles, then
 * `gasEmissivity` and `sootEmissivity`. Nitrogen is counted as pure N2, its argon too, which puts the partial pressures
 * 0.4 % low.
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
  const clear = gasEmissivity(T, carbonic * perMole, vapour * perMole, beam, pressure / STANDARD_PRESSURE);
  const e = soot > 0 ? sootEmissivity(clear, soot, beam) : clear;
  return e < MOST ? e : MOST;
}
