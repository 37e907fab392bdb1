/**
 * Emissivity of CO2 and water vapour after Leckner, each gas by itself with its pressure correction, less their overlap.
 * The product does not use it: it reaches below 600 K and to other total pressures, where the grey-gas weights of
 * `gasEmissivity` are held, and so shows what that holding costs.
 *
 * Leckner (1972), Combustion and Flame 19, 33-48, in the form of Modest, Radiative Heat Transfer, ch. 11. Pressures in bar and
 * paths in bar cm as there, t = T/1000 K. The coefficients of the sums agree with other published codings; those of the
 * pressure correction and the overlap are from memory.
 */

/** c[i][j] of ln eps = sum_ij c[i][j] t^j (log10 pL)^i at vanishing partial pressure and 1 bar. */
const WATER = [
  [-2.2118, -1.1987, 0.035596],
  [0.85667, 0.93048, -0.14391],
  [-0.10838, -0.17156, 0.045915],
];
const DIOXIDE = [
  [-3.9893, 2.7669, -2.1081, 0.39163],
  [1.271, -1.109, 1.0195, -0.21897],
  [-0.23678, 0.19731, -0.19544, 0.044644],
];

function zeroPressure(c: readonly (readonly number[])[], t: number, path: number): number {
  const depth = Math.log10(path);
  return Math.exp(
    c.reduce((sum, row, i) => sum + depth ** i * row.reduce((part, each, j) => part + each * t ** j, 0), 0),
  );
}

/** 1 - (a - 1)(1 - PE)/(a + b - 1 + PE) exp[-c (log10 (path_m/path))^2] */
function correction(PE: number, a: number, b: number, c: number, ratio: number): number {
  return 1 - (((a - 1) * (1 - PE)) / (a + b - 1 + PE)) * Math.exp(-c * Math.log10(ratio) ** 2);
}

export interface RadiatingGas {
  /** [K]; 400-2400 */
  temperature: number;
  /** partial pressures and total pressure [Pa] */
  carbonDioxide: number;
  waterVapour: number;
  pressure: number;
  /** mean beam length [m]; partial pressure times beam 0.01-100 bar cm and more */
  beam: number;
}

/**
 * Emissivity of the mixture (file head).
 * @returns [-]; 0 with no radiating gas
 */
export function lecknerEmissivity({ temperature, carbonDioxide, waterVapour, pressure, beam }: RadiatingGas): number {
  const t = temperature / 1000;
  const [dioxide, water, total] = [carbonDioxide, waterVapour, pressure].map((each) => each / 1e5);
  const path = beam * 100;
  let emissivity = 0;
  if (water > 0) {
    const a = t < 0.75 ? 2.144 : 1.888 - 2.053 * Math.log10(t);
    const PE = total + (2.56 * water) / Math.sqrt(t);
    emissivity +=
      zeroPressure(WATER, t, water * path) * correction(PE, a, 1.1 * t ** -1.4, 0.5, (13.2 * t * t) / (water * path));
  }
  if (dioxide > 0) {
    const PE = total + 0.28 * dioxide;
    const middle = t < 0.7 ? 0.054 / (t * t) : 0.225 * t * t;
    emissivity +=
      zeroPressure(DIOXIDE, t, dioxide * path) *
      correction(PE, 1 + 0.1 / t ** 1.45, 0.23, 1.47, middle / (dioxide * path));
  }
  return emissivity - overlap(water, dioxide, path);
}

function overlap(water: number, dioxide: number, path: number): number {
  if (!(water > 0 && dioxide > 0)) return 0;
  const share = water / (water + dioxide);
  const depth = Math.log10((water + dioxide) * path);
  if (!(depth > 0)) return 0;
  return (share / (10.7 + 101 * share) - 0.0089 * share ** 10.4) * depth ** 2.76;
}
