/**
 * Forced convection on plates, across cylinders and in pipes. Continuous in Reynolds number from 0 up; Re by its size.
 */

const TRANSITION = 5e5;
/** 0.037 Re^0.8 - 0.664 Re^0.5 at transition: 871.3, printed as 871; kept exact so that the two branches meet. */
const LAMINAR_START = 0.037 * Math.pow(TRANSITION, 0.8) - 0.664 * Math.sqrt(TRANSITION);

/**
 * Flat plate, mean: laminar 0.664 Re^(1/2) Pr^(1/3); mixed above Re 5e5 (0.037 Re^0.8 - 871) Pr^(1/3).
 * @param Re on the length along the flow; published to 1e8
 * @param Pr [-]; 0.6-60
 * @returns mean Nusselt number on the length
 * @example nusseltFlatPlate(9597, 0.687) // 57.4
 * Reference: Incropera et al. (2007), 6th ed., eq. 7.30 and 7.38; the numbers are those of Example 7.1.
 */
export function nusseltFlatPlate(Re: number, Pr: number): number {
  const size = Math.abs(Re);
  const base = size <= TRANSITION ? 0.664 * Math.sqrt(size) : 0.037 * Math.pow(size, 0.8) - LAMINAR_START;
  return base * Math.cbrt(Pr);
}

const ROOT_OF_04 = Math.cbrt(0.4);

/**
 * Cylinder in cross flow:
 * Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3)/[1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re/282000)^(5/8)]^(4/5).
 * @param Re on the diameter; published for Re Pr > 0.2
 * @param Pr [-]
 * @returns mean Nusselt number on the diameter
 * @example nusseltCrossCylinder(6071, 0.7) // 40.6
 * Reference: Churchill & Bernstein (1977), J. Heat Transfer 99, 300-306.
 */
export function nusseltCrossCylinder(Re: number, Pr: number): number {
  const size = Math.abs(Re);
  // roots in place of powers where they do: this runs for every stem and stack at every step
  const prandtlRoot = Math.cbrt(Pr);
  const share = ROOT_OF_04 / prandtlRoot;
  const fourthRoot = Math.sqrt(Math.sqrt(1 + share * share));
  const half = Math.sqrt(size / 282000);
  const fiveEighths = half * Math.sqrt(Math.sqrt(half));
  return 0.3 + ((0.62 * Math.sqrt(size) * prandtlRoot) / fourthRoot) * Math.exp(0.8 * Math.log(1 + fiveEighths));
}

const LAMINAR_END = 2300;
const TURBULENT_START = 4000;

/** x^(2/3) */
function cbrtSquared(x: number): number {
  const root = Math.cbrt(x);
  return root * root;
}

function hausen(graetz: number): number {
  return 3.66 + (0.0668 * graetz) / (1 + 0.04 * cbrtSquared(graetz));
}

function gnielinski(Re: number, Pr: number, entrance: number): number {
  const root = 1.8 * Math.log10(Re) - 1.5;
  const eighth = 1 / (8 * root * root);
  return (
    ((eighth * (Re - 1000) * Pr) / (1 + 12.7 * Math.sqrt(eighth) * (cbrtSquared(Pr) - 1))) * (1 + cbrtSquared(entrance))
  );
}

/**
 * Flow through a pipe or duct, mean over its length, wall temperature uniform.
 * Laminar (Re < 2300), Hausen: 3.66 + 0.0668 Gz/(1 + 0.04 Gz^(2/3)), Gz = Re Pr D/L.
 * Turbulent (Re > 4000), Gnielinski: (f/8)(Re - 1000) Pr/[1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)] [1 + (D/L)^(2/3)],
 * f = (1.8 log10 Re - 1.5)^-2. Between: linear in Re from the one at 2300 to the other at 4000.
 * @param Re on the hydraulic diameter; to 1e6
 * @param Pr [-]; 0.5-2000
 * @param diameterOverLength hydraulic diameter over length [-]; 0 = fully developed; published to 1
 * @returns mean Nusselt number on the hydraulic diameter
 * @example nusseltPipe(0, 0.7, 0) // 3.66
 * Reference: Hausen (1943), VDI Z. Beih. Verfahrenstech. 4, 91; Gnielinski (2013), Int. J. Heat Mass Transfer 63,
 * 134-140, the form of VDI Heat Atlas, section G1.
 */
export function nusseltPipe(Re: number, Pr: number, diameterOverLength: number): number {
  const size = Math.abs(Re);
  if (size <= LAMINAR_END) return hausen(size * Pr * diameterOverLength);
  if (size >= TURBULENT_START) return gnielinski(size, Pr, diameterOverLength);
  const share = (size - LAMINAR_END) / (TURBULENT_START - LAMINAR_END);
  return (
    (1 - share) * hausen(LAMINAR_END * Pr * diameterOverLength) +
    share * gnielinski(TURBULENT_START, Pr, diameterOverLength)
  );
}

/**
 * Hydraulic diameter of a body of gas, 4 V/A.
 * @param volume [m3]
 * @param area all surfaces that bound the gas [m2]
 * @returns [m]
 * @example hydraulicDiameter(0.5, 4) // 0.5 m
 * Reference: definition, with the ends counted in.
 */
export function hydraulicDiameter(volume: number, area: number): number {
  return (4 * volume) / area;
}
